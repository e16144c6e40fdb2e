package tui

import (
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/entry"
	"chargehand/model/session"
	"chargehand/tui/draw"
	"chargehand/tui/screen"
)

// What the tests outside need of the inside.

func (m Model) Said() draw.Answer   { return m.said() }
func (m Model) Tally() screen.Tally { return m.tally() }
func (m Model) About() []string     { return m.answer.about }
func (m Model) Careful() string     { return m.careful }
func (m Model) Version() uint64     { return m.version }
func (m Model) Config() Config      { return m.cfg }
func (m Model) ReadHouse() tea.Cmd  { return m.readHouse() }

// ClockJump compares the two clocks between two readings.
var ClockJump = clockJump

// Guarded runs a command as the root does.
var Guarded = guarded

// ShelfFailed is the message that the shelf cannot be read.
func ShelfFailed(err error) tea.Msg { return shelfRead{err: err} }

// IsFailed tells whether a message says that a command panicked.
func IsFailed(msg tea.Msg) bool { _, is := msg.(failed); return is }

// WithRunning is the root with another smelt at work.
func (m Model) WithRunning(s session.Session) Model {
	m.running.Session = s
	return m
}

// Sized is the root in a window of another size.
func (m Model) Sized(w, h int) Model {
	m.w, m.h = w, h
	return m
}

// Inner is the root that a Program drives, and whether its solver is at work.
func Inner(p tea.Model) (Model, bool) { q := p.(*program); return q.model, q.solve.busy }

// Smear changes the frame that a Program has kept.
func Smear(p tea.Model) { p.(*program).frame += "!" }

// Frames is how far frames lie apart, FrameDue that one is to be drawn.
const Frames = frames

type FrameDue = frameDue

// Pace is how often a replay that plays moves on.
const Pace = pace

// Open opens a dialog, as an effect of a screen does.
func (m Model) Open(d screen.Dialog) Model {
	m, _ = m.move(screen.Ask{Dialog: d})
	return m
}

// Keeping is the model with an event kept in the smelt shown, as by a screen.
func (m Model) Keeping(ev entry.Event) Model {
	m, _ = m.handAll([]screen.Act{{Event: ev}}, "")
	return m
}

// Half is something left half typed.
type Half struct {
	On                 screen.ID
	Smelt, Field, Text string
	At                 time.Time
}

// OpenedWith is what is said where a smelt goes on in which so much was left half typed.
func OpenedWith(id string, all ...Half) string {
	var m Model
	m.drafts = map[place]draft{}
	for _, h := range all {
		m.drafts[place{where{h.On, h.Smelt}, h.Field}] = draft{h.Text, h.At}
	}
	return m.opened(id)
}
