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
	mix := mixNow(&m.timeline)
	own := s.taught.About(l.UID, m.timeline.Lit, mix)
	if t := l.Taught; t != nil { // it keeps what it was lit with
		own.Smelts, own.Failures = t.Smelts, t.Failures
		if t.Mix == mix {
			own.Yields = nil
			for _, y := range t.Yields {
				own.Yields = append(own.Yields, float64(y))
			}
		}
	}
	return own
}

// TaughtNow is what the house's smelts teach this one now, to be kept in its light.
func (s Session) TaughtNow() *entry.Taught {
	m := s.view().moment
	own := s.lessons(m)
	t := &entry.Taught{Mix: mixNow(&m.timeline), Smelts: own.Smelts, Failures: own.Failures}
	for _, y := range own.Yields {
		t.Yields = append(t.Yields, entry.Number(y))
	}
	return t
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
