package learn_test

import (
	"math"
	"testing"

	"chargehand/model/learn"
)

// The estimator pulls an own mean towards the middle of all by a weight: the variance
// within over the variance between. Published examples of such shrinking come out of the
// same code with their middle and their weight in place of ours.

// Efron and Morris 1975 (Data analysis using Stein's estimator, J. Am. Stat. Assoc. 70,
// 311-319; 1977, Sci. Am. 236(5), 119-127): hits of 18 batters in their first 45 at-bats,
// and the share in the rest of the season; as copied at stats.stackexchange.com, question
// 5727. Printed are the mean, .265, and the shrinking factor, .212. The estimates beside
// them are recomputed by the papers' formula c = 1 - (k-3) s2 / sum (y - mean)^2 with
// s2 = mean (1 - mean) / 45.
func TestShrinksAsEfronAndMorris(t *testing.T) {
	hits := []float64{18, 17, 16, 15, 14, 14, 13, 12, 11, 11, 10, 10, 10, 10, 10, 9, 8, 7}
	rest := []float64{.346, .298, .276, .222, .273, .270, .263, .210, .269, .230, .264, .256, .303, .264, .226, .285, .316, .200}
	want := []float64{.294, .289, .285, .280, .275, .275, .270, .266, .261, .261, .256, .256, .256, .256, .256, .252, .247, .242}
	const atBats = 45.0
	mean, squares := 0.0, 0.0
	for _, h := range hits {
		mean += h / atBats / float64(len(hits))
	}
	for _, h := range hits {
		squares += (h/atBats - mean) * (h/atBats - mean)
	}
	variance := mean * (1 - mean) / atBats
	factor := 1 - float64(len(hits)-3)*variance/squares
	if math.Abs(mean-.265) > 5e-4 || math.Abs(factor-.212) > 5e-4 {
		t.Errorf("the mean is %.4f and the factor %.4f, printed are .265 and .212", mean, factor)
	}
	var raw, shrunk float64
	for i, h := range hits {
		got := learn.ForecastWith(mean, (1-factor)/factor, []float64{h / atBats})
		if math.Abs(got-want[i]) > 5e-4 {
			t.Errorf("batter %d: %.4f, want %.3f", i+1, got, want[i])
		}
		raw += (h/atBats - rest[i]) * (h/atBats - rest[i])
		shrunk += (got - rest[i]) * (got - rest[i])
	}
	if ratio := raw / shrunk; math.Abs(ratio-3.53) > 0.01 {
		t.Errorf("the squared errors fall to one part in %.2f, want 3.53", ratio)
	}
}

// Raudenbush and Bryk 1985 (Empirical Bayes meta-analysis, J. Educ. Stat. 10(2), 75-98,
// doi 10.3102/10769986010002075): 19 effects with their variances; the data as in the R
// package metadat (dat.raudenbush1985), the estimates as its sibling metafor tests them
// (test_analysis_example_raudenbush1985.r). Middle .0837 and variance between .0188, by
// restricted maximum likelihood, are printed to four decimals: by them alone an estimate
// may differ by 3.5e-4.
func TestShrinksAsRaudenbushAndBryk(t *testing.T) {
	const middle, between = .0837, .0188
	for i, c := range [][3]float64{ // effect, its variance, the estimate
		{.03, .0156, .0543}, {.12, .0216, .1006}, {-.14, .0279, -.0064}, {1.18, .1391, .2144}, {.26, .1362, .1051}, {-.06, .0106, -.0082}, {-.02, .0106, .0174},
		{-.32, .0484, -.0293}, {.27, .0269, .1604}, {.80, .0630, .2485}, {.54, .0912, .1618}, {.18, .0497, .1102}, {-.02, .0835, .0646}, {.23, .0841, .1105},
		{-.18, .0253, -.0288}, {-.06, .0279, .0258}, {.30, .0193, .1905}, {.07, .0088, .0744}, {-.07, .0303, .0248},
	} {
		const up = 10 // a yield is never below nought: moved up and back again
		got := learn.ForecastWith(middle+up, c[1]/between, []float64{c[0] + up}) - up
		if math.Abs(got-c[2]) > 4e-4 {
			t.Errorf("study %d: %.5f, printed %.4f", i+1, got, c[2])
		}
	}
}

// Rubin 1981 (Estimation in parallel randomized experiments, J. Educ. Stat. 6(4), 377-401):
// effects in eight schools, between which no spread can be found (Q = 4.7 of 7 degrees of
// freedom). With none between, each school's estimate is the pooled mean, 7.69 of these
// rounded figures.
func TestShrinksWholeWhereNothingLiesBetween(t *testing.T) {
	y := []float64{28, 8, -3, 7, -1, 1, 18, 12}
	s := []float64{15, 10, 16, 11, 9, 11, 10, 18}
	var weights, pooled float64
	for i := range y {
		weights += 1 / (s[i] * s[i])
		pooled += y[i] / (s[i] * s[i])
	}
	pooled /= weights
	if math.Abs(pooled-7.69) > 5e-3 {
		t.Errorf("pooled %.4f, want 7.69", pooled)
	}
	const up, between = 100, 1e-9
	for i := range y {
		if got := learn.ForecastWith(pooled+up, s[i]*s[i]/between, []float64{y[i] + up}) - up; math.Abs(got-pooled) > 1e-6 {
			t.Errorf("school %d: %g, want the pooled mean", i+1, got)
		}
	}
}

// The score by which the weight was chosen: Gneiting and Raftery 2007 (Strictly proper
// scoring rules, prediction, and estimation, J. Am. Stat. Assoc. 102, 359-378), for a band
// of 80 %: its width, and 2/0.2 of how far outside. The first two rows are printed in the
// documentation of the Python package scoringrules (interval_score); the others follow from
// the formula by hand.
func TestIntervalScoreAsPublished(t *testing.T) {
	for _, c := range [][4]float64{{0, .4, .1, .4}, {.1, .3, .2, .2}, {10, 20, 15, 10}, {10, 20, 8, 30}, {9, 16, 18.5, 32}} {
		if got := learn.IntervalScore(c[0], c[1], c[2]); math.Abs(got-c[3]) > 1e-12 {
			t.Errorf("[%g, %g] at %g: %g, want %g", c[0], c[1], c[2], got, c[3])
		}
	}
}
