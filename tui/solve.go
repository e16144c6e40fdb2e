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
	id      string
	turn    uint64
	looked  bool // not the one at work
	entries []entry.Entry
	at      time.Duration
}

// solved brings what came of it.
type solved struct {
	id       string
	turn     uint64
	solution solve.Solution
}

// unsolved is the next smelt whose figures the solver has to work out anew: that
// at work first.
func (m Model) unsolved() (job, bool) {
	for i, s := range []smelt{m.running, m.looked} {
		if s.is() && (s.solvedTurn != s.turn || s.read.At.Truncate(solve.Grid) != s.solution.Asked.Truncate(solve.Grid)) {
			return job{id: s.id, turn: s.turn, looked: i > 0, entries: s.entries, at: s.read.At}, true
		}
	}
	return job{}, false
}

// solved puts a solution into its smelt.
func (m Model) solved(r solved) Model {
	switch r.id {
	case m.running.id:
		m.running = m.running.solvedBy(r)
	case m.looked.id:
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
	if changed && s.solvedTurn == s.turn {
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

// solver works jobs out beside the screen, one at a time. It keeps what the
// shaft solver remembers of the smelt at work and of the one looked at.
type solver struct {
	busy            bool
	running, looked solve.Solver
}

// next is the command for the next job, when there is one and none is at work.
func (v *solver) next(m Model) tea.Cmd {
	j, due := m.unsolved()
	if v.busy || !due {
		return nil
	}
	v.busy = true
	memory := &v.running
	if j.looked {
		memory = &v.looked
	}
	return m.command(func() tea.Msg {
		return solved{id: j.id, turn: j.turn, solution: model.Solve(memory, j.entries, fold.All, j.at)}
	})
}
