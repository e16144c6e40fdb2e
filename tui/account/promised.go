package account

import (
	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/model/plan"
	"chargehand/tui/words"
)

// against is what the plan that the smelt was lit by promised, beside what came out; "" where
// there was no plan, or it promised nothing. Masses are dry on both sides.
func (p painter) against() string {
	o, over := p.smelt.Outcome()
	l := p.smelt.Light()
	if l.Plan == nil || len(l.Plan.Promised) == 0 || !over {
		return ""
	}
	kg := func(m fold.Mass) entry.Maybe[float64] {
		return entry.Maybe[float64]{Value: m.Kg, Known: !m.Unknown && m.Kg > 0}
	}
	t := p.smelt.Timeline()
	pr := l.Plan.Promised
	return words.PromisedAgainst(p.sh.Units, []words.Promise{
		{Of: words.PromiseOre, Was: pr[plan.PromisedOre], Is: kg(t.Ore.Dry)},
		{Of: words.PromiseCharcoal, Was: pr[plan.PromisedCharcoal], Is: kg(t.Charcoal.Dry)},
		{Of: words.PromiseHours, Was: pr[plan.PromisedHours], Is: entry.Some(o.Lasted.Hours())},
	}, pr[plan.PromisedChance], o.Bloom)
}
