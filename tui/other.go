package tui

import (
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/entry"
	"chargehand/model/session"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// Two fires may be alight at once. The one at work is the one that keys act on; the other
// burns on beside it: its clock, warnings, bell and figures go on, and one key changes
// the two. Practice stands beside nothing.

// goesOut is how long after the last that is known of it a fire that nobody has closed is
// taken to burn no more, as the solver does.
const goesOut = 12 * time.Hour

// burnsOn tells whether a smelt goes on beside another.
func (m Model) burnsOn(s session.Session) bool {
	l := s.Light()
	return s.Running() && screen.RightsIn(s) == screen.Own && !l.Practice && !l.Rehearsal && m.now.Wall.Sub(lastSaid(s)) < goesOut
}

// lastSaid is when the last act of a smelt was taken down.
func lastSaid(s session.Session) time.Time {
	for l := range s.Backward() {
		if entry.IsAct(l.Event) || l.Entry.Kind() == entry.KindLight {
			return l.Entry.Kept
		}
	}
	return time.Time{}
}

// aside is the root as another smelt takes the place of the one at work, which goes on
// beside it where it burns and has the room.
func (m Model) aside(next session.Session) Model {
	l := next.Light()
	switch {
	case m.other.ID() == next.ID():
		m.other, m.bellThere = session.Session{}, m.bell
	case m.other.Running() || l.Practice || l.Rehearsal:
		return m
	}
	if m.running.ID() != next.ID() && m.burnsOn(m.running) {
		m.other, m.bellThere, m.bell = m.running, m.bell, m.bellThere
	}
	return m
}

// changed is the root with the other fire at work.
func (m Model) changed() (Model, tea.Cmd) {
	if !m.other.Is() {
		return m.refuse(words.NoOtherFire), nil
	}
	m = m.setAside()
	m.running, m.other, m.looked = m.other, m.running, session.Session{}
	m.bell, m.bellThere, m.turned = m.bellThere, m.bell, !m.turned
	m.dialog, m.steps, m.sure, m.careful = nil, nil, nil, ""
	m = m.rehoused()
	on := screen.Fire
	if _, house := m.screens[m.active].(screen.Beside); house || m.active == screen.Book {
		on = m.active
	}
	var cmd tea.Cmd
	if on == m.active {
		if on != screen.Fire { // it begins anew with the other
			m, cmd = m.arrived(nil)
		}
	} else {
		m, cmd = m.goTo(on, nil)
	}
	m.answer = answer{text: words.NowAt(words.FireName(m.running.Light(), m.running.ID()))}
	if !m.other.Running() {
		m.other, m.bellThere = session.Session{}, m.bell
	}
	return m, cmd
}

// fires are the smelts that burn: the one at work first.
func (m Model) fires() []session.Session {
	var all []session.Session
	for _, s := range []session.Session{m.running, m.other} {
		if s.Running() {
			all = append(all, s)
		}
	}
	return all
}

// inSmelt changes the smelt of a stream, wherever it is shown.
func (m Model) inSmelt(stream string, change func(session.Session) session.Session) Model {
	switch stream {
	case m.running.ID():
		m.running = change(m.running)
	case m.other.ID():
		m.other = change(m.other)
	case m.looked.ID():
		m.looked = change(m.looked)
	}
	return m
}

// readOther reads a second smelt that was not closed and whose fire may burn still.
func (m Model) readOther() (Model, tea.Cmd) {
	if m.other.Running() || !m.burnsOn(m.running) {
		return m, nil
	}
	for _, l := range m.shelf.Lines {
		if l.ID == m.running.ID() || !l.MayBurn(m.now.Wall, goesOut) {
			continue
		}
		m.reads++
		store, id := m.cfg.Store, l.ID
		return m, m.command(func() tea.Msg {
			es, lost, err := store.Entries(id)
			return smeltRead{id: id, beside: true, entries: es, lost: lost, err: err}
		})
	}
	return m, nil
}

// otherRead takes its entries. What was being moved from one of the two to the other when
// the program ended is moved whole.
func (m Model) otherRead(s session.Session) (Model, []entry.Entry) {
	if m.other.Running() || m.running.ID() == s.ID() || !m.burnsOn(s) || !m.burnsOn(m.running) {
		return m, nil
	}
	m.other = s
	m, out := m.rehoused().joined(s.ID())
	for _, a := range []session.Session{m.running, m.other} {
		for _, b := range []session.Session{m.running, m.other} {
			var es []entry.Entry
			m, es = m.movedWhole(a, b)
			out = append(out, es...)
		}
	}
	return m.refolded(out), out
}
