package session

import (
	"chargehand/model/fold"
	"chargehand/model/rule"
)

// Coming are the next charges, so many of them, as the plan has them at the moment;
// ramp tells whether there is one with steps, else each is like the next.
func (s Session) Coming(n int) (charges [][]fold.Part, ramp bool) {
	if !s.Is() {
		return nil, false
	}
	return s.view().moment.timeline.Coming(n)
}

// Supplies are what is left at the moment of the materials whose lots were weighed.
func (s Session) Supplies() []rule.Supply {
	if !s.Is() {
		return nil
	}
	m := s.view().moment
	return m.checkpoint.walker.Supplies(m.since)
}
