package tui

import (
	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/session"
	"chargehand/tui/fire"
	"chargehand/tui/screen"
)

// beside tells whether the screen shown stands beside a fire that burns.
func (m Model) beside() bool {
	_, is := m.screens[m.active].(screen.Beside)
	return is && m.running.Running()
}

// takes is the screen that a key is for while nothing is asked: Fire for its acts, where
// they are keyed from beside it.
func (m Model) takes(t screen.Typed) screen.Screen {
	if m.beside() && key.Matches(t, fire.FromAfar...) {
		return m.screens[screen.Fire]
	}
	return m.screens[m.active]
}

// ofRunning is the root with the smelt at work as the one shown, where a screen stands
// beside it.
func (m Model) ofRunning() Model {
	if m.beside() {
		m.looked = session.Session{}
	}
	return m
}

// called goes back to a fire that burns, when nobody has pressed a key for long.
func (m Model) called() (Model, tea.Cmd) {
	if !m.beside() || m.dialog != nil || screen.Since(m.touched, m.now) < screen.AsideFor {
		return m, nil
	}
	return m.goTo(screen.Fire, nil)
}
