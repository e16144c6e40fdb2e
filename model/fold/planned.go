package fold

import (
	"time"

	"chargehand/model/entry"
)

// orePlanned is by which name a plan promises its ore: that of the figure.
const orePlanned = "ore_planned"

// PromisedHours is by which name a plan promises how long it takes, from the light to the
// bloom, in hours.
const PromisedHours = "hours"

// BurnDown is how long the last charges burn before the bloom is pulled: 27 to 35 min are
// published, 32 on 30 Nov 2016 (Markewitz).
const BurnDown = 31 * time.Minute

// PromisedPull is when the bloom was to be out by the plan that a smelt was lit by, on its
// own clock.
func PromisedPull(l entry.Light) (at time.Duration, promised bool) {
	if l.Plan == nil {
		return 0, false
	}
	h := l.Plan.Promised[PromisedHours].P50
	return time.Duration(float64(h.Value) * float64(time.Hour)), h.Known
}

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
