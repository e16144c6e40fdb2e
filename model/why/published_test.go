package why

import (
	"bytes"
	"encoding/csv"
	"math"
	"os"
	"slices"
	"strconv"
	"testing"
)

// The trends are those of the published table: rank correlations of bloom an ore with what was recorded, over smelts of 9 kg of
// ore or more whose bloom was weighed.
func TestTheTrendsAreThePublished(t *testing.T) {
	text, err := os.ReadFile("../../testdata/smelts/smelts.csv")
	if err != nil {
		t.Fatal(err)
	}
	r := csv.NewReader(bytes.NewReader(text))
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	value := func(row []string, name string) float64 {
		v, err := strconv.ParseFloat(row[slices.Index(rows[0], name)], 64)
		if err != nil {
			return math.NaN()
		}
		return v
	}
	of := map[Quantity]func(row []string) float64{
		OreToCharcoal: func(row []string) float64 { return value(row, "ore_kg") / value(row, "charcoal_kg") },
		Air:           func(row []string) float64 { return value(row, "air_l_min") },
		Interval:      func(row []string) float64 { return value(row, "charge_interval_min") },
	}
	for _, trend := range trends {
		var xs, ys []float64
		for _, row := range rows[1:] {
			ore, bloom, x := value(row, "ore_kg"), value(row, "bloom_kg"), of[trend.With](row)
			if row[0] == "SURV" || !(ore >= 9) || math.IsNaN(bloom+x) {
				continue
			}
			xs, ys = append(xs, x), append(ys, bloom/ore)
		}
		if got := correlation(ranks(xs), ranks(ys)); len(xs) != trend.Smelts || math.Abs(got-trend.Rank) > 0.005 {
			t.Errorf("%s: %d smelts, %.3f; stands as %d, %.2f", trend.With, len(xs), got, trend.Smelts, trend.Rank)
		}
	}
}

// ranks are the places of values in their order, those of even ones the mean of theirs.
func ranks(vs []float64) []float64 {
	rs := make([]float64, len(vs))
	for i, v := range vs {
		below, even := 0, 0
		for _, w := range vs {
			if w < v {
				below++
			} else if w == v {
				even++
			}
		}
		rs[i] = float64(below) + float64(even-1)/2
	}
	return rs
}

func correlation(xs, ys []float64) float64 {
	n := float64(len(xs))
	var mx, my, xy, xx, yy float64
	for i := range xs {
		mx, my = mx+xs[i]/n, my+ys[i]/n
	}
	for i := range xs {
		xy, xx, yy = xy+(xs[i]-mx)*(ys[i]-my), xx+(xs[i]-mx)*(xs[i]-mx), yy+(ys[i]-my)*(ys[i]-my)
	}
	return xy / math.Sqrt(xx*yy)
}
