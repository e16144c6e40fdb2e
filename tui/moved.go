package tui

import (
	"maps"

	"chargehand/model/entry"
	"chargehand/model/session"
	"chargehand/tui/screen"
)

// An entry is moved to the other fire in two steps: it is booked there, and once that is
// kept struck out here. The twins of two streams are two files, so that no write brings
// both to the disk at once: killed between the two steps it stands in both, and is struck
// out when both are opened again (movedWhole). The other way round it could be in neither.

// follow is what is done once an entry is kept.
type follow struct {
	stream string
	strike entry.Strike
}

// moved books an entry in the smelt of the other fire.
func (m Model) moved(e screen.Rebook, keyed string) (Model, []entry.Entry) {
	from := m.shown().ID()
	m, booked := m.hand(m.other.ID(), e.Act, m.active, keyed)
	m.follows = maps.Clone(m.follows)
	if m.follows == nil {
		m.follows = map[string]follow{}
	}
	m.follows[booked.Local] = follow{from, e.Strike}
	out := []entry.Entry{booked}
	return m.refolded(out), out
}

// followed does what is to follow what the book took, and nothing where it did not.
func (m Model) followed(k Kept) (Model, []entry.Entry) {
	if len(m.follows) == 0 {
		return m, nil
	}
	m.follows = maps.Clone(m.follows)
	var out []entry.Entry
	for _, e := range k.Entries {
		f, is := m.follows[e.Local]
		if !is {
			continue
		}
		delete(m.follows, e.Local)
		var struck entry.Entry
		m, struck = m.hand(f.stream, screen.Act{Event: f.strike}, m.active, "")
		out = append(out, struck)
	}
	for _, e := range k.Refused {
		delete(m.follows, e.Local)
	}
	return m.refolded(out), out
}

// movedWhole strikes out in one smelt what was moved from it to another and never struck
// out here.
func (m Model) movedWhole(from, to session.Session) (Model, []entry.Entry) {
	struck := map[uint64]bool{}
	for l := range from.Lines() {
		if s, is := l.Entry.Event.(entry.Strike); is && s.Moved != "" {
			struck[s.Target.Seq] = true
		}
	}
	var out []entry.Entry
	for l := range to.Lines() {
		o := l.Entry.From
		if o.Stream != from.ID() || o.Seq == 0 || struck[o.Seq] {
			continue
		}
		struck[o.Seq] = true
		var e entry.Entry
		m, e = m.hand(from.ID(), screen.Act{Event: entry.Strike{Target: from.Ref(o.Seq), Moved: to.ID()}}, m.active, "")
		out = append(out, e)
	}
	return m, out
}
