package report

import (
	"cmp"
	"slices"
	"time"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/fold"
	"chargehand/model/session"
	"chargehand/model/solve"
)

// course is the smelt in numbers: its readings on a grid, and the whole of it.
type course struct {
	end      session.Session // all that is known of it at its end
	over     session.Overview
	readings []*figure.Reading
}

// mostSamples is how many lines a table of numbers over the day has at most: it is to
// be read, and printed.
const mostSamples = 50

// stepOf is how far apart the samples of a smelt are.
func stepOf(span time.Duration) time.Duration {
	for _, minutes := range []time.Duration{1, 2, 5, 10, 15, 20, 30, 60} {
		if step := minutes * time.Minute; span <= mostSamples*step {
			return step
		}
	}
	return span/mostSamples + time.Minute
}

// courseOf takes the readings of a smelt. The error is of the solver: its figures are
// missing then.
func courseOf(s session.Session) (c course, failed error) {
	c.over = s.Overview()
	c.end = c.over.Whole
	if j, ok := c.end.Job(); ok {
		r := j.Run(new(solve.Solver))
		c.end, failed = c.end.Solved(r), r.Err
	}
	for r, err := range s.Course(stepOf(c.over.Span)) {
		failed = cmp.Or(failed, err)
		c.readings = append(c.readings, r)
	}
	return c, failed
}

// inOrder are the lines of a smelt in the order in which they happened.
func inOrder(s session.Session) []fold.Line {
	lines := slices.Collect(s.Lines())
	lines = slices.DeleteFunc(lines, func(l fold.Line) bool {
		k := entry.TraitsOf(l.Event).Kind
		return k == entry.KindStrike || k == entry.KindAmend // what they did stands with what they speak of
	})
	slices.SortStableFunc(lines, func(a, b fold.Line) int { return cmp.Compare(a.At, b.At) })
	return lines
}
