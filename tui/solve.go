package tui

import (
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/entry"
	"chargehand/model/session"
	"chargehand/model/solve"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// role is what a smelt is open for. The solver remembers one of each.
type role int

const (
	firstFire role = iota
	secondFire
	lookedAt
	ofScreen // and those of the active screen after it
	roles    = ofScreen + screen.MostWorks
)

// job is a smelt to be put through the shaft solver, and what it is open for.
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
// at work first, those of a screen's own last.
func (m Model) unsolved() (job, bool) {
	for _, s := range []smelt{m.running, m.other} {
		if j, ok := s.Job(); ok {
			return job{s.place, j}, true
		}
	}
	if j, ok := m.looked.Job(); ok {
		return job{lookedAt, j}, true
	}
	if w, ok := m.screens[m.active].(screen.Worker); ok {
		for _, work := range w.Works() {
			if j, ok := work.Smelt.Job(); ok {
				return job{ofScreen + role(work.N), j}, true
			}
		}
	}
	return job{}, false
}

// solved puts what came of a job into its smelt.
func (m Model) solved(r solved) Model {
	if r.Err != nil {
		m = m.sumsFailed(r.Err)
	}
	switch r.of {
	case firstFire, secondFire, lookedAt:
		m.fires = m.in(r.ID(), func(s session.Session) session.Session { return s.Solved(r.Result) })
	default:
		w, ok := m.screens[m.active].(screen.Worker)
		if !ok {
			return m
		}
		for _, work := range w.Works() {
			if ofScreen+role(work.N) == r.of {
				return m.With(w.Worked(work.N, work.Smelt.Solved(r.Result)))
			}
		}
	}
	return m
}

// sumsFailed says that a job broke down, behind what the last act was answered.
func (m Model) sumsFailed(err error) Model {
	switch {
	case m.answer.text == "":
		return m.refuse(words.CommandFailed(err.Error()))
	case !strings.HasSuffix(m.answer.text, words.SumsFailed):
		m.answer.text = words.Both(m.answer.text, words.SumsFailed)
	}
	return m
}

// Frame is a moment of a screen that plays.
type Frame struct{ At entry.Stamp }

// playing tells whether the screen moves by itself.
func (m Model) playing() bool {
	p, ok := m.screens[m.active].(screen.Player)
	return ok && p.Playing()
}

// frame moves it on.
func (m Model) frame(at entry.Stamp) Model {
	if !m.playing() {
		return m
	}
	return m.With(m.screens[m.active].(screen.Player).Frame(at))
}

// Solver works jobs out beside the screen, one at a time, and remembers what it
// solved.
type Solver struct {
	busy   bool
	memory [roles]solve.Solver
}

// Next is the command for the next job, when there is one and none is at work.
func (v *Solver) Next(m Model) tea.Cmd {
	j, due := m.unsolved()
	if v.busy || !due {
		return nil
	}
	v.busy = true
	return m.command(func() tea.Msg {
		r := j.Run(v.remembers(j.of))
		if r.Err != nil && m.cfg.Crashed != nil {
			m.cfg.Crashed(r.Err, r.Stack)
		}
		return solved{j.of, r}
	})
}

// Done says that the last job has come back.
func (v *Solver) Done() { v.busy = false }
