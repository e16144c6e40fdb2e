package tui

import (
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/entry"
	"chargehand/model/house"
	"chargehand/model/rule"
	"chargehand/model/session"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// answerHolds is for how long the answer to a key stands before what one asked to be
// reminded of, and that comes up meanwhile.
const answerHolds = 6 * time.Second

// reminded is the root with a reminder asked for or answered.
func (m Model) reminded(ev entry.Event) Model {
	if r, ok := ev.(entry.Remind); ok {
		m.reminders = house.Reminded(m.reminders, r)
	}
	return m
}

// comeUp is what has come up and was not answered, the longest standing first.
func (m Model) comeUp() []house.Due { return house.DueAt(m.reminders, m.now.Wall) }

// reminds tells whether that takes the place of the last answer.
func (m Model) reminds() bool {
	return len(m.comeUp()) > 0 && (m.answer.text == "" || screen.Since(m.touched, m.now) >= answerHolds)
}

// answerReminder ends the first of what has come up, until its next time if it comes
// each time.
func (m Model) answerReminder() screen.Effect {
	r := m.comeUp()[0].Remind
	next := house.Answered(r, m.now.Wall)
	return screen.Each{screen.House{{Event: next}}, screen.Said(words.ReminderAnswered(r, next))}
}

// sound is what the bell goes by of a smelt.
func (m Model) sound(of session.Session) rule.Sound {
	s := rule.Sound{Heard: m.heard, At: screen.Since(m.cfg.Start, m.now)}
	if of.Running() {
		r := of.Reading()
		s.Warnings, s.Charges = of.Standing(), len(r.Charges)
		s.Waits = r.HasDue && !r.Paused && !r.BlastOff && !r.LastOre && (r.Phase == entry.MainBurn || r.Phase == entry.OreOff)
		if s.Waits {
			_, middle, _ := r.Due.Next.At()
			s.Left = middle - r.At
		}
	}
	return s
}

// lastComeUp is when the last of what has come up did; zero for nothing.
func (m Model) lastComeUp() (last time.Time) {
	for _, d := range m.comeUp() {
		if d.At.After(last) {
			last = d.At
		}
	}
	return last
}

// ring sounds the bell where the rule of it says so. It goes by the fires that burn: what
// is replayed never sounds.
func (m Model) ring() (Model, tea.Cmd) {
	var reminds, rings, there bool
	m.bell, reminds = m.bell.Ring(rule.Sound{Heard: m.heard, Reminded: m.lastComeUp()})
	m.running.bell, rings = m.running.bell.Ring(m.sound(m.running.Session))
	m.other.bell, there = m.other.bell.Ring(m.sound(m.other.Session))
	if !reminds && !rings && !there || m.cfg.Ring == nil {
		return m, nil
	}
	sound := m.cfg.Ring
	return m, m.command(func() tea.Msg {
		sound()
		return nil
	})
}
