package tui

import (
	"slices"
	"sync"

	"chargehand/model/entry"
	"chargehand/model/house"
	"chargehand/model/learn"
	lots "chargehand/model/lot"
	"chargehand/model/ore"
	"chargehand/model/session"
	"chargehand/tui/screen"
)

// The house is kept beside the smelt: an act of it (screen.House) becomes an entry of its
// stream by Model.hand, as one of a smelt does, and joins m.home at once. What all of them
// make of it is folded when a screen first asks (*screen.Shared.House), so that a key at
// the fire does not pay for it.

// household is what the root knows of the house and of the smelts that are over.
type household struct {
	home      house.Journal      // its stream
	folded    func() house.State // what that and the smelts make of it
	house     int                // entries of it that this run kept
	reminders []entry.Remind     // that stand, come up or not
	shelf     screen.Shelved     // as far as it was read
	taught    learn.History      // what its smelts teach
	assayed   []ore.Assayed      // what its assays say of ore
	accounts  *screen.Accounts   // the account last worked out
	week      *aWeek             // the invented one, looked at; nil for none
	demo      []entry.Entry      // the invented smelt
}

// rehoused is the root with the house to be folded anew.
func (m Model) rehoused() Model {
	home, lines, running, other := m.home, m.shelf.Lines, m.running.Session, m.other.Session
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

// reassayed gives the smelts what the assays of the house say now.
func (m Model) reassayed() Model {
	all := lots.Assayed(m.home.Lines(), m.folded)
	if slices.Equal(all, m.assayed) {
		return m
	}
	m.assayed = all
	m.fires = m.each(func(s session.Session) session.Session { return s.Assayed(all) })
	m.looked = m.looked.Assayed(all)
	return m
}

// mayAssay tells whether an act of the house may change what its assays say of ore.
func mayAssay(ev entry.Event) bool {
	switch ev.(type) {
	case entry.Assay, entry.LotStored, entry.Deed, entry.Strike, entry.Amend:
		return true
	}
	return false
}

// newUID names a new thing of the house.
func (m Model) newUID() entry.UID { return entry.UID(m.cfg.NewUID()) }
