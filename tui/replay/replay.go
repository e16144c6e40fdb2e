// Package replay goes over a smelt again.
package replay

import (
	"math"
	"slices"
	"time"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/model/rule"
	"chargehand/model/session"
	modelwords "chargehand/model/words"
	"chargehand/tui/act"
	"chargehand/tui/draw"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// Screen goes over a smelt again: its own moment on the smelt's clock, which
// way and how fast it moves, and what it shows of that moment.
type Screen struct {
	day    timeline
	at     time.Duration
	asSeen bool // what was known then, else what is known now
	by     steps
	speed  int // place in speeds
	plays  bool
	back   bool
	drawn  entry.Stamp     // when it moved last, while it plays
	then   session.Session // the smelt at that moment
}

// speeds are how many times as fast as the day a replay can run.
var speeds = []int{1, 5, 20, 60, 300, 900, 3600}

// dayLasts is about how long the whole day takes at the speed that Replay begins
// with.
const dayLasts = 90 * time.Second

// speedFor is the place in speeds at which a day takes about that long.
func speedFor(span time.Duration) int {
	best := 0
	for i, s := range speeds {
		off := func(s int) float64 { return math.Abs(math.Log(span.Seconds() / float64(s) / dayLasts.Seconds())) }
		if span > 0 && off(s) < off(speeds[best]) {
			best = i
		}
	}
	return best
}

// leastStep is how long a picture stands while it plays: the whole shaft glows
// otherwise in the next, and a line far away has to bring it.
const leastStep = 500 * time.Millisecond

// steps is what the arrows move by.
type steps int

const (
	byTime steps = iota
	byEntry
	byWarning
)

// How far one screen.Effect by time goes, and a leap.
const (
	oneStep = time.Minute
	oneLeap = 10 * time.Minute
)

// timeline is all of a smelt that a replay goes over, as it is known now.
type timeline struct {
	session.Overview
	smelt    session.Session
	warnings []rule.Warning
	onsets   []time.Duration // of the warnings, in order
	line     draw.Day
}

// timelineOf gathers what the line of a smelt shows.
func timelineOf(s session.Session) timeline {
	c := timeline{Overview: s.Overview(), smelt: s}
	return c.solved(c.Whole)
}

// solved is the time line with what the solver saw on the way, which raises notes of
// its own.
func (c timeline) solved(whole session.Session) timeline {
	c.Whole, c.warnings = whole, whole.Warnings()
	c.line = draw.DayOf(c.Overview)
	c.onsets = make([]time.Duration, len(c.warnings))
	for i, w := range c.warnings {
		c.onsets[i] = w.Onset
	}
	return c
}

// stops are the moments that a screen.Effect may go to.
func (r Screen) stops() []time.Duration {
	switch {
	case r.by == byWarning:
		return r.day.onsets
	case r.asSeen:
		return r.day.Taken
	}
	return r.day.Acts
}

// stepped goes one screen.Effect forth or back, and says whether there was one to go.
func (r Screen) stepped(back bool) (Screen, bool) {
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
		if i < 0 || i >= len(stops) || stops[i] > r.day.Span {
			return r, false
		}
		to = stops[i]
	}
	moved := r.to(to)
	return moved, moved.at != r.at
}

// to is the replay at another moment of the smelt.
func (r Screen) to(at time.Duration) Screen {
	r.at = max(0, min(at, r.day.Span))
	return r.read()
}

// read reads the smelt as it was at the replay's moment.
func (r Screen) read() Screen {
	s := r.day.smelt
	known := fold.All
	if r.asSeen {
		known = s.KnownAt(r.at)
	}
	r.then = s.AsOf(known, r.at).After(r.then)
	if !r.asSeen {
		r.then = r.then.Knowing(r.day.Whole.Reading())
	}
	return r
}

// moves is the replay a little later by the clock, while it plays. It stops at
// either end.
func (r Screen) moves(now entry.Stamp) Screen {
	if since := screen.Since(r.drawn, now); since >= 0 && since < leastStep {
		return r
	}
	by := screen.Since(r.drawn, now) * time.Duration(speeds[r.speed])
	if r.back {
		by = -by
	}
	r.drawn = now
	r = r.to(r.at + by)
	if r.at == 0 && r.back || r.at == r.day.Span && !r.back {
		r.plays = false
	}
	return r
}

// line is the time line under the picture.
func (r Screen) line() draw.Day {
	tl := r.day.line
	tl.Lit, tl.Now, tl.Undated = r.then.Reading().Lit, r.at, r.then.Light().Undated
	tl.Back, tl.Steps, tl.AsSeen = r.back, words.StepsBy[r.by], r.asSeen
	if r.plays {
		tl.Speed = speeds[r.speed]
	}
	return tl
}

// says is what happened at the moment that a screen.Effect went to.
func (r Screen) says(u modelwords.Units) string {
	switch r.by {
	case byWarning:
		for _, w := range r.day.warnings {
			if w.Onset == r.at {
				title, evidence, _ := u.Warning(w)
				return modelwords.Warned(title, evidence)
			}
		}
	case byEntry:
		for l := range r.then.Backward() {
			at := l.At
			if r.asSeen {
				at = l.Accepted
			}
			if at == r.at && l.Event != nil {
				return r.then.Wall(l).Format(modelwords.Clock) + "  " + act.Describe(u, r.then, l)
			}
		}
	}
	return ""
}
