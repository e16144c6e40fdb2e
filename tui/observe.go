package tui

import (
	"chargehand/model/session"
	"chargehand/tui/screen"
)

// What the root shows, for whoever drives it: tests, and a line at a time.

// Active is the screen at the keys, Screen the state of one.
func (m Model) Active() screen.ID { return m.active }

// Screen is the state of a screen.
func (m Model) Screen(id screen.ID) screen.Screen { return m.screens[id] }

// Dialog is what is asked, nil for nothing.
func (m Model) Dialog() screen.Dialog { return m.dialog }

// Answer is what the last key did, and whether that was nothing.
func (m Model) Answer() (text string, refused bool) { return m.answer.text, m.answer.refused }

// Running is the smelt at work, Looked another one that is looked at.
func (m Model) Running() session.Session { return m.running.Session }

// Looked is a smelt other than the one at work that is looked at.
func (m Model) Looked() session.Session { return m.looked }

// Picture is what is shown, without colours.
func (m Model) Picture() string {
	g := m.theme.Grid(m.w, m.h)
	m.paint(g)
	return g.String()
}

// Locked is the word that unlocks the keys, "" while they act.
func (m Model) Locked() string { return m.locked.word }

// Playing tells whether the screen moves by itself.
func (m Model) Playing() bool { return m.playing() }
