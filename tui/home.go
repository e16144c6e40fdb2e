package tui

import (
	"sync"

	"chargehand/model/entry"
	"chargehand/model/house"
	"chargehand/model/session"
)

// The house is kept beside the smelt: an act of it (screen.House) becomes an entry of its
// stream by Model.hand, as one of a smelt does, and joins m.home at once. What all of them
// make of it is folded when a screen first asks (screen.Shared.House), so that a key at
// the fire does not pay for it.

// rehoused is the root with the house to be folded anew.
func (m Model) rehoused() Model {
	home, lines, running, other := m.home, m.shelf.Lines, m.running, m.other
	m.folded = sync.OnceValue(func() house.State {
		uses := make([]house.Use, 0, len(lines)+1)
		for _, l := range lines {
			if l.ID != running.ID() && l.ID != other.ID() {
				uses = append(uses, l.Used)
			}
		}
		for _, s := range []session.Session{running, other} {
			if s.Is() { // as it stands now
				uses = append(uses, house.UsedBy(s.Entries()))
			}
		}
		return home.Fold(uses)
	})
	return m
}

// newUID names a new thing of the house.
func (m Model) newUID() entry.UID { return entry.UID(m.cfg.NewUID()) }
