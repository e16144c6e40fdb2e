package session

import (
	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/model/learn"
)

// Taught is the smelt with what the house's smelts teach. Only those that were lit
// before it do, so that the past of a smelt is read as it could have been.
func (s Session) Taught(h learn.History) Session {
	s.taught = h
	return s.anew()
}

// lessons are what the house's smelts teach this one. Practice, a rehearsal and
// what was invented are of no house.
func (s Session) lessons(m moment) learn.Lessons {
	l := m.timeline.Light
	if l.Practice || l.Rehearsal || l.Invented || l.Undated {
		return learn.Lessons{}
	}
	return s.taught.About(l.UID, m.timeline.Lit, mixNow(&m.timeline))
}

// mixNow is the mix of the ore that went in last, before any of that which goes in
// next.
func mixNow(c *fold.Timeline) string {
	of := func(parts entry.Parts) (string, bool) {
		for _, p := range parts {
			if p.What == entry.Ore && !p.None() {
				_, lot := c.PartOf(p, c.At)
				return lot.Mix, true
			}
		}
		return "", false
	}
	for i := len(c.Charges) - 1; i >= 0; i-- {
		if mix, ok := of(c.Charges[i].Parts); ok {
			return mix
		}
	}
	if mix, ok := of(c.Light.Recipe); ok {
		return mix
	}
	mix, _ := of(entry.Parts{{What: entry.Ore, Mass: entry.Some(entry.Kilogram(1))}})
	return mix
}
