package session

import (
	"fmt"
	"runtime/debug"
	"time"

	"chargehand/model/solve"
)

// forever is after everything.
const forever = time.Duration(1 << 61)

// version is a hash of what the solver has to go by: the entries that are read, as
// known, and what was assayed since. What is not read (keys, testimonies) has nothing solved
// anew.
func (s Session) version() uint64 { return s.view().known.Key(forever) ^ s.view().irons }

// Job is what there is to solve of a Session.
type Job struct {
	of uint64
	s  Session
	at time.Duration
}

// ID is the smelt that the job is of.
func (j Job) ID() string { return j.s.id }

// Result is what came of a job: a solution, or how the solver broke down.
type Result struct {
	id       string
	of       uint64
	Solution solve.Solution
	Err      error
	Stack    []byte // where, when it panicked
}

// ID is the smelt that the result is of.
func (r Result) ID() string { return r.id }

// Job is what the shaft solver has to work out anew, and whether there is
// anything. Entries at which the solver broke down are not tried again.
func (s Session) Job() (Job, bool) {
	if !s.Is() || s.solver.err != nil && s.solver.failed == s.version() {
		return Job{}, false
	}
	at := s.view().read.At
	if v := s.solver; v.told && v.of == s.version() && at.Truncate(solve.Grid) == v.solution.Asked.Truncate(solve.Grid) {
		return Job{}, false
	}
	return Job{of: s.version(), s: s, at: at}, true
}

// Run solves a job. The solver is the caller's and remembers what it solved, so
// that the next job of the same smelt goes on from there; it may be used by one
// job at a time. It takes up to half a second from scratch. What breaks it is told
// in the Result, and the solver begins anew.
func (j Job) Run(v *solve.Solver) (r Result) {
	r.id, r.of = j.s.id, j.of
	defer func() {
		if p := recover(); p != nil {
			if v != nil {
				*v = solve.Solver{}
			}
			r.Err, r.Stack = fmt.Errorf("%v", p), debug.Stack()
		}
	}()
	m := j.s.to(j.s.view().known, j.at)
	v.Irons = j.s.Irons()
	r.Solution = v.Solve(&m.timeline)
	return r
}

// Solved takes in what came of a job of this smelt, be it of entries that have
// changed since.
func (s Session) Solved(r Result) Session {
	switch {
	case r.id != s.id:
		return s
	case r.Err != nil:
		s.solver.failed, s.solver.err = r.of, r.Err
		return s.anew()
	}
	h := s.solver.history
	if !s.solver.told || !r.Solution.SameSamples(s.solver.solution) {
		h = s.checkpoints.historyOf(r.Solution.Samples())
	}
	s.solver = solver{solution: r.Solution, of: r.of, told: true, history: h}
	return s.anew()
}

// SolverErr is how the shaft solver broke down at the entries as they are; nil when
// it did not.
func (s Session) SolverErr() error {
	if s.solver.failed != s.version() {
		return nil
	}
	return s.solver.err
}

// IsSolved tells whether the solver has said all there is to say of this moment.
func (s Session) IsSolved() bool {
	_, more := s.Job()
	return s.solver.told && !more
}
