package session

import (
	"sync"
	"time"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/fold"
	"chargehand/model/rule"
)

// seen is what follows from a Session, each part worked out when it is first
// asked for. Sessions of the same entries at the same moment share it.
type seen struct {
	once     sync.Once
	lines    []fold.Line
	now      figure.Reading // of the moment asked for
	read     figure.Reading // the same, or of the end where the clock stands; without the solver
	solved   sync.Once
	reading  figure.Reading
	walked   sync.Once
	warnings []rule.Warning
	cautions []rule.Caution
}

func (s Session) view() *seen {
	v := s.seen
	if v == nil {
		return new(seen)
	}
	v.once.Do(func() {
		v.lines = fold.Lines(s.entries, s.known)
		v.now = s.readAt(s.at)
		v.read = v.now
		l := v.now.Light
		if runs := !s.demo && !l.Invented && !l.Imported && !v.now.Phase.Over(); !s.past && !runs {
			v.read = s.ended()
		}
	})
	return v
}

func (s Session) readAt(at time.Duration) figure.Reading {
	r := figure.From(fold.Fold(s.entries, s.known, at))
	if len(s.entries) > 0 {
		r.Smelt = s.entries[0].Stream
	}
	return r
}

// ended is the reading of a smelt whose clock stands: at its end, with what was
// weighed and said of it afterwards; of the one to look at, in its main burn.
func (s Session) ended() figure.Reading {
	r := s.readAt(s.End())
	after := s.readAt(fold.Latest(s.entries))
	r.Bloom = after.Bloom
	if !r.Phase.Over() { // closed without a word about the bloom
		r.Phase, r.Since = after.Phase, after.Since
	}
	if n := len(r.Charges); s.demo && n > 2 {
		return s.readAt(r.Charges[n*2/3].At + r.Usual/2)
	}
	return r
}

// Reading is everything that is known of the moment, the solver's figures among
// it. Until the solver has heard of the entries as they are, its figures are those
// of before and marked so.
func (s Session) Reading() figure.Reading {
	v := s.view()
	v.solved.Do(func() {
		v.reading = v.read
		if !s.solver.told {
			return
		}
		solution := s.solver.solution
		solution.Known = v.read.Known
		if s.solver.of != s.version() {
			solution.Known = 0
		}
		v.reading = figure.WithSolution(v.read, solution)
	})
	return v.reading
}

// walk holds the rules against the smelt, up to the Reading's moment.
func (s Session) walk() *seen {
	v := s.view()
	v.walked.Do(func() {
		c := fold.Trace(s.entries, s.known, v.read.At)
		v.warnings = rule.WalkSolved(c, s.solver.solution.Glances())
		v.cautions = rule.CautionsDue(c.State, v.read.By)
	})
	return v
}

// Warnings are all warnings up to the moment, in the order of their onset.
func (s Session) Warnings() []rule.Warning { return s.walk().warnings }

// Standing are the warnings that stand, gravest first.
func (s Session) Standing() []rule.Warning { return rule.Active(s.Warnings()) }

// Stands tells whether a warning of one of these rules stands.
func (s Session) Stands(ids ...rule.ID) bool {
	for _, w := range s.Warnings() {
		for _, id := range ids {
			if w.Raised() && w.Rule == id {
				return true
			}
		}
	}
	return false
}

// Cautions are those that the person in charge has still to be shown, the most
// pressing first.
func (s Session) Cautions() []rule.Caution { return s.walk().cautions }

// Light is the smelt's first event.
func (s Session) Light() entry.Light { return s.view().now.Light }

// Phase is the phase by all that is known at the moment asked for, and Since when
// it began. Of a smelt whose clock stands, Reading has that of its end.
func (s Session) Phase() entry.Phase { return s.view().now.Phase }

// Since is when the Phase began.
func (s Session) Since() time.Duration { return s.view().now.Since }

// Charges are all that are known, also those after the moment of the Reading
// where the smelt's clock stands.
func (s Session) Charges() []figure.Charge { return s.view().now.Charges }
