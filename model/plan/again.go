package plan

import (
	"math"
	"slices"
	"time"

	"chargehand/model/entry"
	"chargehand/model/fold"
)

// Remains is what there still is for the rest of a smelt, and by when its bloom has to be
// out.
type Remains struct {
	Ore      entry.Maybe[float64] // kg as it lies; not known for enough
	Charcoal entry.Maybe[float64] // the same
	Until    time.Duration        // on the smelt's clock: as long as there is light, and hands; 0 for not said
}

// EndName names one way to bring a smelt to its end.
type EndName string

// The ways, as they are told.
const (
	EndLate    EndName = "as planned, later"
	EndShorter EndName = "shorter, ore dropped"
	EndLeaner  EndName = "leaner"
)

// End is one way to bring a smelt that burns to its end.
type End struct {
	Name     EndName
	Steps    []entry.RecipeStep
	Ore      fold.Mass     // of the whole smelt, as it lies
	OreDry   fold.Mass     // the same, dry
	Charcoal fold.Mass     // of the whole smelt, fill included, as it lies
	LastOre  time.Duration // when the last ore goes in, on the smelt's clock; negative where none does
	Pull     time.Duration
	Fears    []Fear
	Short    map[entry.What]float64 // kg that are not there
}

// What may be feared of an end beside what is of a plan.
const (
	FearDark     Fear = "dark"     // later than light and hands last
	FearOre      Fear = "ore"      // more ore than there is
	FearCharcoal Fear = "charcoal" // more charcoal than there is
	FearLittle   Fear = "little"   // less ore than a published bloom ever came of
)

// leanTo is the share of the ore planned that a leaner end charges at most (common
// practice: a step less; a published rise goes 1, 1.5, 2 kg).
const leanTo = 0.75

// AgainFrom plans the rest of a smelt anew at a moment of it: what is left of the plan as it
// is; so much of it that stores, light and hands and, where that is too late, what was
// promised in the morning last for; and with less ore on each charge. The pace is the
// smelt's own so far, or the plan's before there is one. Nil where no plan with steps is on
// its way.
func AgainFrom(c *fold.Timeline, left Remains) []End {
	rest := each(c.Rest())
	if len(rest) == 0 {
		return nil
	}
	a := again{c: c, left: left, first: c.At, pace: c.Pace.Usual()}
	if a.pace <= 0 {
		a.pace = 10 * time.Minute // that of a bucket, until anybody knows (Markewitz 2018)
		if e := rest[0].Every; e.Known && e.Value > 0 {
			a.pace = time.Duration(float64(e.Value) * float64(time.Minute))
		}
	}
	if n := len(c.Charges); n > 0 {
		a.first = max(c.At, c.Charges[n-1].At+a.pace)
	}
	return []End{a.end(EndLate, rest), a.end(EndShorter, a.shorter(rest)), a.end(EndLeaner, a.leaner(rest))}
}

// each are steps of one charge each.
func each(steps []entry.RecipeStep) (all []entry.RecipeStep) {
	for _, st := range steps {
		one := st
		one.Charges = 1
		for range st.Charges {
			all = append(all, one)
		}
	}
	return all
}

// joined are steps of one charge each, like ones in one.
func joined(all []entry.RecipeStep) (steps []entry.RecipeStep) {
	for _, st := range all {
		if n := len(steps); n > 0 && steps[n-1].Does == st.Does && slices.Equal(steps[n-1].Parts, st.Parts) && steps[n-1].Every == st.Every {
			steps[n-1].Charges++
			continue
		}
		steps = append(steps, st)
	}
	return steps
}

type again struct {
	c     *fold.Timeline
	left  Remains
	first time.Duration // when the next charge goes in
	pace  time.Duration
}

// of is the mass of a material in charges, as it lies and dry.
func (a again) of(charges []entry.RecipeStep, w entry.What) (sum fold.Total) {
	for _, st := range charges {
		for _, p := range st.Parts {
			if p.What == w {
				t, _ := a.c.PartOf(p, a.c.At)
				sum.Charged, sum.Dry = sum.Charged.Plus(t.Charged), sum.Dry.Plus(t.Dry)
			}
		}
	}
	return sum
}

// pull is when the bloom comes out after so many charges.
func (a again) pull(charges int) time.Duration {
	return a.first + time.Duration(charges)*a.pace + fold.BurnDown
}

// fits tells whether what there is lasts for charges, and they are over in time.
func (a again) fits(charges []entry.RecipeStep) bool {
	over := func(w entry.What, left entry.Maybe[float64]) bool {
		kg := a.of(charges, w).Charged
		return left.Known && !kg.Unknown && kg.Kg > left.Value+0.01
	}
	if over(entry.Ore, a.left.Ore) || over(entry.Charcoal, a.left.Charcoal) {
		return false
	}
	at := a.pull(len(charges))
	if a.left.Until > 0 && at > a.left.Until {
		return false
	}
	promised, ok := fold.PromisedPull(a.c.Light)
	return !ok || at <= promised || a.left.Until > 0
}

// shorter drops charges with ore, the last one first, until the rest fits. The charcoal
// over the last ore stays.
func (a again) shorter(rest []entry.RecipeStep) []entry.RecipeStep {
	rest = slices.Clone(rest)
	for !a.fits(rest) {
		last := -1
		for i, st := range rest {
			if st.Parts.Holds(entry.Ore) {
				last = i
			}
		}
		if last < 0 {
			break
		}
		rest = slices.Delete(rest, last, last+1)
	}
	return rest
}

// leaner charges at most a share of the ore planned, and no more than there is, over as
// many charges as charcoal, light and hands last for.
func (a again) leaner(rest []entry.RecipeStep) []entry.RecipeStep {
	rest = slices.Clone(rest)
	planned, share := a.of(rest, entry.Ore).Charged, leanTo
	if a.left.Ore.Known && planned.Kg > 0 {
		share = min(share, max(0, a.left.Ore.Value)/planned.Kg)
	}
	meant, given := map[bool]float64{}, map[bool]float64{} // by measure and by weight, so far
	for i, st := range rest {
		rest[i].Parts = slices.Clone(st.Parts)
		for j, p := range st.Parts {
			if p.What != entry.Ore || p.None() {
				continue
			}
			step, amount := 0.05, float64(p.Mass.Value)
			if p.Count.Known {
				step, amount = 0.5, float64(p.Count.Value)
			}
			by := p.Count.Known
			meant[by] += share * amount
			less := math.Floor((meant[by]-given[by])/step+1e-6) * step
			given[by] += less
			switch {
			case by:
				p.Count, p.Mass = entry.Some(entry.Count(less)), entry.None[entry.Kilogram]()
			default:
				p.Mass = entry.Some(entry.Kilogram(math.Round(less*100) / 100))
			}
			rest[i].Parts[j] = p
		}
	}
	for len(rest) > 1 && a.tooLong(rest) {
		i := len(rest) - 1 // the charcoal over the last ore stays
		for i > 0 && !rest[i].Parts.Holds(entry.Ore) {
			i--
		}
		rest = slices.Delete(rest, i, i+1)
	}
	return rest
}

// tooLong tells whether charges take more charcoal than there is, or more light.
func (a again) tooLong(charges []entry.RecipeStep) bool {
	kg := a.of(charges, entry.Charcoal).Charged
	if a.left.Charcoal.Known && !kg.Unknown && kg.Kg > a.left.Charcoal.Value+0.01 {
		return true
	}
	return a.left.Until > 0 && a.pull(len(charges)) > a.left.Until
}

// end is what charges come to.
func (a again) end(name EndName, charges []entry.RecipeStep) End {
	ore, charcoal := a.of(charges, entry.Ore), a.of(charges, entry.Charcoal)
	e := End{
		Name: name, LastOre: -1, Pull: a.pull(len(charges)), Short: map[entry.What]float64{},
		Ore: a.c.Ore.Charged.Plus(ore.Charged), OreDry: a.c.Ore.Dry.Plus(ore.Dry), Charcoal: a.c.Charcoal.Charged.Plus(charcoal.Charged),
	}
	rich := 0.0
	for i, st := range charges {
		if !st.Parts.Holds(entry.Ore) {
			continue
		}
		e.LastOre = a.first + time.Duration(i)*a.pace
		one := charges[i : i+1]
		if coal := a.of(one, entry.Charcoal).Charged.Sound(); coal.Kg > 0 {
			rich = max(rich, a.of(one, entry.Ore).Charged.Kg/coal.Kg)
		}
	}
	short := func(w entry.What, kg fold.Mass, left entry.Maybe[float64], f Fear) {
		if by := kg.Kg - left.Value; left.Known && !kg.Unknown && by > 0.05 {
			e.Short[w] = by
			e.Fears = append(e.Fears, f)
		}
	}
	short(entry.Ore, ore.Charged, a.left.Ore, FearOre)
	short(entry.Charcoal, charcoal.Charged, a.left.Charcoal, FearCharcoal)
	if a.left.Until > 0 && e.Pull > a.left.Until {
		e.Fears = append(e.Fears, FearDark)
	}
	if rich > 1.5 || rich > 1.1 && a.pace < 6*time.Minute {
		e.Fears = append(e.Fears, FearRich)
	}
	if !e.OreDry.Unknown && e.OreDry.Kg < LeastOre {
		e.Fears = append(e.Fears, FearLittle)
	}
	if first := a.c.Charges; len(first) > 0 && (e.Pull-first[0].At).Hours() > longDay {
		e.Fears = append(e.Fears, FearLong)
	}
	e.Steps = joined(charges)
	return e
}
