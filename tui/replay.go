package tui

import (
	"slices"
	"time"

	"chargehand/model"
	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/model/rule"
	"chargehand/model/solve"
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
	drawn  entry.Stamp // when it moved last, while it plays
	then   smelt       // the smelt at that moment
	jump   jump        // where to begin
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
	smelt    smelt
	span     time.Duration // from light to its end, or to now
	only     bool          // when things were known is not recorded
	solved   bool          // the warnings have the solver's notes among them
	charges  []time.Duration
	taps     []time.Duration
	phases   []paint.PhaseAt
	warnings []rule.Warning
	acts     []time.Duration // when what a person did happened, in order
	taken    []time.Duration // when it was taken down, in order
	onsets   []time.Duration // of the warnings, in order
}

// courseOf gathers what the line of a smelt shows.
func courseOf(s smelt) course {
	c := course{smelt: s, span: fold.End(s.entries)}
	if s.running() {
		c.span = s.reading.At
	}
	c.only = fold.KnownAt(s.entries, c.span) == fold.All
	trace := fold.Trace(s.entries, fold.All, c.span)
	for _, ch := range trace.Charges {
		c.charges = append(c.charges, ch.At)
	}
	for _, l := range trace.Lines {
		if ofKind(l, entry.KindTap) {
			c.taps = append(c.taps, l.At)
		}
	}
	for _, t := range trace.Turns {
		c.phases = append(c.phases, paint.PhaseAt{At: t.At, Phase: t.Phase})
	}
	c = c.warned(rule.Walk(trace))
	for _, l := range s.lines {
		if entry.IsAct(l.Event) || ofKind(l, entry.KindLight, entry.KindStrike, entry.KindAmend) {
			c.taken = append(c.taken, l.Accepted)
			c.acts = append(c.acts, l.At)
		}
	}
	for _, times := range [][]time.Duration{c.acts, c.taken} {
		slices.Sort(times)
	}
	return c
}

// warned is the course with its warnings.
func (c course) warned(ws []rule.Warning) course {
	c.warnings, c.onsets = ws, make([]time.Duration, len(ws))
	for i, w := range ws {
		c.onsets[i] = w.Onset
	}
	return c
}

// seen is the course with what the solver saw on the way, which raises notes of
// its own.
func (c course) seen(glances []solve.Glance) course {
	c = c.warned(rule.WalkSolved(fold.Trace(c.smelt.entries, fold.All, c.span), glances))
	c.solved = true
	return c
}

// job is the whole course to be solved; none once it is.
func (c course) job() job {
	if !c.smelt.is() || c.solved {
		return job{}
	}
	return job{of: throughout, id: c.smelt.id, turn: c.smelt.turn, entries: c.smelt.entries, known: fold.All, at: c.span}
}

// stops are the moments that a step may go to.
func (r replay) stops() []time.Duration {
	switch {
	case r.by == byWarning:
		return r.course.onsets
	case r.asSeen:
		return r.course.taken
	}
	return r.course.acts
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
		if i < 0 || i >= len(stops) || stops[i] > r.course.span {
			return r, false
		}
		to = stops[i]
	}
	moved := r.to(to)
	return moved, moved.at != r.at
}

// to is the replay at another moment of the smelt.
func (r replay) to(at time.Duration) replay {
	r.at = max(0, min(at, r.course.span))
	return r.read()
}

// read reads the smelt as it was at the replay's moment.
func (r replay) read() replay {
	s := r.course.smelt
	known := fold.All
	if r.asSeen {
		known = fold.KnownAt(s.entries, r.at)
	}
	fresh := !r.then.is() || r.then.known != known || len(s.entries) != len(r.then.entries) || r.at.Truncate(rule.Grid) != r.then.watch.at
	was := r.then
	r.then = s.then(known, r.at)
	r.then.solution, r.then.solvedTurn = was.solution, was.solvedTurn
	r.then.reading = r.then.filled()
	if fresh {
		r.then = r.then.rewatched()
	} else {
		r.then.watch = was.watch
	}
	return r
}

// rewatched holds the rules against one of a smelt's moments again.
func (s smelt) rewatched() smelt {
	c := fold.Trace(s.entries, s.known, s.read.At)
	s.watch = watch{at: s.read.At.Truncate(rule.Grid), warnings: rule.WalkSolved(c, s.solution.Glances())}
	return s
}

// then is a smelt as known by one entry, at one of its moments: it is past.
func (s smelt) then(known uint64, at time.Duration) smelt {
	p := smelt{id: s.id, demo: s.demo, entries: s.entries, kept: s.kept, past: true, known: known, turn: 1}
	p.lines = fold.Lines(s.entries, known)
	p.read = model.Read(s.entries, known, at)
	p.reading, p.phase, p.charges = p.read, p.read.Phase, p.read.Charges
	return p
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
	if r.at == 0 && r.back || r.at == r.course.span && !r.back {
		r.plays = false
	}
	return r
}

// line is the time line under the picture.
func (r replay) line() paint.TimeLine {
	c := r.course
	tl := paint.TimeLine{
		Lit: r.then.reading.Lit, Span: c.span, Now: r.at, Charges: c.charges, Taps: c.taps, Warnings: c.warnings, Phases: c.phases,
		Back: r.back, Steps: words.StepsBy[r.by], AsSeen: r.asSeen, Only: c.only, Solving: !c.solved,
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
		for i := len(r.then.lines) - 1; i >= 0; i-- {
			l := r.then.lines[i]
			at := l.At
			if r.asSeen {
				at = l.Accepted
			}
			if at == r.at && l.Event != nil {
				return r.then.wallOf(l).Format(words.Clock) + "  " + describe(u, r.then, l)
			}
		}
	}
	return ""
}
