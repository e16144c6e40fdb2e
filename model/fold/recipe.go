package fold

import (
	"time"

	"chargehand/model/entry"
)

// next is what the next charge is: the last recipe keyed, or the plan's step that
// the charges since then have reached, without ore when ore is held or over.
func (c *Timeline) next(at time.Duration) []Part {
	var parts []Part
	for _, p := range Planned(c.planned, c.done) {
		if p.What == entry.Ore && (c.OreHeld || c.LastOre) {
			continue
		}
		m, _ := c.about.scale.part(p, at)
		parts = append(parts, Part{p, m})
	}
	return parts
}

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
