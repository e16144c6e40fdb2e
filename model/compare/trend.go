package compare

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"

	"chargehand/model/shelf"
)

// Trend is what goes with the yield over own smelts.
type Trend struct {
	Measure Measure
	N       int     // smelts that know both
	Rank    float64 // Spearman's rank correlation with the yield, -1 to 1
	Chance  float64 // of as strong a one by chance alone, over all measures that were looked at
}

// Stands tells whether a trend is told: as strong a one comes by chance in less than one
// of twenty houses.
func (t Trend) Stands() bool { return t.Chance < 0.05 }

// Trends are those of what went in with the yield, the strongest first, of measures that
// five smelts at least know. The chance is Student's t of Spearman's rank correlation
// (a usual approximation, rough below ten), times the number of measures looked at
// (Bonferroni): a measure is not believed because many were tried.
func Trends(own []shelf.Summary) []Trend {
	var all []Trend
	for _, m := range In {
		var xs, ys []float64
		for _, s := range own {
			x, known := Value(s, m)
			y, yields := Value(s, Yield)
			if known && yields {
				xs, ys = append(xs, x), append(ys, y)
			}
		}
		if len(xs) < Few {
			continue
		}
		r := stat.Correlation(ranks(xs), ranks(ys), nil)
		if math.IsNaN(r) {
			continue // all alike
		}
		all = append(all, Trend{Measure: m, N: len(xs), Rank: r, Chance: chance(r, len(xs))})
	}
	for i := range all {
		all[i].Chance = math.Min(1, all[i].Chance*float64(len(all)))
	}
	slices.SortStableFunc(all, func(a, b Trend) int { return cmp.Compare(a.Chance, b.Chance) })
	return all
}

// chance is that of a rank correlation as strong by chance alone.
func chance(r float64, n int) float64 {
	free := float64(n - 2)
	if 1-r*r < 1e-12 {
		// All in order: one of the n! orders up and one down.
		return math.Min(1, 2/math.Gamma(float64(n)+1))
	}
	t := math.Abs(r) * math.Sqrt(free/(1-r*r))
	return 2 * (1 - distuv.StudentsT{Mu: 0, Sigma: 1, Nu: free}.CDF(t))
}

// ranks are the places in order of size; equals share the middle of theirs.
func ranks(vs []float64) []float64 {
	order := make([]int, len(vs))
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(a, b int) int { return cmp.Compare(vs[a], vs[b]) })
	rs := make([]float64, len(vs))
	for i := 0; i < len(order); {
		j := i
		for j < len(order) && vs[order[j]] == vs[order[i]] {
			j++
		}
		for _, k := range order[i:j] {
			rs[k] = float64(i+j-1) / 2
		}
		i = j
	}
	return rs
}
