package tui

import (
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/entry"
	"chargehand/model/rule"
	"chargehand/model/session"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// Two fires may be alight at once. The one at work is the one that keys act on; the other
// burns on beside it: its clock, warnings, bell and figures go on, and one key changes
// the two. Practice stands beside nothing.

// smelt is one that the root has open to be keyed into, with what goes where it goes.
type smelt struct {
	session.Session
	bell  rule.Bell // what has sounded for it
	place role      // where the solver remembers it
}

// fires are the smelts that the root has open.
type fires struct {
	running smelt           // at work
	other   smelt           // another whose fire burns meanwhile
	looked  session.Session // any other, looked at
}

// shown is the smelt on the screen: another than the one at work when one is looked at.
func (f fires) shown() session.Session {
	if f.looked.Is() {
		return f.looked
	}
	return f.running.Session
}

// alight are the smelts that burn: the one at work first.
func (f fires) alight() (all []session.Session) {
	for _, s := range []smelt{f.running, f.other} {
		if s.Running() {
			all = append(all, s.Session)
		}
	}
	return all
}

// each is the fires with all of them changed.
func (f fires) each(change func(session.Session) session.Session) fires {
	f.running.Session, f.other.Session, f.looked = change(f.running.Session), change(f.other.Session), change(f.looked)
	return f
}

// in is the fires with the smelt of a stream changed, wherever it is shown.
func (f fires) in(stream string, change func(session.Session) session.Session) fires {
	return f.each(func(s session.Session) session.Session {
		if s.ID() == stream {
			return change(s)
		}
		return s
	})
}

// with is the fires with another smelt at work. beside says that the one before goes on
// beside it.
func (f fires) with(next session.Session, beside bool) fires {
	if f.other.ID() == next.ID() {
		f.other = smelt{}
	}
	if beside {
		f.other = f.running
	}
	f.running, f.looked = f.other.another(next), session.Session{}
	return f
}

// another is a smelt to be open beside this one.
func (s smelt) another(of session.Session) smelt {
	if s.Is() && s.place == firstFire {
		return smelt{Session: of, place: secondFire}
	}
	return smelt{Session: of, place: firstFire}
}

// goesOut is how long after the last that is known of it a fire that nobody has closed is
// taken to burn no more, as the solver does.
const goesOut = 12 * time.Hour

// burnsOn tells whether a smelt goes on beside another.
func (m Model) burnsOn(s session.Session) bool {
	l := s.Light()
	return s.Running() && !l.Practice && !l.Rehearsal && m.now.Wall.Sub(lastSaid(s)) < goesOut
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

// putToWork has a smelt be the one at work. The one before goes on beside it where it
// burns and has the room.
func (m Model) putToWork(next session.Session, practice bool) Model {
	room := !practice && (!m.other.Running() || m.other.ID() == next.ID())
	m.fires = m.with(next, room && m.running.ID() != next.ID() && m.burnsOn(m.running.Session))
	return m
}

// changed is the root with the other fire at work.
func (m Model) changed() (Model, tea.Cmd) {
	if !m.other.Is() {
		return m.refuse(words.NoOtherFire), nil
	}
	m = m.setAside()
	m.running, m.other, m.looked = m.other, m.running, session.Session{}
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
		m.other = smelt{}
	}
	return m, cmd
}

// readOther reads a second smelt that was not closed and whose fire may burn still.
func (m Model) readOther() (Model, tea.Cmd) {
	if m.other.Running() || !m.burnsOn(m.running.Session) {
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
	if m.other.Running() || m.running.ID() == s.ID() || !m.burnsOn(s) || !m.burnsOn(m.running.Session) {
		return m, nil
	}
	m.other = m.running.another(s)
	m, out := m.rehoused().joined(s.ID())
	for _, a := range m.alight() {
		for _, b := range m.alight() {
			var es []entry.Entry
			m, es = m.movedWhole(a, b)
			out = append(out, es...)
		}
	}
	return m.refolded(out), out
}
