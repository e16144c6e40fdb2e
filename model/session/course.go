package session

import (
	"iter"
	"time"

	"chargehand/model/figure"
	"chargehand/model/fold"
	"chargehand/model/solve"
)

// Course are the Readings of a smelt a step apart, from its light to its end, with
// what the solver says of each: the whole smelt in numbers, by all that is known of it
// now. The last one is of the end itself. How the solver broke down, if it did, is the
// error beside the reading; the reading lacks its figures then. The step is more than
// nought.
func (s Session) Course(step time.Duration) iter.Seq2[*figure.Reading, error] {
	return func(yield func(*figure.Reading, error) bool) {
		var solver solve.Solver // goes on from moment to moment
		span := s.End()
		if s.Running() {
			span = s.At()
		}
		for at := time.Duration(0); ; at += step {
			at = min(at, span)
			m := s.AsOf(fold.All, at)
			var err error
			if j, ok := m.Job(); ok {
				r := j.Run(&solver)
				m, err = m.Solved(r), r.Err
			}
			if !yield(m.Reading(), err) || at == span {
				return
			}
		}
	}
}
