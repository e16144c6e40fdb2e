package learn_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"chargehand/model/learn"
)

// The weight of the prior is the one of 0.5, 1, 2, 4 and 8 with the lowest
// interval score over the published tables together. Printed is the table that
// stands beside it in the source.
func TestWeightIsTheBestOfThePublishedTables(t *testing.T) {
	smelts, series := from(9, table(t, "smelts.csv")), table(t, "series.csv")
	best, bestScore := 0.0, math.Inf(1)
	t.Log("weight  smelts.csv     series.csv     both")
	for _, w := range []float64{0.5, 1, 2, 4, 8} {
		a, b := learn.Score(learn.TrialsWith(w, smelts)), learn.Score(learn.TrialsWith(w, series))
		both := learn.Scores{N: a.N + b.N}
		pool := func(x, y learn.Scores) float64 {
			return (x.IntervalScore*float64(x.N) + y.IntervalScore*float64(y.N)) / float64(both.N)
		}
		both.IntervalScore = pool(a.Scores, b.Scores)
		fixed := pool(a.Fixed, b.Fixed)
		t.Logf("%-6g  %.3f (%.3f)  %.3f (%.3f)  %.3f (%.3f)", w, a.IntervalScore, a.IntervalScore/a.Fixed.IntervalScore,
			b.IntervalScore, b.IntervalScore/b.Fixed.IntervalScore, both.IntervalScore, both.IntervalScore/fixed)
		if both.IntervalScore < bestScore {
			best, bestScore = w, both.IntervalScore
		}
	}
	if best != learn.PriorWeight {
		t.Errorf("the best is %g, frozen is %g", best, float64(learn.PriorWeight))
	}
}

// Series of one crew on one mix drawn from a stated truth: the mean yield of
// each mix about 0.20 with a standard deviation of 0.09 (such that smelts at
// large scatter by 0.11, as published), cut at 0.05, single smelts about it with
// 0.065. From the sixth smelt on the own ones are worth at least a tenth of the
// interval score of one band for all; also where every mix gives 0.20, so that
// only the narrower scatter is there to be learnt.
func TestOwnSmeltsAreWorthTheirTrouble(t *testing.T) {
	const series, length, within = 200, 12, 0.065
	for _, between := range []float64{0.09, 0} {
		rng := rand.New(rand.NewPCG(11, 2))
		var late []learn.Trial
		for range series {
			mean := math.Max(0.05, 0.20+between*rng.NormFloat64())
			var smelts []learn.Smelt
			for range length {
				smelts = append(smelts, learn.Smelt{Date: "2026", Crew: "a", Mix: learn.Mix{"b": 1}, Ore: 20, Bloom: 20 * math.Max(0.005, mean+within*rng.NormFloat64())})
			}
			late = append(late, learn.Trials(smelts)[5:]...)
		}
		h := learn.Score(late)
		t.Logf("mixes scatter by %g: %d smelts, in band %.2f, score %.3f of the fixed band's", between, h.N, h.InBand, h.IntervalScore/h.Fixed.IntervalScore)
		if h.N != series*(length-5) || h.IntervalScore > 0.9*h.Fixed.IntervalScore {
			t.Errorf("mixes scatter by %g: score %.3f, fixed %.3f", between, h.IntervalScore, h.Fixed.IntervalScore)
		}
		if h.InBand < 0.75 || h.InBand > 0.90 {
			t.Errorf("mixes scatter by %g: %.2f of the yields in a band of 80 %%", between, h.InBand)
		}
	}
}
