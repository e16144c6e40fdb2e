package shaft

import (
	"math"
	"strconv"
	"testing"

	"chargehand/physics"
)

// probeRow is one reading of a row of probes.
type probeRow struct {
	minute float64
	c      [6]float64
}

var probeHeights = [6]float64{0.02, 0.10, 0.20, 0.30, 0.40, 0.48}

func probeRows(tb testing.TB) (rows []probeRow) {
	for _, row := range publishedRows(tb, "probes_2021-10-30.csv") {
		number := func(column string) float64 {
			v, err := strconv.ParseFloat(row[column], 64)
			must(tb, err)
			return v
		}
		r := probeRow{minute: number("minute")}
		for i, h := range probeHeights {
			r.c[i] = number("cm_" + strconv.Itoa(int(math.Round(100*h))))
		}
		rows = append(rows, r)
	}
	return rows
}

// probesOff gives the root of the mean square, K, between the wall side of the model and the probes of 30 Oct 2021, the model's mean
// of ten minutes about each reading.
func probesOff(tb testing.TB, p Params, rows []probeRow) float64 {
	s := smelt2021(tb, 0.93, 0.66)
	s.params = p
	s.until = rows[len(rows)-1].minute + settling + 1
	var minutes []float64
	for _, r := range rows {
		minutes = append(minutes, about(r.minute)...)
	}
	r := s.replay(tb, minutes...)
	sum, n := 0.0, 0.0
	for _, row := range rows {
		for i, h := range probeHeights {
			d := r.meanOf(row.minute, h, wallSide) - row.c[i]
			sum, n = sum+d*d, n+1
		}
	}
	return math.Sqrt(sum / n)
}

// What the published smelts of testdata say of the named numbers, one at a time with the others at their defaults. For those
// of the heat: the value at which the probes of 30 Oct 2021 are met best, and the span in which they are met within 5 % of
// that; where the air is damp and the hearth loses heat to its sides, as here, they move little. For the conductivity below the
// tuyere: the value at which the probe of 9 Oct 2011 under one is met, by what the heat comes down through. For the speed of reduction: the value that gives the bloom of 30 Nov 2016, and those that give 10 % less and more. For
// the air factor: what the intervals of the two say.
//
//	go test -run TestFitParameters -v ./physics/shaft
func TestFitParameters(t *testing.T) {
	if !testing.Verbose() {
		t.Skip("a report, printed with -v")
	}
	rows := probeRows(t)
	t.Logf("at the defaults the probes are off by %.0f K", probesOff(t, DefaultParams(), rows))
	const parts = 8
	for _, row := range ParamTable {
		switch row.Name {
		case "raceway", "bypass", "wall_k", "contact", "mixing", "radiation", "top_emissivity", "hearth_k":
		default:
			continue
		}
		var off [parts + 1]float64
		value := func(i int) float64 { return row.Low + (row.High-row.Low)*float64(i)/parts }
		best := 0
		for i := range off {
			off[i] = probesOff(t, row.With(DefaultParams(), value(i)), rows)
			if off[i] < off[best] {
				best = i
			}
		}
		low, high := best, best
		for low > 0 && off[low-1] < 1.05*off[best] {
			low--
		}
		for high < parts && off[high+1] < 1.05*off[best] {
			high++
		}
		t.Logf("%-15s best %5.3g (off by %.0f K), as good from %5.3g to %5.3g; default %5.3g, range %g to %g", row.Name, value(best), off[best], value(low), value(high), row.Default, row.Low, row.High)
	}
	lump, _ := rowOf("hearth_lump")
	k, _ := rowOf("hearth_k")
	for _, size := range []float64{lump.Low, lump.Default, lump.High} {
		low, high := k.Low/2, k.High
		for range 12 {
			mid := (low + high) / 2
			if model, read := underTuyere(t, lump.With(k.With(DefaultParams(), mid), size)); model < read {
				low = mid
			} else {
				high = mid
			}
		}
		t.Logf("hearth_k        %.2f meets the probe under the tuyere of 9 Oct 2011 through charcoal of %.0f mm", (low+high)/2, 1000*size)
	}
	iron := func(rate float64) float64 {
		s := smelt2016(t, 1.15)
		s.params.OreRate = rate
		r := s.replay(t)
		return r.shaft.Hearth().Iron
	}
	const bloom = 7.8 // kg, page of 30 Nov 2016; its metal is the share of physics.BloomMetalShare, and none was counted as fragments
	for _, share := range []float64{0.9, 1, 1.1} {
		low, high := 0.1, 3.0
		for range 12 {
			if mid := math.Sqrt(low * high); iron(mid) < share*bloom*physics.BloomMetalShare {
				low = mid
			} else {
				high = mid
			}
		}
		t.Logf("ore_rate        %.2f gives %.0f %% of the metal of 30 Nov 2016", math.Sqrt(low*high), 100*share)
	}
	logs, sum, square := 0.0, 0.0, 0.0
	for _, c := range []struct {
		what              string
		measured, modeled float64
	}{
		{"30 Oct 2021, 655 l/min", 13.2, intervalOf(smelt2021(t, 1, 1), t, 20, 79)},
		{"30 Oct 2021, 798 l/min", 14.7, intervalOf(smelt2021(t, 1, 1), t, 95, 205)},
		{"30 Nov 2016", 14.5, intervalOf(smelt2016(t, 1), t, 30, 400)},
	} {
		factor := c.modeled / c.measured
		t.Logf("air_factor      %.2f by the intervals of %s (%.1f min; the model at 1: %.1f)", factor, c.what, c.measured, c.modeled)
		logs, sum, square = logs+1, sum+math.Log(factor), square+math.Log(factor)*math.Log(factor)
	}
	mean := sum / logs
	t.Logf("air_factor      %.2f on the mean, spread of the logarithm %.2f", math.Exp(mean), math.Sqrt(math.Max(0, square/logs-mean*mean)*logs/(logs-1)))
}

func rowOf(name string) (Param, bool) {
	for _, row := range ParamTable {
		if row.Name == name {
			return row, true
		}
	}
	return Param{}, false
}

func intervalOf(s publishedSmelt, tb testing.TB, from, to float64) float64 {
	return s.replay(tb).interval(from, to)
}
