package fold

import (
	"time"

	"chargehand/model/entry"
)

// next is what the next charge is: the last recipe keyed, or the plan's step that
// the charges since then have reached, without ore when ore is held or over.
func (c *Timeline) next(at time.Duration) []Part { return c.after(0, at) }

// Coming are the next charges as planned, at most so many of them, as they are weighed
// now. Ramp tells whether a plan with steps is behind them, which ends; else each is
// like the next.
func (c *Timeline) Coming(n int) (charges [][]Part, ramp bool) {
	if ramp = len(c.planned.Ramp) > 0; ramp {
		steps := 0
		for _, st := range c.planned.Ramp {
			steps += st.Charges
		}
		n = min(n, max(steps-c.done, 0))
	}
	for i := range n {
		charges = append(charges, c.after(i, c.At))
	}
	return charges, ramp
}

// after is the charge after so many more.
func (c *Timeline) after(more int, at time.Duration) []Part {
	var parts []Part
	for _, p := range Planned(c.planned, c.done+more) {
		if p.What == entry.Ore && (c.OreHeld || c.LastOre) {
			continue
		}
		m, _ := c.about.scale.part(p, at)
		parts = append(parts, Part{p, m})
	}
	return parts
}

// Rest is what is left of a plan with steps from the next charge on; nil where there is
// no such plan, or its end is reached.
func (c *Timeline) Rest() (steps []entry.RecipeStep) {
	done := c.done
	for _, st := range c.planned.Ramp {
		gone := min(done, st.Charges)
		done -= gone
		if st.Charges -= gone; st.Charges > 0 {
			steps = append(steps, st)
		}
	}
	return steps
}

// NextPlanned is the next charge as planned, with its ore also while that is held.
func (c *Timeline) NextPlanned() entry.Parts { return Planned(c.planned, c.done) }

// step is the ramp's charge after so many; past its end the last step goes on.
func step(r entry.Recipe, done int) entry.Parts {
	for _, st := range r.Ramp {
		if done < st.Charges {
			return st.Parts
		}
		done -= st.Charges
	}
	return r.Ramp[len(r.Ramp)-1].Parts
}
