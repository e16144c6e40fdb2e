package compare

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/stat"

	"chargehand/model/entry"
	"chargehand/model/shelf"
)

// Measure is one thing by which smelts are compared.
type Measure string

// The measures, what went in and how before what came out.
const (
	Ore      Measure = "ore"      // kg, dry where that is known, else as charged
	Charcoal Measure = "charcoal" // kg as charged, fill included
	Ratio    Measure = "charcoal_per_ore"
	Interval Measure = "interval" // minutes from charge to charge
	Blast    Measure = "blast"    // l/min
	Rise     Measure = "ore_rise" // minutes from the first ore to full ore
	Hours    Measure = "hours"
	Slag     Measure = "slag"  // kg as weighed
	Bloom    Measure = "bloom" // kg
	Yield    Measure = "yield" // bloom per ore
	PerBloom Measure = "charcoal_per_bloom"
)

// In are what a crew chooses or what follows from it; Out is what came.
var (
	In  = []Measure{Ore, Charcoal, Ratio, Interval, Blast, Rise, Hours}
	Out = []Measure{Slag, Bloom, Yield, PerBloom}
)

// All of them.
var All = slices.Concat(In, Out)

// Value is a measure of a smelt, where it is known.
func Value(s shelf.Summary, m Measure) (v float64, known bool) {
	over := func(a, b float64, known bool) (float64, bool) {
		if !known || b <= 0 {
			return 0, false
		}
		return a / b, true
	}
	ore := s.OreDry
	if !ore.Positive() {
		ore = s.Ore
	}
	switch m {
	case Ore:
		return float64(ore.Value), ore.Positive()
	case Charcoal:
		return float64(s.Charcoal.Value), s.Charcoal.Positive()
	case Ratio:
		return over(float64(s.Charcoal.Value), float64(ore.Value), s.Charcoal.Positive() && ore.Positive())
	case Interval:
		return float64(s.Interval.Value), s.Interval.Positive()
	case Blast:
		return float64(s.Blast.Value), s.Blast.Positive()
	case Rise:
		return float64(s.Rise.Value), s.Rise.Known
	case Hours:
		return s.Lasted.Hours(), s.Lasted > 0 && s.Phase.Over()
	case Slag:
		return float64(s.Slag.Value), s.Slag.Positive()
	case Bloom:
		if s.NoBloom && !s.Bloom.Known {
			return 0, true
		}
		return float64(s.Bloom.Value), s.Bloom.Known
	case Yield:
		y, _, known := s.Yield()
		if s.NoBloom && !s.Bloom.Known {
			return 0, ore.Positive()
		}
		return y, known
	case PerBloom:
		return over(float64(s.Charcoal.Value), float64(s.Bloom.Value), s.Charcoal.Positive() && s.Bloom.Positive())
	}
	return 0, false
}

// Few is below how many own smelts nothing is told.
const Few = 5

// Own are the smelts of a house that count: over, and neither practice nor invented.
func Own(all []shelf.Summary) []shelf.Summary {
	var own []shelf.Summary
	for _, s := range all {
		if !s.Practice && !s.Rehearsal && !s.Invented && s.Phase.Over() {
			own = append(own, s)
		}
	}
	return own
}

// Difference is how far smelts lie apart in a measure, in standard deviations of one's own.
type Difference struct {
	Measure   Measure
	Spreads   float64
	Low, High float64
}

// Compared are smelts beside each other.
type Compared struct {
	Smelts   []shelf.Summary
	Own      int          // how many own smelts stand behind it
	Differed []Difference // of what went in, the most first; none where there are too few own smelts
	Trends   []Trend
}

// Of compares smelts, before all that are kept.
func Of(chosen, all []shelf.Summary) Compared {
	own := Own(all)
	c := Compared{Smelts: chosen, Own: len(own)}
	if len(own) < Few {
		return c
	}
	for _, m := range In {
		low, high, all := math.Inf(1), math.Inf(-1), true
		for _, s := range chosen {
			v, known := Value(s, m)
			all = all && known
			low, high = math.Min(low, v), math.Max(high, v)
		}
		sd, ok := spread(own, m)
		if !all || !ok {
			continue
		}
		c.Differed = append(c.Differed, Difference{m, (high - low) / sd, low, high})
	}
	slices.SortStableFunc(c.Differed, func(a, b Difference) int { return cmp.Compare(b.Spreads, a.Spreads) })
	c.Trends = Trends(own)
	return c
}

// spread is the standard deviation of a measure over own smelts, of which five at least
// know it.
func spread(own []shelf.Summary, m Measure) (float64, bool) {
	vs := values(own, m)
	if len(vs) < Few {
		return 0, false
	}
	sd := stat.StdDev(vs, nil)
	return sd, sd > 1e-9
}

func values(own []shelf.Summary, m Measure) (vs []float64) {
	for _, s := range own {
		if v, known := Value(s, m); known {
			vs = append(vs, v)
		}
	}
	return vs
}

// Outlying tells whether a smelt lies farthest from the others in a measure, and by more
// than half of a spread of own smelts from the next: it is shown bold.
func (c Compared) Outlying(i int, m Measure, own []shelf.Summary) bool {
	v, known := Value(c.Smelts[i], m)
	sd, ok := spread(own, m)
	if !known || !ok || len(c.Smelts) < 3 {
		return false
	}
	nearest := math.Inf(1)
	for j, s := range c.Smelts {
		if w, known := Value(s, m); known && j != i {
			nearest = math.Min(nearest, math.Abs(v-w))
		}
	}
	return nearest > sd && !math.IsInf(nearest, 1)
}

// Bar is a charge of a strip.
type Bar struct {
	At      float64 // minutes since the first ore
	Minutes float64 // since the charge before; 0 for the first
	Ore     float64 // kg
	Slow    bool
}

// Day is the day of a smelt, for a strip that is lined up at the first ore.
type Day struct {
	ID       string
	Charges  []Bar
	BurnDown entry.Maybe[float64] // when the burn-down began, and when the bloom was pulled
	Pull     entry.Maybe[float64]
}
