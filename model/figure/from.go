package figure

import (
	"math"
	"time"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/physics"
)

// From reads every figure off a state.
func From(s fold.State) *Reading {
	r := &Reading{
		At: s.At, Known: s.Known, Lit: s.Lit, Light: s.Light, Phase: s.Phase, Since: s.Since,
		Paused: s.Paused, OreHeld: s.OreHeld, LastOre: s.LastOre, Uneven: s.Uneven, By: s.By,
		Usual: s.Pace.Usual(), Measures: s.Measures, Blower: s.Blower,
	}
	for n := range r.Figures {
		r.Figures[n] = none
	}
	if s.Phase == "" { // no light, no smelt
		return r
	}
	r.Unfilled = s.Unfilled()
	r.BloomNever = s.BloomNever
	if s.Bloom.Known {
		r.Bloom = entry.Some(float64(s.Bloom.Value))
	}
	if s.LevelAt >= 0 {
		r.Dipped = entry.Some(s.LevelAt.Seconds())
	}
	if b, ok := s.BlastAt(s.At); ok {
		r.Blast, r.BlastAt, r.BlastOff = b.Set, setAt(&s, b), b.Off
	}
	r.Charges = charges(s)
	r.Next, r.NextRatio = next(s)
	r.clock(s)
	r.due(s)
	r.totals(s)
	r.ratios(s)
	r.bloom(s)
	burn(r, s)
	air(r, s)
	stack(r, s)
	r.Layers = layers(s)
	if s.SlagWeighed > 0 {
		r.SlagWeighed = entry.Some(float64(s.SlagWeighed))
	}
	r.Signs = signs(s)
	r.Zones = r.oreZones(zones(s))
	return r
}

// clock sets the figures of time, which are as good as the clock.
func (r *Reading) clock(s fold.State) {
	r.Figures[Elapsed] = exact(s.At.Seconds())
	if n := len(s.Charges); n > 0 {
		r.Figures[SinceCharge] = exact((s.At - s.Charges[n-1].At).Seconds())
	}
}

func (r *Reading) totals(s fold.State) {
	r.Figures[CharcoalCharged] = ofMass(s.Charcoal.Charged, Measured)
	r.Figures[CharcoalDry] = ofMass(s.Charcoal.Dry, Estimated)
	r.Figures[OreCharged] = ofMass(s.Ore.Charged, Measured)
	r.Figures[OreDry] = ofMass(s.Ore.Dry, Estimated)
}

// charges reads every charge for the strip and the log.
func charges(s fold.State) []Charge {
	cs := make([]Charge, len(s.Charges))
	var before time.Duration
	for i, c := range s.Charges {
		cs[i] = Charge{
			Number: c.Number, Seq: c.Seq, At: c.At, Measures: c.Measures, Parts: c.Parts, Double: c.Double,
			Charcoal: ofMass(c.Charcoal.Charged, Measured), Ore: ofMass(c.Ore.Charged, Measured),
			Ratio: ratio(c.Ore.Charged, c.Charcoal.Charged),
		}
		if i > 0 {
			cs[i].Minutes = (c.At - before).Minutes()
		}
		before = c.At
	}
	return cs
}

// next reads the recipe: its parts with what they weigh, and its ratio.
func next(s fold.State) ([]Part, Figure) {
	var parts []Part
	var coal, ore fold.Mass
	for _, p := range s.Recipe {
		parts = append(parts, Part{p.Part, ofMass(p.Mass, Measured)})
		switch p.What {
		case entry.Charcoal:
			coal = coal.Plus(p.Mass)
		case entry.Ore:
			ore = ore.Plus(p.Mass)
		}
	}
	if len(parts) == 0 {
		return nil, none
	}
	return parts, ratio(ore, coal)
}

// exact is a figure without a spread.
func exact(v float64) Figure { return Figure{Band: physics.Exact(v), Basis: Measured} }

// ofMass is a mass as a figure. A mass with unknown parts has no percentiles
// and its known part stands as at least.
func ofMass(m fold.Mass, basis Basis) Figure {
	if m.Unknown {
		return Figure{Basis: Unknown, AtLeast: entry.Some(m.Kg)}
	}
	if m.Guessed {
		basis = Guessed
	}
	return Figure{Band: physics.LogNormal(m.Kg, math.Sqrt(m.RelVariance())), Basis: basis} // its middle is what the scales said
}

// setAt is when a blast was observed as it is set, and of one that is off since when. "On" again and a pressure alone
// leave it as it was observed before.
func setAt(s *fold.State, b fold.Blast) time.Duration {
	if b.Off {
		return b.At
	}
	for i := len(s.Blast) - 1; i >= 0; i-- {
		if o := s.Blast[i]; o.At <= s.At && !o.Off && !o.Seen.SaysNoSetting() {
			return o.At
		}
	}
	return b.At
}
