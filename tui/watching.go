package tui

import (
	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/entry"
	"chargehand/model/invented"
	"chargehand/model/session"
	modelwords "chargehand/model/words"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// A second screen on a book that another program writes: it shows what that one keeps, a
// second later, and takes no act. Nothing of it is written down, no key either.

// Watching is what such a screen is handed.
type Watching struct {
	Smelt string    // the one to open; "" for the fire that is alight, or the next to be lit
	On    screen.ID // where
	// News reads what was kept since: the entries of the streams named behind the number
	// named, and whether any other stream has more. It is called inside a command, once at a
	// time.
	News func(since map[string]uint64) (kept []entry.Entry, others bool, err error)
}

// watched is what the root knows of how it stands with that.
type watched struct {
	asks bool // News was asked and has not answered
}

// news is what was kept meanwhile.
type news struct {
	kept   []entry.Entry
	others bool
	err    error
}

func (m Model) watches() bool { return m.cfg.Watching != nil }

// marked is what every screen is marked with.
func (m Model) marked() string {
	if m.watches() && modelwords.Mark(m.shown().Light()) == "" {
		return words.TagWatching
	}
	return m.paced
}

// readWatched opens the smelt to watch, where one was named; the invented one once it is
// made.
func (m Model) readWatched() tea.Cmd {
	if !m.watches() || m.cfg.Watching.Smelt == "" || m.cfg.Watching.Smelt == invented.ID {
		return nil
	}
	_, cmd := m.open(m.cfg.Watching.Smelt, m.cfg.Watching.On)
	return cmd
}

// watch is a second gone by where nothing is written down.
func (m Model) watch(at entry.Stamp) (Model, tea.Cmd) {
	m.now, m.ticked = at, at
	m = m.unattended(at)
	m.closed, m.spilled = "", nil
	m.running.Session, m.other.Session = m.running.Tick(at), m.other.Tick(at)
	m, rings := m.ring()
	m, back := m.called()
	m, spins := m.wait()
	m, asks := m.askNews()
	return m, tea.Batch(rings, back, spins, asks)
}

// askNews asks the book for what was kept since, unless it was asked already.
func (m Model) askNews() (Model, tea.Cmd) {
	if m.watched.asks {
		return m, nil
	}
	m.watched.asks = true
	since := map[string]uint64{entry.House: m.home.Last()}
	for _, s := range []session.Session{m.running.Session, m.other.Session, m.looked} {
		if last, is := s.LastEntry(); is && !s.ToLook() {
			since[s.ID()] = last.Seq
		}
	}
	ask := m.cfg.Watching.News
	return m, m.command(func() tea.Msg {
		kept, others, err := ask(since)
		return news{kept, others, err}
	})
}

// newsRead shows what was kept, and a fire that was lit meanwhile.
func (m Model) newsRead(n news) (Model, []entry.Entry, tea.Cmd) {
	m.watched.asks = false
	if n.err != nil {
		return m.refuse(words.NothingNew(n.err.Error())), nil, nil
	}
	var out []entry.Entry
	var cmd tea.Cmd
	if len(n.kept) > 0 {
		for _, e := range n.kept {
			m = m.reminded(e.Event)
			if s, is := e.Event.(entry.Setting); is {
				m = m.chosen(s)
			}
		}
		m, out, cmd = m.kept(Kept{Entries: n.kept})
		m = m.reassayed()
	}
	if n.others {
		m.reads++
		cmd = tea.Batch(cmd, m.readShelf())
	}
	return m, out, cmd
}

// litMeanwhile opens the fire that is alight where none is shown, or a second beside the
// one that is.
func (m Model) litMeanwhile() (Model, tea.Cmd) {
	if !m.watches() || m.cfg.Watching.Smelt != "" {
		return m, nil
	}
	if m.running.Running() {
		return m.readOther()
	}
	for _, l := range m.shelf.Lines {
		if l.ID != m.running.ID() && l.MayBurn(m.now.Wall, goesOut) {
			return m.open(l.ID, screen.Fire)
		}
	}
	if !m.running.Is() && m.answer.text == "" {
		m.answer = answer{text: words.NoneAlight}
	}
	return m, nil
}

// watchOnly is an effect with nothing in it that would be kept. A setting holds for this
// screen alone.
func (m Model) watchOnly(e screen.Effect) screen.Effect {
	if !m.watches() {
		return e
	}
	for _, one := range screen.Flat(e) {
		switch one.(type) {
		case screen.Keep, screen.Kindle, screen.House, screen.Rebook, screen.Rehearse:
			return screen.Refuse(words.OnlyWatching)
		}
	}
	return e
}
