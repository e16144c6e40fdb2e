package tui

import (
	"errors"
	"fmt"
	"runtime/debug"
	"slices"
	"syscall"

	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/entry"
	"chargehand/model/learn"
	"chargehand/model/session"
	"chargehand/model/shelf"
	"chargehand/tui/screen"
	"chargehand/tui/start"
	"chargehand/tui/words"
)

// tick is a second gone by: keys of moving about are written down, the clocks
// compared, and the running smelt read anew.
func (m Model) tick(at entry.Stamp) (Model, []entry.Entry, tea.Cmd) {
	if m.watches() {
		m, cmd := m.watch(at)
		return m, nil, cmd
	}
	m, out := m.flush()
	m.now = at
	m = m.unattended(at)
	m, half := m.drafted()
	out = append(append(out, m.spilled...), half...)
	m.closed, m.spilled = "", nil
	if jump, jumped := clockJump(m.ticked, at); jumped {
		streams := []string{m.stream()}
		if m.other.Running() { // its times go by the same clock
			streams = append(streams, m.other.ID())
		}
		for i, stream := range streams {
			var e entry.Entry
			m, e = m.hand(stream, screen.Act{Event: jump}, m.active, "")
			m = m.refolded([]entry.Entry{e})
			if out = append(out, e); i == 0 {
				m.answer = answer{text: m.units.Event(jump), about: []string{e.Local}}
			}
		}
	}
	m.ticked = at
	m.running.Session, m.other.Session = m.running.Tick(at), m.other.Tick(at)
	m, shown := m.testify()
	m, care := m.caution()
	out = append(append(out, shown...), care...)
	if m.leaving {
		m = m.askUnkept()
	}
	m, rings := m.ring()
	m, back := m.called()
	m, cmd := m.wait()
	return m, out, tea.Batch(cmd, rings, back)
}

// kept puts what the book acknowledged in its place.
func (m Model) kept(k Kept) (Model, []entry.Entry, tea.Cmd) {
	if len(k.Told) > 0 {
		m.told = append(m.told[:len(m.told):len(m.told)], k.Told...)
		m.messages = append(m.messages[:len(m.messages):len(m.messages)], k.Told...)
		m.unread += len(k.Told)
		return m, nil, nil
	}
	m.ledger = m.ledger.settled(k.Entries...).settled(k.Refused...)
	for _, e := range k.Entries {
		if e.Stream == entry.House {
			m.house++
			m.home = m.home.Keep(e)
			continue
		}
		m.fires = m.in(e.Stream, func(s session.Session) session.Session { return s.Keep(e) })
	}
	for _, e := range k.Refused {
		if e.Stream == entry.House {
			m.home = m.home.Drop(e.Local)
		} else {
			m.fires = m.in(e.Stream, func(s session.Session) session.Session { return s.Drop(e.Local) })
		}
		m = m.refuse(words.Refused(m.units.Event(e.Event), k.Err.Error()))
	}
	m.ledger.trouble = ""
	if k.Err != nil && len(k.Refused) == 0 {
		m.ledger.trouble = words.KeptNot(k.Err.Error(), errors.Is(k.Err, syscall.ENOSPC))
	}
	m = m.rehoused().refolded(append(k.Entries[:len(k.Entries):len(k.Entries)], k.Refused...))
	if slices.ContainsFunc(k.Refused, func(e entry.Entry) bool { return e.Stream == entry.House && mayAssay(e.Event) }) {
		m = m.reassayed()
	}
	m, out := m.followed(k)
	if m.leaving && len(m.ledger.pending) == 0 {
		return m, out, tea.Quit
	}
	return m, out, nil
}

// open shows a smelt, on a screen: the one at work at once, others when they were read.
func (m Model) open(id string, on screen.ID) (Model, tea.Cmd) {
	switch {
	case id == m.running.ID():
		m.looked = session.Session{}
		return m.goTo(on, nil)
	case id == m.other.ID():
		m, first := m.changed()
		m, then := m.goTo(on, nil)
		return m, tea.Batch(first, then)
	case m.shelf.Demo != nil && id == m.shelf.Demo.ID: // nothing is kept of it
		return m.show(session.Open(id, m.demo, session.ToLookAt), on)
	}
	m.reads++
	store := m.cfg.Store
	return m, m.command(func() tea.Msg {
		es, lost, err := store.Entries(id)
		return smeltRead{id: id, on: on, entries: es, lost: lost, err: err}
	})
}

// smeltRead takes the entries of a smelt that was asked for. One that can go on
// becomes the one at work; the screens have asked before that.
func (m Model) smeltRead(r smeltRead) (Model, []entry.Entry, tea.Cmd) {
	m.reads = max(m.reads-1, 0)
	switch {
	case r.err != nil:
		return m.refuse(words.CannotOpen(r.id, r.err.Error())), nil, nil
	case len(r.entries) == 0:
		return m.refuse(words.EmptySmelt(r.id)), nil, nil
	}
	opts := []session.Option{session.Lacking(r.lost...)}
	if m.watches() {
		opts = append(opts, session.Watched)
	}
	s := session.Open(r.id, r.entries, opts...).Taught(m.taught).Assayed(m.assayed).Tick(m.now)
	if r.beside {
		m, out := m.otherRead(s)
		return m, out, nil
	}
	if !s.Running() {
		m, cmd := m.show(s, r.on)
		return m, nil, cmd
	}
	m = m.putToWork(s, s.Light().Practice || s.Light().Rehearsal)
	m, out := m.rehoused().joined(s.ID())
	m, cmd := m.goTo(r.on, nil)
	m.answer = answer{text: m.opened(r.id)}
	if r.id == m.cfg.Rehearsal {
		m.answer.text = words.RehearsalBegins
	}
	m, second := m.readOther()
	return m, out, tea.Batch(cmd, second)
}

// show looks at a smelt that does not run.
func (m Model) show(s session.Session, on screen.ID) (Model, tea.Cmd) {
	m.looked = s
	m.answer = answer{text: words.Opened(s.ID())} // a screen may have more to say
	return m.goTo(on, nil)
}

// joined writes down, with no event, that a smelt goes on after the machine was
// started anew: by that entry the boot clock is joined to the smelt's own. Left
// to the next key, a wall clock set in between would turn back a time that the
// screen has shown.
func (m Model) joined(id string) (Model, []entry.Entry) {
	s := m.running.Session
	if id == m.other.ID() {
		s = m.other.Session
	}
	last, _ := s.LastEntry()
	if m.watches() || m.now.Boot == "" || last.Boot == m.now.Boot {
		return m, nil
	}
	m, e := m.hand(id, screen.Act{}, m.active, "")
	out := []entry.Entry{e}
	return m.refolded(out), out
}

// shelfRead takes the lines of the shelf, or the demo.
func (m Model) shelfRead(r shelfRead) (Model, []entry.Entry, tea.Cmd) {
	if r.demo != nil {
		m.demo, m.shelf.Demo = r.demo, &r.lines[0]
		if m.watches() && m.cfg.Watching.Smelt == m.shelf.Demo.ID {
			m, cmd := m.open(m.shelf.Demo.ID, m.cfg.Watching.On)
			return m, nil, cmd
		}
		return m, nil, nil
	}
	m.reads = max(m.reads-1, 0)
	first := m.shelf.Err != nil || !m.shelf.Known
	m.shelf.Lines, m.shelf.Err, m.shelf.Known = r.lines, r.err, true
	if r.err != nil {
		return m.refuse(words.CannotReadShelf(r.err.Error())), nil, nil
	}
	m.taught = r.teach
	m.fires = m.each(func(s session.Session) session.Session { return s.Taught(r.teach) })
	m = m.rehoused()
	if first && m.cfg.Practise && !m.running.Is() {
		return m.perform(start.New(m.cfg.Starters[0]).Practise(), "")
	}
	m, lit := m.litMeanwhile()
	m, out, cmd := m.passed(screen.Read{})
	return m, out, tea.Batch(lit, cmd)
}

func (m Model) readShelf() tea.Cmd {
	store := m.cfg.Store
	return m.command(func() tea.Msg {
		lines, err := store.Smelts()
		return shelfRead{lines: lines, teach: learn.HistoryOf(lines), err: err}
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
		return shelfRead{demo: es, lines: []shelf.Summary{session.Open(es[0].Stream, es).Summary()}}
	})
}

// command wraps what touches the world.
func (m Model) command(cmd tea.Cmd) tea.Cmd { return guarded(m.cfg.Crashed, debug.Stack, cmd) }
