package rule

import (
	"cmp"
	"slices"
	"time"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/model/solve"
)

const (
	// Grid is how often the rules are held against the smelt.
	Grid = 10 * time.Second
	// dwell is how long a warning stands at least, and stays away once cleared.
	dwell = 30 * time.Second
	// asleep is after how long without an entry nothing changes any more by
	// itself; the walk goes on with the next one.
	asleep = 24 * time.Hour
)

// Walk gives every warning from light to the course's moment, in the order in
// which they were raised. A course to a later moment gives the same ones up to
// the earlier. It costs a few milliseconds: once an entry and once a grid
// point, not once a frame.
func Walk(c fold.Course) []Warning { return WalkSolved(c, nil) }

// WalkSolved is Walk with what the shaft solver saw on the way (see
// solve.Solution.Glances), which raises notes of its own.
func WalkSolved(c fold.Course, seen []solve.Glance) []Warning {
	if c.Phase == "" {
		return nil
	}
	w := walk{moment: newMoment(&c), watches: make([]watch, len(Table))}
	w.moment.trail = seen
	for at := time.Duration(0); at <= c.At; at += Grid {
		if at-w.moment.last > asleep {
			next, more := w.moment.next()
			if !more {
				break
			}
			at = max(at, roundUp(next))
			if at > c.At {
				break
			}
		}
		w.moment.advance(at)
		w.step()
	}
	if c.Phase.Over() { // its clock stands at the end: the look after it is the last
		w.moment.advance(roundUp(c.At))
		w.step()
	}
	for _, l := range c.Lines {
		if a, ok := l.Event.(entry.Acknowledge); ok {
			acknowledge(w.warnings, l.At, a)
		}
	}
	slices.SortStableFunc(w.warnings, func(a, b Warning) int { return cmp.Compare(a.Onset, b.Onset) })
	return w.warnings
}

// roundUp is the first grid point not before a moment.
func roundUp(at time.Duration) time.Duration { return (at + Grid - 1) / Grid * Grid }

// walk is the rules on their way over the grid.
type walk struct {
	moment   *moment
	warnings []Warning
	watches  []watch // by row of Table
}

// watch is what is remembered of one row.
type watch struct {
	open    int           // its raised warning in walk.warnings, counted from 1; 0 for none
	since   time.Duration // since when the condition to raise it has held, plus one grid step; 0 while it does not
	cleared time.Duration // when it last cleared; 0 for never
}

// step holds every row against the moment. Once the smelt is over there is
// nothing left to warn of.
func (w *walk) step() {
	m := w.moment
	if m.phase.Over() {
		w.close()
		return
	}
	for i := range Table {
		row, watch := &Table[i], &w.watches[i]
		if watch.open > 0 {
			raised := &w.warnings[watch.open-1]
			if m.at-raised.Onset >= dwell && row.clear(m, *raised) {
				raised.Cleared, watch.cleared, watch.open = m.at, m.at, 0
			}
			continue
		}
		if watch.cleared > 0 && (row.once || m.at-watch.cleared < dwell) {
			continue
		}
		evidence, ok := row.raise(m)
		if !ok {
			watch.since = 0
			continue
		}
		if watch.since == 0 {
			watch.since = m.at + Grid
		}
		if m.at+Grid-watch.since < row.holds {
			continue
		}
		w.warnings = append(w.warnings, Warning{Rule: row.ID, Grade: row.Grade, Onset: m.at, Evidence: evidence})
		watch.open, watch.since = len(w.warnings), 0
	}
}

// close takes back what stands.
func (w *walk) close() {
	for i := range w.watches {
		if n := w.watches[i].open; n > 0 {
			w.warnings[n-1].Cleared = w.moment.at
		}
		w.watches[i] = watch{}
	}
}
