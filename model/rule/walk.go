package rule

import (
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

// Walk gives every warning from light to the timeline's moment, in the order in
// which they were raised. A timeline to a later moment gives the same ones up to
// the earlier.
func Walk(c fold.Timeline) []Warning { return WalkSolved(c, nil) }

// WalkSolved is Walk with what the shaft solver saw on the way (see
// solve.Solution.Samples), which raises notes of its own.
func WalkSolved(c fold.Timeline, seen []solve.Sample) []Warning {
	if c.Phase == "" {
		return nil
	}
	w := Begin(c.About())
	lines := make([]fold.Line, 0, c.Lines.Len())
	for l := range c.Lines.All() {
		lines = append(lines, *l)
	}
	n := w.Go(c.At, lines, seen)
	return w.Warnings(c.At, lines[n:])
}

// roundUp is the first grid point not before a moment.
func roundUp(at time.Duration) time.Duration { return (at + Grid - 1) / Grid * Grid }

// Walker holds the rules against a smelt as it goes on, from grid point to grid point.
type Walker struct {
	moment   *moment
	next     time.Duration // the next grid point
	warnings []Warning
	watches  []watch // by row of Table
}

// Begin is a Walker before light.
func Begin(about *fold.About) *Walker {
	return &Walker{moment: newMoment(about), watches: make([]watch, len(Table))}
}

// Clone is a copy that may go on beside this one.
func (w *Walker) Clone() *Walker {
	o := *w
	o.moment = w.moment.clone()
	o.warnings, o.watches = slices.Clone(w.warnings), slices.Clone(w.watches)
	return &o
}

// Next is the next grid point.
func (w *Walker) Next() time.Duration { return w.next }

// Timeline is the smelt as it was at the last grid point, or before light. It may be
// read only.
func (w *Walker) Timeline() *fold.Timeline { return w.moment.c }

// Go goes over every grid point up to a moment. Lines are those that happened after
// the last one, in order; it tells how many of them it passed. Seen is what the shaft
// solver saw from light on; up to the last grid point it is the same as before.
func (w *Walker) Go(to time.Duration, lines []fold.Line, seen []solve.Sample) int {
	if w.moment.c.Phase == "" { // nothing was lit
		return 0
	}
	w.moment.history = seen
	n := 0
	for at := w.next; at <= to; at = w.next {
		if at-w.moment.last > asleep {
			if n == len(lines) {
				break
			}
			if at = max(at, roundUp(lines[n].At)); at > to {
				break
			}
		}
		n += w.moment.advance(at, lines[n:])
		w.step()
		w.next = at + Grid
	}
	return n
}

// Warnings are all up to a moment not before the last grid point, in the order of
// their onset. Lines are those that happened since that grid point and up to the
// moment.
func (w *Walker) Warnings(at time.Duration, lines []fold.Line) []Warning {
	phase, acknowledged := w.moment.phase, w.moment.seen
	if n := len(lines); n > 0 {
		v := w.Clone()
		v.moment.advance(at, lines)
		phase, acknowledged = v.moment.phase, v.moment.seen
		w = v
	}
	if phase.Over() { // its clock stands at the end: the look after it is the last
		w = w.Clone()
		w.moment.advance(roundUp(at), nil)
		w.step()
	}
	ws := slices.Clone(w.warnings)
	for _, a := range acknowledged {
		acknowledge(ws, a.at, a.what)
	}
	return ws
}

// seen is that a person has seen a warning.
type seen struct {
	at   time.Duration
	what entry.Acknowledge
}

// watch is what is remembered of one row.
type watch struct {
	open    int           // its raised warning in walk.warnings, counted from 1; 0 for none
	since   time.Duration // since when the condition to raise it has held, plus one grid step; 0 while it does not
	cleared time.Duration // when it last cleared; 0 for never

	raisedOn Evidence // what that warning was raised on: what clears it may go by that
}

// step holds every row against the moment. Once the smelt is over there is
// nothing left to warn of.
func (w *Walker) step() {
	m := w.moment
	if m.phase.Over() {
		w.close()
		return
	}
	for i := range Table {
		row, watch := &Table[i], &w.watches[i]
		if watch.open > 0 {
			raised := &w.warnings[watch.open-1]
			asRaised := *raised
			asRaised.Evidence = watch.raisedOn
			if m.at-raised.Onset >= dwell && row.clear(m, asRaised) {
				raised.Cleared, watch.cleared, watch.open = m.at, m.at, 0
				continue
			}
			raised.Grade = row.graded(m, raised.Onset, *watch, raised.Grade)
			if now, holds := row.raise(m); holds || row.runs && len(now) > 0 {
				raised.Evidence = now
			}
			continue
		}
		again := !row.once || row.agree != nil && row.agree(m)
		if watch.cleared > 0 && (!again || m.at-watch.cleared < dwell) {
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
		w.warnings = append(w.warnings, Warning{Rule: row.ID, Grade: row.graded(m, m.at, *watch, Note), Onset: m.at, Evidence: evidence})
		watch.open, watch.since, watch.raisedOn = len(w.warnings), 0, evidence
	}
}

// graded is the grade of a warning of a row, which was another one until now: it only becomes graver.
func (r *Row) graded(m *moment, onset time.Duration, before watch, was Grade) Grade {
	back := before.cleared > 0 && onset-before.cleared < comesBack
	if r.sure == nil || r.sure(m, onset, back) {
		return r.Grade
	}
	return was
}

// close takes back what stands.
func (w *Walker) close() {
	for i := range w.watches {
		if n := w.watches[i].open; n > 0 {
			w.warnings[n-1].Cleared = w.moment.at
		}
		w.watches[i] = watch{}
	}
}
