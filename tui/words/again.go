package words

import (
	"strings"
	"time"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/fold"
	"chargehand/model/plan"
	modelwords "chargehand/model/words"
)

// The card on which the rest of a day is planned anew.
const (
	DoAgain         = "the rest of the day, again from here"
	NoRestToPlan    = "no plan with steps is on its way: o, r, n or the arrows set the next charge"
	NothingPromised = "nothing was promised in the morning: this smelt was lit without a plan"

	AgainOre      = "ore that may still go in"
	AgainCharcoal = "charcoal that is left"
	AgainUntil    = "bloom out within: light and hands"

	AgainOreAll      = "ore in all"
	AgainCharcoalAll = "charcoal"
	AgainLastOre     = "last ore"
	AgainPull        = "bloom out"
	AgainBloom       = "bloom"
	AgainFears       = "to fear"

	ShortAgainLate     = "as planned"
	ShortAgainShorter  = "shorter"
	ShortAgainLeaner   = "leaner"
	ShortAgainOre      = "ore left"
	ShortAgainCharcoal = "charcoal left"
	ShortAgainUntil    = "out by"

	NoneOfIt    = "none more"
	AgainNoFear = "nothing"
)

// EndTaken is what a key takes, EndHead how its column is headed.
func EndTaken(n plan.EndName) string { return "take: " + string(n) }

// EndHead heads the column of an end, in as much room as there is.
func EndHead(n plan.EndName, roomy bool) string {
	said, _, more := strings.Cut(string(n), ",")
	if more && roomy {
		return string(n)
	}
	return said
}

// AgainTaken says what goes on from here.
func AgainTaken(n plan.EndName) string {
	return "from here on " + string(n) + "; the morning's promise stays beside it"
}

// ClockOf is a time of the day.
func ClockOf(t time.Time) string { return t.Format(modelwords.Clock) }

// AgainMass is a mass of which some may not be known.
func AgainMass(u modelwords.Units, m fold.Mass) string {
	kg := u.Value(m.Kg, "kg", 1)
	if m.Unknown {
		return "at least " + kg
	}
	return kg
}

// AgainSoFar is what is in, and how long a charge takes.
func AgainSoFar(u modelwords.Units, ore, charcoal fold.Mass, pace time.Duration) string {
	said := "in so far: " + AgainMass(u, ore) + " ore, " + AgainMass(u, charcoal) + " charcoal"
	if pace > 0 {
		said += "; a charge takes " + modelwords.Number(pace.Minutes(), 0) + " min"
	}
	return said
}

// AgainLeft is what there still is, as it was counted.
func AgainLeft(u modelwords.Units, ore, charcoal entry.Maybe[float64], until time.Duration, clock string) string {
	var said []string
	kg := func(m entry.Maybe[float64], what string) {
		if m.Known {
			said = append(said, u.Value(m.Value, "kg", 1)+" "+what)
			return
		}
		said = append(said, what+" not counted")
	}
	kg(ore, "ore")
	kg(charcoal, "charcoal")
	if until > 0 {
		said = append(said, "out by "+clock)
	}
	return "left for it: " + strings.Join(said, ", ")
}

// MorningPromised is what the plan promised.
func MorningPromised(u modelwords.Units, p *entry.PlanTaken, out string) string {
	said := "the morning's plan"
	if p.Wanted.Mass.Known {
		said += " for a " + PlanName(u, p.Wanted.What, float64(p.Wanted.Mass.Value))
	}
	said += " promised"
	if ore := p.Promised[plan.PromisedOre].P50; ore.Known {
		said += " " + u.Value(float64(ore.Value), "kg", 1) + " ore dry"
	}
	if out != "" {
		said += ", the bloom out at " + out
	}
	if c := p.Promised[plan.PromisedChance].P50; c.Known {
		said += ", about " + ChanceBrief(float64(c.Value))
	}
	return said
}

// AgainBloomIs is the bloom to be expected.
func AgainBloomIs(u modelwords.Units, f figure.Figure) string {
	if !f.Known() {
		return "not known"
	}
	return u.Value(f.P10, "kg", 1) + " to " + u.Value(f.P90, "kg", 1)
}

// AgainFear are the fears of an end, with how much is short.
func AgainFear(u modelwords.Units, e plan.End) (all []string) {
	for _, f := range e.Fears {
		said := FearBrief(f)
		switch f {
		case plan.FearOre:
			said += " by " + u.Value(e.Short[entry.Ore], "kg", 1)
		case plan.FearCharcoal:
			said += " by " + u.Value(e.Short[entry.Charcoal], "kg", 1)
		}
		all = append(all, said)
	}
	return all
}
