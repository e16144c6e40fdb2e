package tui

import (
	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/entry"
	"chargehand/model/rehearse"
	"chargehand/model/session"
	modelwords "chargehand/model/words"
	"chargehand/tui/act"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// In a rehearsal the furnace answers: what is looked at (screen.See) waits in Model.asked until the program (drive.go) has
// asked it and says what is seen. What it says of itself comes as happened. Both become entries that are taken down by the
// furnace, and not by a key.

// practice is what a rehearsal adds to the root.
type practice struct {
	asked []entry.Event    // what is looked at, until the furnace that answers has said what is seen
	wants *screen.Rehearse // the rehearsal that is left for
	full  bool             // the shaft has no room for a bucket
	paced string           // what every screen says of the clock
}

// saw is what is seen of what was looked at, or why nothing is.
type saw struct {
	event entry.Event
	why   rehearse.Unseen
}

// happened is what nobody at the furnace could miss.
type happened struct{ rehearse.Happened }

// answers puts what the furnace adds into the smelt at work.
func (m Model) answers(ev entry.Event) (Model, entry.Entry) {
	m, e := m.hand(m.running.ID(), screen.Act{Event: ev}, rehearse.Answers, "")
	return m.refolded([]entry.Entry{e}), e
}

func (m Model) saw(s saw) (Model, []entry.Entry, tea.Cmd) {
	if s.event == nil {
		return m.refuse(words.Unseen(s.why)), nil, nil
	}
	m, e := m.answers(s.event)
	text := m.units.Event(s.event)
	if l, ok := m.running.LastAct(); ok {
		text = act.Describe(m.units, m.running.Session, l)
	}
	m.answer = answer{text: words.YouSee(text), about: []string{e.Local}}
	return m, []entry.Entry{e}, nil
}

func (m Model) happened(h happened) (Model, []entry.Entry, tea.Cmd) {
	if h.Event == nil && h.Notice.Shown() {
		m.answer = answer{text: words.RehearsalNext(h.Notice, m.running.Reading().LastOre)}
		return m, nil, nil
	}
	ev := h.Event
	if ev == nil {
		ev = entry.Note{Text: modelwords.Noticed(h.Notice)}
	}
	m, e := m.answers(ev)
	m.answer = answer{text: m.units.Event(ev), about: []string{e.Local}}
	if h.Event == nil {
		m.answer.text = words.RehearsalTells(h.Notice)
	}
	out := []entry.Entry{e}
	if _, opened := ev.(entry.Opened); !opened {
		return m, out, nil
	}
	m.looked, m.dialog = session.Session{}, nil
	m, cmd := m.goTo(screen.Start, nil)
	return m, out, cmd
}

// readRehearsal opens the smelt of the rehearsal.
func (m Model) readRehearsal() tea.Cmd {
	if m.cfg.Rehearsal == "" {
		return nil
	}
	_, cmd := m.open(m.cfg.Rehearsal, screen.Fire)
	return cmd
}

// Wants is the rehearsal that was left for, if any.
func (m Model) Wants() (screen.Rehearse, bool) {
	if m.wants == nil {
		return screen.Rehearse{}, false
	}
	return *m.wants, true
}

// Wants is the rehearsal that a program was left for, if any.
func Wants(left tea.Model) (screen.Rehearse, bool) {
	switch p := left.(type) {
	case *driven:
		return p.model.Wants()
	case *program:
		return p.model.Wants()
	}
	return screen.Rehearse{}, false
}
