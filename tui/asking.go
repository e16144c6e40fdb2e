package tui

import (
	"strings"
	"time"

	"chargehand/model/doubt"
	"chargehand/model/entry"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// asking is what is asked, how far it was answered, and what has closed of it.
type asking struct {
	dialog  screen.Dialog
	touched entry.Stamp       // the last key, or when the dialog opened
	steps   []screen.Answered // that are answered, until it is kept or left
	sure    []doubt.Name      // the doubts answered meanwhile

	shut    shut
	closed  string        // what closed on the way to this key's answer, "" for nothing
	spilled []entry.Entry // kept on that way, before what the key keeps
}

// unattended closes what is asked once it was left without a key for too long.
func (m Model) unattended(now entry.Stamp) Model {
	if m.dialog == nil {
		return m
	}
	stays := screen.Unattended
	if d, ok := m.dialog.(interface{ Stays() time.Duration }); ok {
		stays = d.Stays()
	}
	if screen.Since(m.touched, now) < stays {
		return m
	}
	said := words.CautionRead
	if ask := m.dialog.Ask(m.Shared()); ask != nil {
		said = words.ClosedItself(ask.Label)
	}
	_, form := m.screens[m.active].(screen.Drafter)
	if half := m.halfTyped(); len(half) > 0 && !form {
		last := half[len(half)-1]
		said = words.HalfTyped(last.Label, last.Text)
	}
	m.shut = shut{list: m.dialog, since: m.touched, deaf: stays + deafFor}
	if m.typing() {
		m.shut = shut{since: now, deaf: deafFor}
	}
	m = m.closes(said)
	m.answer, m.leaving = answer{text: m.closed}, false
	return m
}

// closes closes what is asked, in these words, or in those of what it leaves.
func (m Model) closes(said string) Model {
	d, leaves := m.dialog.(interface {
		Leaves(*screen.Shared) screen.Effect
	})
	var e screen.Effect
	if leaves {
		e = d.Leaves(m.Shared())
	}
	if _, form := m.screens[m.active].(screen.Drafter); e == nil && !form { // a form stays
		m = m.setAside()
	}
	_, field := m.dialog.(screen.Field)
	m.dialog, m.steps, m.closed = nil, nil, said
	if e == nil {
		return m
	}
	m, e = m.judged(e, nil)
	m, es, _ := m.perform(e, "")
	m.spilled = append(m.spilled[:len(m.spilled):len(m.spilled)], es...)
	if field {
		m.closed = words.FieldKeeping(said, m.answer.text)
	} else {
		m.closed = words.ClosedKeeping(m.answer.text)
	}
	return m
}

// shut is a field or a list that closed a moment ago. Keys that were still meant for it would
// act.
type shut struct {
	list  screen.Dialog // one that closed itself; nil for a field, or a list that an act closed
	since entry.Stamp   // when; of a list when its last key was. Zero for nothing
	deaf  time.Duration // for so long what it had a use for does nothing, until another key
}

const deafFor = time.Second

// late says why a key does nothing that was meant for what is shut; "" for one that acts.
func (m Model) late(k Pressed, t screen.Typed) (why string) {
	s := m.shut
	switch {
	case s.since == (entry.Stamp{}), screen.Since(s.since, k.At) >= s.deaf:
	case s.list != nil && m.dialog == nil:
		if _, e := s.list.Update(m.Shared(), k); !isPast(e) {
			return words.KeyAfterList(screen.KeyLabel(string(t)))
		}
	case s.list == nil && isDigit(t) && !m.typing():
		return words.DigitAfterField(screen.KeyLabel(string(t)))
	}
	return ""
}

func isPast(e screen.Effect) bool { _, is := e.(screen.Past); return is }

func isDigit(t screen.Typed) bool { return len(t) == 1 && strings.Contains("0123456789.,", string(t)) }
