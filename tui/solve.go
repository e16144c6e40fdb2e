package tui

import (
	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/session"
	"chargehand/model/solve"
	"chargehand/model/words"
)

// role is where a smelt is shown. The solver remembers one of each.
type role int

const (
	atWork role = iota
	lookedAt
	replayed
	throughout // the whole course that a replay goes over
	roles      // how many there are
)

// job is a smelt to be put through the shaft solver, and where it is shown.
type job struct {
	of role
	session.Job
}

// solved brings what came of it.
type solved struct {
	of role
	session.Result
}

// unsolved is the next smelt whose figures the solver has to work out anew: that
// at work first; the whole of a replay's course last, or while it plays, when
// its moment is a new one all the time, before that.
func (m Model) unsolved() (job, bool) {
	shown := []role{atWork, lookedAt}
	if r, ok := m.screens[m.active].(replay); ok {
		if r.plays {
			shown = append(shown, throughout, replayed)
		} else {
			shown = append(shown, replayed, throughout)
		}
	}
	for _, of := range shown {
		if j, ok := m.in(of).Job(); ok {
			return job{of, j}, true
		}
	}
	return job{}, false
}

// in is the smelt that is shown somewhere.
func (m Model) in(of role) session.Session {
	replay, _ := m.screens[m.active].(replay)
	switch of {
	case atWork:
		return m.running
	case lookedAt:
		return m.looked
	case replayed:
		return replay.then
	}
	return replay.course.Whole
}

// solved puts what came of a job into its smelt.
func (m Model) solved(r solved) Model {
	if r.Err != nil {
		m = m.refuse(words.CommandFailed(r.Err.Error()))
	}
	s := m.in(r.of).Solved(r.Result)
	replay, replays := m.screens[m.active].(replay)
	switch {
	case r.of == atWork:
		m.running = s
	case r.of == lookedAt:
		m.looked = s
	case replays && r.of == replayed:
		replay.then = s
		return m.withScreen(replay)
	case replays:
		replay.course = replay.course.solved(s)
		return m.withScreen(replay)
	}
	return m
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
		r := j.Run(&v.memory[j.of])
		if r.Err != nil && m.cfg.Crashed != nil {
			m.cfg.Crashed(r.Err, r.Stack)
		}
		return solved{j.of, r}
	})
}
