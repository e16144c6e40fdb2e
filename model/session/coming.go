package session

import (
	"chargehand/model/entry"
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

// Rest is what is left of the plan from the next charge on; nil where there is none with
// steps, or its end is reached.
func (s Session) Rest() []entry.RecipeStep {
	if !s.Is() {
		return nil
	}
	return s.view().moment.timeline.Rest()
}

// Supplies are what is left at the moment of the materials whose lots were weighed.
func (s Session) Supplies() []rule.Supply {
	if !s.Is() {
		return nil
	}
	m := s.view().moment
	return m.checkpoint.walker.Supplies(m.since)
}

// Timeline is the smelt at the moment, to be read only.
func (s Session) Timeline() *fold.Timeline {
	t := s.view().moment.timeline
	return &t
}
