package tui

import (
	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/session"
	"chargehand/model/words"
)

// far tells whether Fire shows its far view.
func (m Model) far() bool {
	f, ok := m.screens[fireScreen].(fire)
	return ok && f.far
}

// toggleFar shows the far view of the smelt at work, from any screen; at Fire
// the same key goes back to the near one.
func (m Model) toggleFar() (Model, tea.Cmd) {
	switch {
	case m.active == fireScreen && m.shown().Is():
		return m.withScreen(fire{far: !m.far()}), nil
	case !m.running.Is():
		return m.refuse(words.NothingAtWork), nil
	}
	m.looked = session.Session{}
	return m.withScreen(fire{far: true}).goTo(fireScreen)
}
