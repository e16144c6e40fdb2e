package tui

import (
	"slices"
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
	throughout // the whole course that a replay goes over
	roles      // how many there are
)

// solved brings what came of it.
type solved struct {
	of       role
	id       string
	turn     uint64
	solution solve.Solution
}

// unsolved is the next smelt whose figures the solver has to work out anew: that
// at work first; the whole of a replay's course last, or while it plays, when
// its moment is a new one all the time, before that.
func (m Model) unsolved() (job, bool) {
	jobs := []job{jobOf(atWork, m.running), jobOf(lookedAt, m.looked)}
	if r, ok := m.screens[m.active].(replay); ok {
		now, day := jobOf(replayed, r.then), r.course.job()
		if r.plays {
			now, day = day, now
		}
		jobs = append(jobs, now, day)
	}
	i := slices.IndexFunc(jobs, func(j job) bool { return j.id != "" })
	if i < 0 {
		return job{}, false
	}
	return jobs[i], true
}

// jobOf is what is to be solved of a smelt; none of nothing, and none when
// nothing is new.
func jobOf(of role, s smelt) job {
	if !s.is() || !s.unsolved() {
		return job{}
	}
	known := fold.All
	if s.past {
		known = s.known
	}
	return job{of: of, id: s.id, turn: s.turn, entries: s.entries, known: known, at: s.read.At}
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
	case r.of == throughout && replays && r.id == replay.course.smelt.id && r.turn == replay.course.smelt.turn:
		replay.course = replay.course.seen(r.solution.Glances())
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
