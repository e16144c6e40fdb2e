package physics_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"
	"pgregory.net/rapid"

	"chargehand/physics"
)

func TestZ90(t *testing.T) {
	agree(t, "normal quantile", physics.Z90, distuv.UnitNormal.Quantile(0.9), 1e-14)
	agree(t, "its mirror", -physics.Z90, distuv.UnitNormal.Quantile(0.1), 1e-14)
}

func TestBandShapes(t *testing.T) {
	normal := distuv.Normal{Mu: 10, Sigma: 2}
	b := physics.Normal(10, 2)
	for p, got := range map[float64]float64{0.1: b.P10, 0.5: b.P50, 0.9: b.P90} {
		agree(t, "normal", got, normal.Quantile(p), 1e-12)
	}
	agree(t, "its standard deviation", b.SD(), 2, 1e-12)

	lognormal := distuv.LogNormal{Mu: math.Log(10), Sigma: 0.2}
	b = physics.LogNormal(10, 0.2)
	for p, got := range map[float64]float64{0.1: b.P10, 0.5: b.P50, 0.9: b.P90} {
		agree(t, "lognormal", got, lognormal.Quantile(p), 1e-12)
	}
	agree(t, "its relative standard deviation", b.RelSD(), 0.2, 1e-12)
	agree(t, "and variance", b.RelVariance(), 0.04, 1e-12)
}

func TestBandArithmeticAgainstDraws(t *testing.T) {
	const n = 200_000
	source := rand.New(rand.NewPCG(1, 2))
	draw := func(d interface{ Rand() float64 }) []float64 {
		out := make([]float64, n)
		for i := range out {
			out[i] = d.Rand()
		}
		return out
	}
	a := draw(distuv.LogNormal{Mu: math.Log(8), Sigma: 0.15, Src: source})
	c := draw(distuv.LogNormal{Mu: math.Log(0.85), Sigma: 0.06, Src: source})
	e := draw(distuv.Normal{Mu: 30, Sigma: 4, Src: source})
	f := draw(distuv.Normal{Mu: 19, Sigma: 3, Src: source})
	combine := func(x, y []float64, op func(x, y float64) float64) physics.Band {
		out := make([]float64, n)
		for i := range out {
			out[i] = op(x[i], y[i])
		}
		slices.Sort(out)
		at := func(p float64) float64 { return stat.Quantile(p, stat.Empirical, out, nil) }
		return physics.Band{P10: at(0.1), P50: at(0.5), P90: at(0.9)}
	}
	lognA, lognC := physics.LogNormal(8, 0.15), physics.LogNormal(0.85, 0.06)
	normE, normF := physics.Normal(30, 4), physics.Normal(19, 3)
	for what, pair := range map[string][2]physics.Band{
		"product":    {lognA.Times(lognC), combine(a, c, func(x, y float64) float64 { return x * y })},
		"quotient":   {lognA.Over(lognC), combine(a, c, func(x, y float64) float64 { return x / y })},
		"sum":        {normE.Plus(normF), combine(e, f, func(x, y float64) float64 { return x + y })},
		"difference": {normE.Minus(normF), combine(e, f, func(x, y float64) float64 { return x - y })},
		"scaled":     {normE.Scale(-2), combine(e, f, func(x, _ float64) float64 { return -2 * x })},
	} {
		// 200,000 draws settle a percentile of these to about 0.3 %.
		agree(t, what+" P10", pair[0].P10, pair[1].P10, 0.01)
		agree(t, what+" P50", pair[0].P50, pair[1].P50, 0.01)
		agree(t, what+" P90", pair[0].P90, pair[1].P90, 0.01)
	}
}

func TestBandsOfNonsense(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for what, b := range map[string]physics.Band{
		"exact nan": physics.Exact(nan), "exact inf": physics.Exact(inf), "normal nan": physics.Normal(nan, 1),
		"normal inf spread": physics.Normal(1, inf), "lognormal of a negative": physics.LogNormal(-1, 0.1),
		"lognormal nan": physics.LogNormal(nan, 0.1), "lognormal overflow": physics.LogNormal(1, 1e6),
		"over nought": physics.Exact(1).Over(physics.Band{}), "times nought": physics.Exact(1).Times(physics.Band{}),
		"scaled by nan": physics.Exact(1).Scale(nan), "floor nan": physics.Exact(1).AtLeast(nan),
	} {
		if !b.IsZero() {
			t.Errorf("%s: got %v, want the zero band", what, b)
		}
	}
	if got := physics.Normal(5, nan); got != physics.Exact(5) {
		t.Errorf("undefined spread: got %v, want none", got)
	}
	if got := physics.LogNormal(5, -1); got != physics.Exact(5) {
		t.Errorf("negative spread: got %v, want none", got)
	}
	if got := physics.Normal(1, 2).AtLeast(0); got.P10 != 0 || got.P50 != 1 {
		t.Errorf("floor at nought: got %v", got)
	}
	// A normal that reaches below zero keeps its spread in a product: from the upper side, ln(P90/P50)/Z90.
	wide := physics.Normal(1, 1)
	agree(t, "spread of the upper side", wide.RelSD(), math.Log(wide.P90)/physics.Z90, 1e-12)
}

func TestBandsStayInOrder(t *testing.T) {
	any64 := rapid.Float64()
	rapid.Check(t, func(t *rapid.T) {
		a := physics.Normal(any64.Draw(t, "mean"), any64.Draw(t, "sd"))
		b := physics.LogNormal(any64.Draw(t, "median"), rapid.Float64Range(-1, 5).Draw(t, "relative"))
		k := any64.Draw(t, "k")
		for what, c := range map[string]physics.Band{
			"normal": a, "lognormal": b, "sum": a.Plus(b), "difference": a.Minus(b), "product": b.Times(b),
			"quotient": a.Over(b), "mixed": a.Times(b), "scaled": a.Scale(k), "floored": a.AtLeast(k),
		} {
			if !(c.P10 <= c.P50 && c.P50 <= c.P90) {
				t.Fatalf("%s is out of order or undefined: %v", what, c)
			}
		}
	})
}

// The truncated normal, against the quantile and the distribution function of another library.
func TestNormalWithin(t *testing.T) {
	for _, c := range [][2]float64{{0.77, 0.234}, {0.27, 0.06}, {0.98, 0.3}, {0.02, 0.5}} {
		n := distuv.Normal{Mu: c[0], Sigma: c[1]}
		a, b := n.CDF(0), n.CDF(1)
		got := physics.NormalWithin(c[0], c[1], 0, 1)
		for _, q := range [][2]float64{{0.1, got.P10}, {0.5, got.P50}, {0.9, got.P90}} {
			agree(t, "a quantile within", q[1], n.Quantile(a+q[0]*(b-a)), 1e-9)
		}
		if got.P10 < 0 || got.P90 > 1 {
			t.Errorf("%v: %+v", c, got)
		}
	}
	for _, c := range [][2]float64{{1.2, 0.1}, {0.5, 0}, {-0.1, 0.1}} {
		if got := physics.NormalWithin(c[0], c[1], 0, 1); got.P10 != got.P90 || got.P50 < 0 || got.P50 > 1 {
			t.Errorf("%v: %+v", c, got)
		}
	}
}
