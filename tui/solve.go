package tui

import (
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model"
	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/fold"
	"chargehand/model/solve"
)

// job is a smelt to be put through the shaft solver, up to a moment.
type job struct {
	of      role
	id      string
	turn    uint64
	entries []entry.Entry
	known   uint64
	at      time.Duration
}

// role is where a smelt is shown. The solver remembers one of each.
type role int

const (
	atWork role = iota
	lookedAt
	replayed
	roles // how many there are
)

// solved brings what came of it.
type solved struct {
	of       role
	id       string
	turn     uint64
	solution solve.Solution
}

// unsolved is the next smelt whose figures the solver has to work out anew: that
// at work first.
func (m Model) unsolved() (job, bool) {
	shown := [roles]smelt{atWork: m.running, lookedAt: m.looked}
	if r, ok := m.screens[m.active].(replay); ok {
		shown[replayed] = r.then
	}
	for of, s := range shown {
		if s.is() && s.unsolved() {
			known := fold.All
			if s.past {
				known = s.known
			}
			return job{of: role(of), id: s.id, turn: s.turn, entries: s.entries, known: known, at: s.read.At}, true
		}
	}
	return job{}, false
}

// unsolved tells whether the solver has something new to say of the reading.
func (s smelt) unsolved() bool {
	return s.solvedTurn != s.turn || s.solution.Known != s.read.Known ||
		s.read.At.Truncate(solve.Grid) != s.solution.Asked.Truncate(solve.Grid)
}

// solved puts a solution into its smelt.
func (m Model) solved(r solved) Model {
	replay, replays := m.screens[m.active].(replay)
	switch {
	case r.of == replayed && replays && r.id == replay.then.id:
		replay.then = replay.then.solvedBy(r)
		return m.withScreen(replay)
	case r.of == atWork && r.id == m.running.id:
		m.running = m.running.solvedBy(r)
	case r.of == lookedAt && r.id == m.looked.id:
		m.looked = m.looked.solvedBy(r)
	}
	return m
}

// solvedBy takes a solution in. After an entry the rules are held against it at
// once; else they wait for their own grid.
func (s smelt) solvedBy(r solved) smelt {
	changed := s.solvedTurn != s.turn
	s.solution, s.solvedTurn = r.solution, r.turn
	s.reading = s.filled()
	switch {
	case s.past:
		s = s.rewatched()
	case changed && s.solvedTurn == s.turn:
		s = s.watched()
	}
	return s
}

// filled is the reading with the solver's figures, once there are any. Until the
// entries as they are now have been solved it says so.
func (s smelt) filled() figure.Reading {
	if s.solvedTurn == 0 {
		return s.read
	}
	solution := s.solution
	if s.solvedTurn != s.turn {
		solution.Known = 0
	}
	return model.Solved(s.read, solution)
}

// solver works jobs out beside the screen, one at a time, and remembers what it
// solved.
type solver struct {
	busy   bool
	memory [roles]solve.Solver
}

// next is the command for the next job, when there is one and none is at work.
func (v *solver) next(m Model) tea.Cmd {
	j, due := m.unsolved()
	if v.busy || !due {
		return nil
	}
	v.busy = true
	return m.command(func() tea.Msg {
		return solved{of: j.of, id: j.id, turn: j.turn, solution: model.Solve(&v.memory[j.of], j.entries, j.known, j.at)}
	})
}
