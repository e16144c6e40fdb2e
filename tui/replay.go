package tui

import (
	"slices"
	"time"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/model/rule"
	"chargehand/model/session"
	"chargehand/model/words"
	"chargehand/tui/paint"
)

// replay goes over a smelt again: its own moment on the smelt's clock, which
// way and how fast it moves, and what it shows of that moment.
type replay struct {
	course course
	at     time.Duration
	asSeen bool // what was known then, else what is known now
	by     steps
	speed  int // place in speeds
	plays  bool
	back   bool
	drawn  entry.Stamp     // when it moved last, while it plays
	then   session.Session // the smelt at that moment
	jump   jump            // where to begin
}

// jump is a moment to begin at, instead of at the light.
type jump struct {
	to  time.Duration
	set bool
}

// speeds are how many times as fast as the day a replay can run.
var speeds = []int{1, 5, 20, 60, 300, 900, 3600}

// steps is what the arrows move by.
type steps int

const (
	byTime steps = iota
	byEntry
	byWarning
)

// How far one step by time goes, and a leap.
const (
	oneStep = time.Minute
	oneLeap = 10 * time.Minute
)

// course is all of a smelt that a replay goes over, as it is known now.
type course struct {
	session.Course
	smelt    session.Session
	warnings []rule.Warning
	onsets   []time.Duration // of the warnings, in order
}

// courseOf gathers what the line of a smelt shows.
func courseOf(s session.Session) course {
	c := course{Course: s.Course(), smelt: s}
	return c.solved(c.Whole)
}

// solved is the course with what the solver saw on the way, which raises notes of
// its own.
func (c course) solved(whole session.Session) course {
	c.Whole, c.warnings = whole, whole.Warnings()
	c.onsets = make([]time.Duration, len(c.warnings))
	for i, w := range c.warnings {
		c.onsets[i] = w.Onset
	}
	return c
}

// stops are the moments that a step may go to.
func (r replay) stops() []time.Duration {
	switch {
	case r.by == byWarning:
		return r.course.onsets
	case r.asSeen:
		return r.course.Taken
	}
	return r.course.Acts
}

// stepped goes one step forth or back, and says whether there was one to go.
func (r replay) stepped(back bool) (replay, bool) {
	to := r.at + oneStep
	if back {
		to = r.at - oneStep
	}
	if r.by != byTime {
		stops := r.stops()
		i, found := slices.BinarySearch(stops, r.at)
		switch {
		case back:
			i--
		case found: // several may share one moment
			for i < len(stops) && stops[i] == r.at {
				i++
			}
		}
		if i < 0 || i >= len(stops) || stops[i] > r.course.Span {
			return r, false
		}
		to = stops[i]
	}
	moved := r.to(to)
	return moved, moved.at != r.at
}

// to is the replay at another moment of the smelt.
func (r replay) to(at time.Duration) replay {
	r.at = max(0, min(at, r.course.Span))
	return r.read()
}

// read reads the smelt as it was at the replay's moment.
func (r replay) read() replay {
	s := r.course.smelt
	known := fold.All
	if r.asSeen {
		known = s.KnownAt(r.at)
	}
	r.then = s.AsOf(known, r.at).After(r.then)
	return r
}

// moves is the replay a little later by the clock, while it plays. It stops at
// either end.
func (r replay) moves(now entry.Stamp) replay {
	by := since(r.drawn, now) * time.Duration(speeds[r.speed])
	if r.back {
		by = -by
	}
	r.drawn = now
	r = r.to(r.at + by)
	if r.at == 0 && r.back || r.at == r.course.Span && !r.back {
		r.plays = false
	}
	return r
}

// line is the time line under the picture.
func (r replay) line() paint.TimeLine {
	c := r.course
	tl := paint.TimeLine{
		Lit: r.then.Reading().Lit, Span: c.Span, Now: r.at, Charges: c.Charges, Taps: c.Taps, Warnings: c.warnings,
		Back: r.back, Steps: words.StepsBy[r.by], AsSeen: r.asSeen, Only: c.Only, Solving: !c.Whole.IsSolved(),
	}
	for _, t := range c.Turns {
		tl.Phases = append(tl.Phases, paint.PhaseAt{At: t.At, Phase: t.Phase})
	}
	if r.plays {
		tl.Speed = speeds[r.speed]
	}
	return tl
}

// says is what happened at the moment that a step went to.
func (r replay) says(u words.Units) string {
	switch r.by {
	case byWarning:
		for _, w := range r.course.warnings {
			if w.Onset == r.at {
				title, evidence, _ := u.Warning(w)
				return words.Warned(title, evidence)
			}
		}
	case byEntry:
		for l := range r.then.Backward() {
			at := l.At
			if r.asSeen {
				at = l.Accepted
			}
			if at == r.at && l.Event != nil {
				return r.then.Wall(l).Format(words.Clock) + "  " + describe(u, r.then, l)
			}
		}
	}
	return ""
}
