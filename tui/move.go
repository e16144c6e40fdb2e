package tui

import (
	"slices"

	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/session"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// goTo makes a screen active and hands it something to begin with. Fire and start
// begin a new way back.
func (m Model) goTo(id screen.ID, with any) (Model, tea.Cmd) {
	switch {
	case m.screens[id] == nil:
		return m.refuse(m.notHere()), nil
	case id == m.active && with == nil:
		return m, nil
	case id == screen.Fire || id == m.outside():
		m.behind = nil
	case id != m.active:
		m.behind = append(slices.Clone(m.behind), m.active)
	}
	if _, form := m.screens[m.active].(screen.Drafter); form {
		m = m.setAside()
	}
	m.active = id
	return m.ofRunning().arrived(with)
}

// notHere says why a screen is not among those of this program.
func (m Model) notHere() string {
	if m.watches() {
		return words.OnlyWatching
	}
	return words.NotInRehearsal
}

// outside is the screen where no smelt is open.
func (m Model) outside() screen.ID {
	if m.watches() {
		return screen.Shelf
	}
	return screen.Start
}

// back goes to the screen before: at last to the smelt at work, else the start. A
// screen with a way back of its own goes that first.
func (m Model) back() (Model, tea.Cmd) {
	if b, ok := m.screens[m.active].(screen.Backer); ok {
		if next, back := b.Back(); back {
			return m.With(next), nil
		}
	}
	if _, form := m.screens[m.active].(screen.Drafter); form && len(m.halfTyped()) > 0 {
		m.answer = answer{text: words.FormCalledOff}
	}
	n := len(m.behind)
	switch {
	case n > 0:
		m.active, m.behind = m.behind[n-1], m.behind[:n-1]
	case m.active == screen.Fire && m.looked.Is():
		m.looked = session.Session{}
		if !m.running.Is() {
			m.active = m.outside()
		}
	case m.active == screen.Fire && m.running.Is() && !m.running.Own(): // it is over
		m.active = m.outside()
	case m.active == m.outside() && m.running.Is():
		m.active = screen.Fire
	case m.active != screen.Fire:
		m.active = m.outside()
	default:
		return m.refuse(words.NowhereBack), nil
	}
	return m.ofRunning().arrived(nil)
}

// arrived lets a screen begin, and reads the shelf anew where it is shown.
func (m Model) arrived(with any) (Model, tea.Cmd) {
	m = m.weekLeft()
	var cmds []tea.Cmd
	if s, ok := m.screens[m.active].(screen.Enterer); ok {
		next, e := s.Entered(m.Shared(), with)
		m = m.With(next)
		for _, one := range screen.Flat(e) {
			var cmd tea.Cmd
			m, cmd = m.move(one)
			cmds = append(cmds, cmd)
		}
	}
	m = m.resumedForm()
	if m.active == screen.Book { // it begins with them
		m.unread = 0
	}
	if _, house := m.screens[m.active].(screen.Beside); house || m.active == m.outside() || m.active == screen.Shelf {
		m.reads++
		cmds = append(cmds, m.readShelf())
	}
	return m, tea.Batch(cmds...)
}
