package shaft

import (
	"math"
	"sort"
	"strconv"
	"strings"
	"testing"

	"chargehand/physics"
)

// firstNumber reads "25 to 20" or "700 (est)" as its first number; a row that lacks it gets the prior, and is told so.
func firstNumber(cell string, prior float64) (v float64, given bool) {
	end := strings.IndexFunc(cell, func(r rune) bool { return (r < '0' || r > '9') && r != '.' })
	if end < 0 {
		end = len(cell)
	}
	v, err := strconv.ParseFloat(cell[:end], 64)
	if err != nil {
		return prior, false
	}
	return v, true
}

// Bloom mass over the rows of published_blooms.csv that allow it, leave-one-out: the model with what each row states and
// these priors for what it lacks: bore 28, stack 50 cm, 800 l/min, 55 % iron, twice the ore in charcoal. Its one factor is the
// median ratio of the other rows. Beside it stands "median yield of the others times ore". Nothing is gated; no better than
// that is a valid result.
//
//	go test -run TestReportBlooms -v ./physics/shaft
func TestReportBlooms(t *testing.T) {
	if testing.Short() {
		t.Skip("a report, not made with -short")
	}
	type smelt struct {
		id                string
		ore, bloom, model float64
		lacking           int
	}
	var smelts []smelt
	for _, row := range publishedRows(t, "published_blooms.csv") {
		r := smelt{id: row["id"]}
		read := func(column string, prior float64) float64 {
			v, given := firstNumber(row[column], prior)
			if !given {
				r.lacking++
			}
			return v
		}
		r.ore, _ = firstNumber(row["ore_kg"], 0)
		r.bloom, _ = firstNumber(row["bloom_kg"], 0)
		if r.bloom < 0.5 || r.ore > 60 {
			t.Logf("%-9s left out: bloom %.1f kg of %.1f kg ore (no bloom, or beyond one day's furnace)", r.id, r.bloom, r.ore)
			continue
		}
		bore, stack := read("internal_diameter_cm", 28)/100, read("stack_above_tuyere_cm", 50)/100
		air, iron := read("air_l_min", 800), read("ore_fe_pct", 55)/100
		charcoal := read("charcoal_kg", 2*r.ore)
		r.model = modelledBloom(t, bore, stack, air, iron, r.ore, charcoal)
		smelts = append(smelts, r)
	}
	median := func(skip int, value func(smelt) float64) float64 {
		var v []float64
		for i, s := range smelts {
			if i != skip {
				v = append(v, value(s))
			}
		}
		sort.Float64s(v)
		return (v[(len(v)-1)/2] + v[len(v)/2]) / 2
	}
	model, plain := 0.0, 0.0
	for i, s := range smelts {
		byModel := s.model * median(i, func(o smelt) float64 { return o.bloom / o.model })
		byYield := s.ore * median(i, func(o smelt) float64 { return o.bloom / o.ore })
		model += math.Abs(math.Log(byModel/s.bloom)) / float64(len(smelts))
		plain += math.Abs(math.Log(byYield/s.bloom)) / float64(len(smelts))
		t.Logf("%-9s %4.1f kg ore, %d of 5 figures lacking: bloom %4.1f kg; model %4.1f, with the others' factor %4.1f; median yield x ore %4.1f",
			s.id, s.ore, s.lacking, s.bloom, s.model, byModel, byYield)
	}
	t.Logf("%d smelts: mean |log| error of the model %.2f (a factor of %.2f), of median yield x ore %.2f (%.2f)",
		len(smelts), model, math.Exp(model), plain, math.Exp(plain))
}

// modelledBloom smelts the ore spread evenly over the charges after the fourth, each laid when it fits, and burns down.
func modelledBloom(tb testing.TB, bore, stack, lMin, iron, ore, charcoal float64) float64 {
	tb.Helper()
	fuel := standardFuel(tb)
	lot, err := OreLot(OreAssay{Mineral: physics.Hematite, Iron: min(iron, 0.69)}, physics.DefaultBed())
	must(tb, err)
	const measure = 1.9
	fill := math.Pi / 4 * bore * bore * stack * physics.DefaultCharcoalBulk * 0.6
	charges := max(6, int((charcoal-fill)/measure))
	p := publishedSmelt{
		geometry: Geometry{Bore: physics.Cylinder(bore, stack+0.1), Stack: stack, WallBottom: 0.06, WallTop: 0.05},
		params:   DefaultParams(), wall: [2]float64{800, 450}, embers: 1.2, fill: []Portion{{fuel, fill}},
		charge: func(n int) []Portion {
			if n <= 4 {
				return []Portion{{fuel, measure}}
			}
			return []Portion{{fuel, measure}, {lot, ore / float64(charges-4)}}
		},
		blast: []blastChange{{0, lMin, DefaultParams().AirFactor}}, until: 14 * 60, stopCharge: charges,
	}
	r := p.replay(tb)
	return physics.ModelBloom(r.shaft.Hearth().Iron)
}
