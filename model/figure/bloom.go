package figure

import (
	"math"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/model/learn"
	"chargehand/model/solve"
	"chargehand/physics"
)

// bloom sets what bloom there will be, from the ore and from what smelts have
// given, and beside it, never mixed in, the chance that there is none. The shaft
// solver has no say in it: its kilograms of iron foretell nothing of those of
// published smelts.
func (r *Reading) bloom(s fold.State) {
	r.Figures[Yield] = r.promised(Yield, learn.PriorYield)
	none := physics.Band{P10: learn.NoneRate(0, 0), P50: learn.FirstNone.P10, P90: learn.FirstNone.P90}
	r.Figures[NoBloom] = r.promised(NoBloom, none.Scale(100))
	if s.OrePlanned.Known {
		r.Figures[OrePlanned] = Figure{Band: physics.Exact(s.OrePlanned.Value), Basis: Estimated}
	}
	if ore, _ := r.OreToCome(); ore.Known() && ore.P50 > 0 {
		r.Figures[BloomEnd] = r.yieldOf(ore)
	}
}

// WithOre is a reading of the past that knows how much ore, dry, the whole smelt took:
// the bloom is foretold of that.
func WithOre(r *Reading, whole Figure) *Reading {
	if !whole.Known() || whole.P50 <= r.Figures[OreDry].P50 || r.Phase == "" || r.Phase.Over() {
		return r
	}
	r = r.copied()
	r.OreTaken = whole
	r.Figures[BloomEnd] = r.yieldOf(whole)
	return r
}

// WithLessons is a reading that knows what the house's own smelts teach. What the
// plan promised stands: a smelt keeps what it was lit with.
func WithLessons(r *Reading, l learn.Lessons) *Reading {
	if r.Phase == "" {
		return r
	}
	r = r.copied()
	if n := len(l.Yields); n > 0 && !r.promises(Yield) {
		r.Figures[Yield], r.OwnYields = Figure{Band: learn.Yield(l.Yields), Basis: Estimated}, n
		if ore, _ := r.OreToCome(); ore.Known() && ore.P50 > 0 {
			r.Figures[BloomEnd] = r.yieldOf(ore)
		}
	}
	if l.Smelts > 0 && !r.promises(NoBloom) {
		r.OwnSmelts, r.OwnFailures = l.Smelts, l.Failures
		if l.Smelts >= learn.FirstSmelts {
			r.Figures[NoBloom] = Figure{Band: learn.ChanceOfNone(l.Failures, l.Smelts).Scale(100), Basis: Estimated}
		}
	}
	return r
}

// promises tells whether the smelt's plan knew a figure.
func (r *Reading) promises(n Name) bool { return r.promised(n, physics.Band{}).Basis == Estimated }

// promised is a figure as the smelt's plan knew it, else one of published
// smelts.
func (r *Reading) promised(n Name, published physics.Band) Figure {
	if r.Light.Plan != nil {
		p := r.Light.Plan.Promised[n.Key()]
		b := physics.Band{P10: float64(p.P10.Value), P50: float64(p.P50.Value), P90: float64(p.P90.Value)}
		if p.P10.Known && p.P50.Known && p.P90.Known && p.Unit == Table[n].Unit {
			return Figure{Band: b, Basis: Estimated}
		}
	}
	return Figure{Band: published, Basis: Guessed}
}

// OreToCome is the ore that the bloom will be of, dry: that of the plan, or what
// is in where that is more, where nothing more comes, or where there is no plan.
// The answer says whether it is the plan's.
func (r *Reading) OreToCome() (ore Figure, planned bool) {
	if r.OreTaken.P50 > 0 {
		return r.OreTaken, false
	}
	in, plan := r.Figures[OreDry], r.Figures[OrePlanned]
	over := r.LastOre || r.Phase == entry.BurnsDown || r.Phase.Over()
	if !plan.Known() || over || in.Known() && in.P50 >= plan.P50 {
		return in, false
	}
	return plan, true
}

// BloomOf is the bloom that so much ore, dry, is likely to give.
func (r *Reading) BloomOf(ore fold.Mass) Figure { return r.yieldOf(ofMass(ore, Estimated)) }

// yieldOf is the bloom of some ore.
func (r *Reading) yieldOf(ore Figure) Figure {
	y, rel := r.Figures[Yield], ore.RelSD()*physics.Z90
	low, high := math.Hypot(y.P50-y.P10, y.P50*rel), math.Hypot(y.P90-y.P50, y.P50*rel)
	b := physics.Band{P10: max(0, y.P50-low), P50: y.P50, P90: y.P50 + high}
	return Figure{Band: b.Scale(ore.P50), Basis: y.Basis.Weaker(ore.Basis)}
}

// iron sets what has become of the ore's iron, by the solver: how much of it has
// come down, and what the iron is like.
func (r *Reading) iron(s solve.Solution) {
	ore := r.Figures[OreDry]
	if s.Totals.OreIron <= 0 || ore.Known() && ore.P50 <= 0 { // ash holds a trace
		return
	}
	still := 0.0
	for _, l := range s.Profile {
		still += l.Ore.Sum()
	}
	down := r.comeDown(s, still)
	r.Figures[OreComeDown] = Figure{Band: down, Basis: Guessed}
	if ore.Known() && down.P50 > 0 {
		so := r.yieldOf(ore).Scale(down.P50 / 100)
		r.Figures[BloomSoFar] = Figure{Band: so, Basis: Guessed}
	}
	if s.Hearth.Iron < leastIron {
		return
	}
	r.Traces.Phosphorus, r.Traces.Manganese = physics.TraceShares(s.Hearth.Slag)
	carbon := s.Hearth.BloomCarbon()
	r.Figures[BloomCarbon] = Figure{Band: carbon.Scale(100), Basis: Guessed}
	r.Carbon = CarbonSpan{physics.CarbonClassOf(carbon.P10), physics.CarbonClassOf(carbon.P90), s.Hearth.Protected()}
}
