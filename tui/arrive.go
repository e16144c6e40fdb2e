package tui

import (
	"errors"
	"fmt"
	"maps"
	"runtime/debug"

	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/entry"
	"chargehand/model/session"
	"chargehand/model/words"
)

// tick is a second gone by: keys of moving about are written down, the clocks
// compared, and the running smelt read anew.
func (m Model) tick(at entry.Stamp) (Model, []entry.Entry, tea.Cmd) {
	m, out := m.flush()
	m.now = at
	if jump, jumped := clockJump(m.ticked, at); jumped {
		var e entry.Entry
		m, e = m.hand(m.stream(), act{event: jump}, m.active, "")
		m = m.refolded([]entry.Entry{e})
		m.answer = answer{text: m.theme.Units.Event(jump), about: []string{e.Local}}
		out = append(out, e)
	}
	m.ticked = at
	m.running = m.running.Tick(at)
	m, shown := m.testify()
	m, care := m.caution()
	out = append(append(out, shown...), care...)
	if m.leaving && m.tally().notKept > 0 && m.dialog == nil {
		m.dialog = leaveUnkept(m.shared()).ask
	}
	return m, out, nil
}

// kept puts what the book acknowledged in its place.
func (m Model) kept(k Kept) (Model, []entry.Entry, tea.Cmd) {
	if len(k.Told) > 0 {
		m.told = append(m.told[:len(m.told):len(m.told)], k.Told...)
		return m, nil, nil
	}
	m.ledger = m.ledger.settled(k.Entries...).settled(k.Refused...)
	for _, e := range k.Entries {
		switch e.Stream {
		case m.running.ID():
			m.running = m.running.Keep(e)
		case m.looked.ID():
			m.looked = m.looked.Keep(e)
		case entry.House:
			m.house++
		}
	}
	for _, e := range k.Refused {
		if e.Stream == m.running.ID() {
			m.running = m.running.Drop(e.Local)
		}
		if e.Stream == m.looked.ID() {
			m.looked = m.looked.Drop(e.Local)
		}
		m = m.refuse(words.Refused(m.theme.Units.Event(e.Event), k.Err.Error()))
	}
	m.ledger.trouble = ""
	if k.Err != nil && len(k.Refused) == 0 {
		m.ledger.trouble = words.KeptNot(k.Err.Error())
	}
	m = m.refolded(append(k.Entries[:len(k.Entries):len(k.Entries)], k.Refused...))
	if m.leaving && len(m.ledger.pending) == 0 {
		return m, nil, tea.Quit
	}
	return m, nil, nil
}

// open shows a smelt, on a screen: the one at work at once, others when they were read.
func (m Model) open(id string, to screenID) (Model, tea.Cmd) {
	switch {
	case id == m.running.ID():
		m.looked = session.Session{}
		return m.goTo(to)
	case m.stand.shown != nil && id == m.stand.shown.ID:
		m, _ := m.smeltRead(smeltRead{id: id, to: to, entries: m.stand.demo, demo: true}) // nothing is kept of it
		return m, nil
	}
	store := m.cfg.Store
	return m, m.command(func() tea.Msg {
		es, err := store.Entries(id)
		return smeltRead{id: id, to: to, entries: es, err: err}
	})
}

// smeltRead takes the entries of a smelt that was asked for. One that can go on
// becomes the one at work; the screens have asked before that.
func (m Model) smeltRead(r smeltRead) (Model, []entry.Entry) {
	switch {
	case r.err != nil:
		return m.refuse(words.CannotOpen(r.id, r.err.Error())), nil
	case len(r.entries) == 0:
		return m.refuse(words.EmptySmelt(r.id)), nil
	}
	s := opened(r.id, r.entries, r.demo, m.now)
	var out []entry.Entry
	if s.Running() {
		m.running, m.looked = s, session.Session{}
		m, out = m.joined()
	} else {
		m.looked = s
	}
	m, _ = m.goTo(r.to)
	m.answer = answer{text: words.Opened(r.id)}
	return m, out
}

// joined writes down, with no event, that a smelt goes on after the machine was
// started anew: by that entry the boot clock is joined to the smelt's own. Left
// to the next key, a wall clock set in between would turn back a time that the
// screen has shown.
func (m Model) joined() (Model, []entry.Entry) {
	last, _ := m.running.LastEntry()
	if m.now.Boot == "" || last.Boot == m.now.Boot {
		return m, nil
	}
	m, e := m.hand(m.running.ID(), act{}, m.active, "")
	out := []entry.Entry{e}
	return m.refolded(out), out
}

// shelfRead takes the lines of the shelf, and the demo.
func (m Model) shelfRead(r shelfRead) (Model, []entry.Entry, tea.Cmd) {
	if r.demo != nil {
		line := lineOf(opened(r.demo[0].Stream, r.demo, false, m.now))
		m.stand.demo, m.stand.shown = r.demo, &line
		return m, nil, nil
	}
	m.stand.lines, m.stand.err = r.lines, r.err
	first := !m.stand.known
	m.stand.known = r.err == nil
	if r.err != nil {
		return m.refuse(words.CannotReadShelf(r.err.Error())), nil, nil
	}
	if first && m.cfg.Practise && !m.running.Is() {
		m, e := m.begin(practice(m.cfg.Starters[0]), Pressed{At: m.now})
		return m, []entry.Entry{e}, nil
	}
	if s, ok := m.screens[m.active].(start); ok && s.waits {
		m = m.withScreen(start{at: s.at})
		id, _ := unfinished(m.shared())
		if id == "" {
			return m.refuse(words.NoneUnfinished), nil, nil
		}
		m, cmd := m.open(id, fireScreen)
		return m, nil, cmd
	}
	return m, nil, nil
}

func (m Model) readShelf() tea.Cmd {
	store := m.cfg.Store
	return m.command(func() tea.Msg {
		lines, err := store.Smelts()
		return shelfRead{lines: lines, err: err}
	})
}

func (m Model) readDemo() tea.Cmd {
	demo := m.cfg.Demo
	if demo == nil {
		return nil
	}
	return m.command(func() tea.Msg {
		es, err := demo()
		if err == nil && len(es) == 0 {
			err = errors.New(words.NoDemo)
		}
		if err != nil {
			return failed{fmt.Errorf("%s: %w", words.DoLookAt, err)}
		}
		return shelfRead{demo: es}
	})
}

// command wraps what touches the world.
func (m Model) command(cmd tea.Cmd) tea.Cmd { return guarded(m.cfg.Crashed, debug.Stack, cmd) }

func (m Model) withScreen(s screen) Model {
	m.screens = maps.Clone(m.screens)
	m.screens[s.name()] = s
	return m
}
