package tui

import (
	"github.com/charmbracelet/bubbles/spinner"
	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/entry"
	"chargehand/tui/theme"
)

// reading is how the reads of the book stand.
type reading struct {
	reads   int  // under way
	spins   bool // one of them takes long
	spinner spinner.Model
}

// wait begins to turn the spinner when a read of the book is still under way at a
// tick: most are over before anybody could see it.
func (m Model) wait() (Model, tea.Cmd) {
	if m.reads == 0 || m.spins {
		return m, nil
	}
	m.spins = true
	return m, m.spinner.Tick
}

// spin turns it on until the read is over.
func (m Model) spin(msg spinner.TickMsg) (Model, []entry.Entry, tea.Cmd) {
	if m.reads == 0 {
		m.spins = false
		return m, nil, nil
	}
	var cmd tea.Cmd
	m.spinner, cmd = m.spinner.Update(msg)
	return m, nil, cmd
}

// turning is the spinner while something is read that takes long.
func (m Model) turning() string {
	if m.reads == 0 || !m.spins {
		return ""
	}
	s := m.spinner
	s.Style = m.theme.Component(theme.Now)
	return s.View()
}
