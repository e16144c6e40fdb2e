package tui

import (
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/entry"
	"chargehand/tui/cell"
	"chargehand/tui/screen"
)

// program drives the root in the screen library. It is the one place that is
// changed in place: it hands entries to the book in the order of the keys,
// since commands have no order, and keeps the last frame until what it shows
// has changed.
type program struct {
	model Model
	store Store
	clock func() entry.Stamp
	frame string
	sheet cell.Grid   // the frame was drawn on it
	drawn uint64      // the version that the frame shows, counted from 1
	shown entry.Stamp // the last key whose frame was drawn at once
	waits bool        // the frame of a later one waits, or that of a second for the solver
	moves bool        // a replay's next moment is on its way
	comes bool        // Gathered is on its way
	solve Solver
}

// Program makes the root run. The clock is read once a second.
func Program(m Model, store Store, clock func() entry.Stamp) tea.Model {
	return &program{model: m, store: store, clock: clock}
}

// Init begins to look at the clock.
func (p *program) Init() tea.Cmd { return tea.Batch(p.model.Init(), p.second()) }

// second is one look at the clock at the next full second. Every is aligned to
// the wall clock, so the looks do not drift.
func (p *program) second() tea.Cmd {
	return tea.Every(time.Second, func(time.Time) tea.Msg { return Tick{At: p.clock()} })
}

// Update hands on what the root makes of a message.
func (p *program) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	if t, ok := msg.(taken); ok {
		return p, t.cmd
	}
	m, entries, cmd := p.model.Update(msg)
	p.model = m
	if len(entries) > 0 {
		p.store.Keep(entries...)
	}
	if _, ok := msg.(Tick); ok {
		cmd = tea.Batch(cmd, p.second())
	}
	return p, tea.Batch(cmd, p.after(msg))
}

// Unseen is a filter of messages that takes those which come by themselves before the
// library does. Where one changes nothing that is seen only its commands are handed on:
// for each message that reaches the screen the library holds the whole frame against the
// last one at every look, until a frame differs.
func Unseen(filter func(tea.Model, tea.Msg) tea.Msg) func(tea.Model, tea.Msg) tea.Msg {
	return func(model tea.Model, msg tea.Msg) tea.Msg {
		msg = filter(model, msg)
		p, ok := model.(*program)
		switch msg.(type) {
		case Tick, solved, frameDue:
		default:
			ok = false
		}
		if !ok {
			return msg
		}
		was := p.frame
		_, cmd := p.Update(msg)
		if p.View() == was {
			return tea.BatchMsg{cmd}
		}
		return taken{cmd}
	}
}

// taken is a message that Unseen took, of which something is to be seen.
type taken struct{ cmd tea.Cmd }

// after is what the program itself still does after a message.
func (p *program) after(msg tea.Msg) tea.Cmd {
	switch msg.(type) {
	case Frame:
		p.moves = false
	case Gathered:
		p.comes = false
	case solved:
		p.solve.Done()
	}
	job, cmd := p.solve.Next(p.model), p.waitsFor(msg)
	if _, second := msg.(Tick); second && job != nil && !p.waits { // what the solver says of the second is mostly there at once: one frame instead of two
		p.waits = true
		cmd = tea.Tick(frames, func(time.Time) tea.Msg { return frameDue{} })
	}
	cmd = tea.Batch(job, cmd)
	if p.model.playing() && !p.moves {
		p.moves = true
		cmd = tea.Batch(cmd, p.moment())
	}
	if p.model.gathering() && !p.comes {
		p.comes = true
		cmd = tea.Batch(cmd, tea.Tick(gatherEvery, func(time.Time) tea.Msg { return Gathered{} }))
	}
	return cmd
}

// pace is how often a replay that plays moves on.
const pace = 100 * time.Millisecond

// moment is the next look at the clock for a replay.
func (p *program) moment() tea.Cmd {
	return tea.Tick(pace, func(time.Time) tea.Msg { return Frame{At: p.clock()} })
}

// frames lie so far apart that the terminal is given each (cmd/chargehand,
// framesPerSecond). Of keys that come faster only one in so long is drawn at once:
// nobody would see the others.
const frames = time.Second / 22

// frameDue says that a frame that waited is to be drawn.
type frameDue struct{}

// waitsFor settles whether the frame of a message waits.
func (p *program) waitsFor(msg tea.Msg) tea.Cmd {
	var key Pressed
	switch msg := msg.(type) {
	case Pressed:
		key = msg
	case Burst:
		key = msg[len(msg)-1]
	default:
		p.waits = false
		return nil
	}
	rest := frames - screen.Since(p.shown, key.At)
	if rest <= 0 || rest > frames {
		p.shown, p.waits = key.At, false
		return nil
	}
	if p.waits {
		return nil
	}
	p.waits = true
	return tea.Tick(rest, func(time.Time) tea.Msg { return frameDue{} })
}

// View is the last frame, drawn anew when something has changed and its frame does
// not wait.
func (p *program) View() string {
	if v := p.model.version + 1; v != p.drawn && !p.waits {
		p.frame, p.drawn = p.model.drawn(&p.sheet), v
	}
	return p.frame
}
