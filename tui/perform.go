package tui

import (
	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/entry"
	"chargehand/model/session"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// take does what a key asks for. The key itself is written down: with the first
// event that it keeps, else among those that are no acts. These are handed out
// before an act, and when a dialog was closed or the smelt is left.
func (m Model) take(e screen.Effect, k Pressed, closed bool) (Model, []entry.Entry, tea.Cmd) {
	e = m.watchOnly(m.lookOnly(e))
	out := m.spilled
	m.spilled = nil
	keeps, leaves := false, false
	for _, one := range screen.Flat(e) {
		switch one := one.(type) {
		case screen.Keep:
			keeps = keeps || len(one) > 0
		case screen.House:
			keeps = keeps || len(one) > 0
		case screen.Kindle, screen.Set, screen.Rebook:
			keeps = true
		case screen.Quit, screen.Open, screen.Other:
			leaves = true
		}
	}
	if !keeps {
		var es []entry.Entry
		m, es = m.note(k, false)
		out = append(out, es...)
	}
	if keeps || closed || leaves {
		var es []entry.Entry
		m, es = m.flush()
		out = append(out, es...)
	}
	m.answer = answer{} // a key that only moves about shows what it did
	m, es, cmd := m.perform(e, k.Key.String())
	if m.closed != "" {
		m.answer.text, m.closed = words.Both(m.closed, m.answer.text), ""
	}
	return m, append(out, es...), cmd
}

// perform does one effect after the other. The first event that it keeps carries
// the key; none does where the key is written down already.
func (m Model) perform(e screen.Effect, keyed string) (Model, []entry.Entry, tea.Cmd) {
	var out []entry.Entry
	var cmds []tea.Cmd
	var about []string
	kept := func(es ...entry.Entry) {
		for _, e := range es {
			out, about = append(out, e), append(about, e.Local)
		}
	}
	for _, e := range screen.Flat(e) {
		var cmd tea.Cmd
		var es []entry.Entry
		switch e := e.(type) {
		case screen.Keep:
			m, es = m.handAll(e, keyed)
			kept(es...)
			keyed = "" // one key, written down once
		case screen.Kindle:
			m.by = e.By
			m, es = m.begin(e, keyed)
			kept(es...)
			keyed = ""
		case screen.Set:
			if m = m.chosen(e.Setting); m.watches() {
				continue
			}
			var one entry.Entry
			m, one = m.hand(entry.House, screen.Act{Event: e.Setting}, m.active, keyed)
			kept(one)
			keyed = ""
		case screen.House:
			group := ""
			if len(e) > 1 { // they belong together
				group = m.ledger.next()
			}
			for _, a := range e {
				var one entry.Entry
				a.Group = group
				m, one = m.reminded(a.Event).hand(entry.House, a, m.active, keyed)
				kept(one)
				keyed = ""
			}
		case screen.Rebook:
			m, es = m.moved(e, keyed)
			kept(es...)
			keyed = ""
		case screen.Say:
			m.answer = answer{text: e(m.Shared()), about: about}
		case screen.Refuse:
			m = m.refuse(string(e))
		case screen.Answered:
			m.steps = append(m.steps[:len(m.steps):len(m.steps)], e)
		case screen.Again:
			var next screen.Effect
			m, next = m.judged(e(m.Shared()), nil)
			m, es, cmd = m.perform(next, "")
			out = append(out, es...)
		default:
			m, cmd = m.move(e)
		}
		cmds = append(cmds, cmd)
	}
	return m, out, tea.Batch(cmds...)
}

// move does what keeps no event.
func (m Model) move(e screen.Effect) (Model, tea.Cmd) {
	switch e := e.(type) {
	case screen.Ask:
		m.dialog, m.touched = e.Dialog, m.now
		if d, ok := e.Dialog.(interface {
			Opened(*screen.Shared) screen.Dialog
		}); ok {
			m.dialog = d.Opened(m.Shared())
		}
		m = m.resumed()
	case screen.Put:
		m = m.With(e.Screen)
	case screen.Chemistry:
		m.chem = !m.chem
	case screen.Lock:
		m.locked = locking(m.ledger.count)
	case screen.Run:
		return m, m.command(e.Cmd)
	case screen.Go:
		return m.goTo(e.To, e.With)
	case screen.Back:
		return m.back()
	case screen.Week:
		return m, m.askWeek()
	case screen.Far:
		return m.far()
	case screen.Running:
		m.looked = session.Session{}
		return m.goTo(screen.Fire, nil)
	case screen.Other:
		return m.changed()
	case screen.Open:
		return m.open(e.Smelt, e.On)
	case screen.Quit:
		return m.quit(e.Anyway)
	case screen.See:
		m.asked = append(m.asked[:len(m.asked):len(m.asked)], e.Event)
	case screen.Rehearse:
		m.wants = &e
		return m.quit(false)
	}
	return m, nil
}

// far shows the far view of the smelt at work, from any screen.
func (m Model) far() (Model, tea.Cmd) {
	if !m.running.Is() {
		return m.refuse(words.NothingAtWork), nil
	}
	m.looked = session.Session{}
	return m.goTo(screen.Fire, screen.Far{})
}

// quit leaves once all is kept.
func (m Model) quit(anyway bool) (Model, tea.Cmd) {
	if anyway || len(m.ledger.pending) == 0 {
		return m, tea.Quit
	}
	m.leaving = true
	m.answer = answer{text: words.Leaving}
	return m.askUnkept(), nil
}
