package fold

import (
	"time"

	"chargehand/model/entry"
)

// orePlanned is by which name a plan promises its ore: that of the figure.
const orePlanned = "ore_planned"

// promised is the ore, dry, that a smelt was lit to take.
func promised(l entry.Light) entry.Maybe[float64] {
	if l.Plan != nil {
		if p, ok := l.Plan.Promised[orePlanned]; ok && p.P50.Known {
			return entry.Some(float64(p.P50.Value))
		}
	}
	return entry.None[float64]()
}

// plan takes the steps that a smelt has from now on: its ore is what is in and
// what they hold. Where some of that was never weighed there is no telling.
func (c *Timeline) plan(steps []entry.RecipeStep, at time.Duration) {
	if len(steps) == 0 {
		return
	}
	ore := c.Ore.Dry
	for _, st := range steps {
		_, dry := c.about.scale.sum(st.Parts, entry.Ore, at)
		ore = ore.Plus(dry.Scaled(float64(st.Charges)))
	}
	if c.OrePlanned = entry.None[float64](); !ore.Unknown && ore.Kg > 0 {
		c.OrePlanned = entry.Some(ore.Kg)
	}
}
