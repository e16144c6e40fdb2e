// Package pace knows the time between charges: every interval once, with what of it
// was a stop, and which charges are one charge in several goes or were probably
// keyed twice. The level of the burden, the usual interval, the burn rate, the
// forecast and the rules read it, each with a question of its own.
package pace

import (
	"slices"
	"time"

	"chargehand/model/grow"
)

// Together is how soon after a charge another one is still the same charge: no
// furnace eats a charge in two minutes (the least interval of the logs in testdata is
// four), so what follows so fast was put in or keyed together. It says nothing of
// the burn, nor of when the next charge is due. A stop of no more than that is no
// stop: charging takes as long.
const Together = 2 * time.Minute

// Interval is the time from one charge to the next. All times are on the smelt's
// clock.
type Interval struct {
	From, To time.Duration
	Unblown  time.Duration // how much of it the blast was off
	Idle     time.Duration // how much of it the work was paused
	TopUp    bool          // it says nothing of the burn: both ends are one charge put in in several goes, or Filled
	Filled   bool          // the charge at its end only brought a new fill up to the mark
	Double   bool          // the charge at its end was probably keyed twice
	Began    time.Duration // when the charge that From belongs to began; From, but in a charge of several goes
}

// Length is all of the interval.
func (i Interval) Length() time.Duration { return i.To - i.From }

// Burning is the interval without the time in which no blast was on: next to nothing
// burns then. A pause with the blast on burns as ever.
func (i Interval) Burning() time.Duration { return i.To - i.From - i.Unblown }

// Stopped tells whether work or blast stood still in it for longer than charging
// takes.
func (i Interval) Stopped() bool { return i.Unblown > Together || i.Idle > Together }

// SlowShare is from how many times the usual interval on a charge is shown as slow:
// beyond the spread of a steady smelt's intervals (about a tenth).
const SlowShare = 1.25

// Log is the charges and stops of a smelt as they happened, one after the other. It
// is a value; a copy goes its own way.
type Log struct {
	intervals     grow.List[Interval]
	unblown, idle stops
	charges       int
	last          time.Duration   // the last charge
	began         time.Duration   // when the charge that it belongs to began
	burning       []time.Duration // of all intervals that count for the usual, by length
}

// Clone is a copy that may go on beside this one.
func (l Log) Clone() Log {
	l.unblown.done, l.idle.done = slices.Clip(l.unblown.done), slices.Clip(l.idle.done)
	l.burning = slices.Clone(l.burning)
	return l
}

// Charge notes that charcoal went in. Double says that it was probably keyed twice.
func (l *Log) Charge(at time.Duration, double bool) { l.charge(at, double, false) }

// TopUp notes charcoal that only brought the burden up to where charges bring it: no
// charge of its own, and what comes after counts from it.
func (l *Log) TopUp(at time.Duration) { l.charge(at, false, true) }

func (l *Log) charge(at time.Duration, double, topUp bool) {
	l.charges++
	if l.charges == 1 {
		l.last, l.began = at, at
		return
	}
	together := at-l.began <= Together
	i := Interval{
		From: l.last, To: at, Unblown: l.Unblown(l.last, at), Idle: l.idle.within(l.last, at),
		TopUp: together || topUp, Filled: topUp && !together, Double: double, Began: l.began,
	}
	l.last = at
	if !together {
		l.began = at
	}
	l.intervals.Append(i)
	if !i.TopUp && !i.Double {
		n, _ := slices.BinarySearch(l.burning, i.Burning())
		l.burning = slices.Insert(l.burning, n, i.Burning())
	}
}

// Blow notes whether the blast is off from a moment on.
func (l *Log) Blow(at time.Duration, off bool) { l.unblown.set(at, off) }

// Pause notes whether the work is paused from a moment on.
func (l *Log) Pause(at time.Duration, paused bool) { l.idle.set(at, paused) }

// Intervals are those between neighbouring charges, one fewer than there are
// charges.
func (l Log) Intervals() []Interval { return l.intervals.All() }

// Whole are the intervals from the beginning of one whole charge to that of the next:
// those of the charges that were put in at several goes are taken together. Those that
// were Filled are among them, since they took their time.
func (l Log) Whole() []Interval {
	whole := make([]Interval, 0, l.intervals.Len())
	for _, i := range l.intervals.All() {
		if i.TopUp && !i.Filled {
			continue
		}
		if i.Began != i.From {
			i.From, i.Unblown, i.Idle = i.Began, l.Unblown(i.Began, i.To), l.idle.within(i.Began, i.To)
		}
		whole = append(whole, i)
	}
	return whole
}

// Usual is this smelt's usual interval: the median of its own so far, without their
// stops; top-ups and what was keyed twice are left out. It is 0 before the second
// charge.
func (l Log) Usual() time.Duration {
	n := len(l.burning)
	if n == 0 {
		return 0
	}
	return (l.burning[(n-1)/2] + l.burning[n/2]) / 2
}

// UsualBefore is the usual interval as it was before the last one ended.
func (l Log) UsualBefore() time.Duration {
	n := l.intervals.Len()
	if n == 0 {
		return 0
	}
	if last := l.intervals.All()[n-1]; !last.TopUp && !last.Double {
		i, _ := slices.BinarySearch(l.burning, last.Burning())
		l.burning = slices.Delete(slices.Clone(l.burning), i, i+1)
	}
	return l.Usual()
}

// Began is when the last charge began: itself, but in a charge of several goes.
func (l Log) Began() time.Duration { return l.began }

// Unblown is how long the blast was off between two moments.
func (l Log) Unblown(from, to time.Duration) time.Duration { return l.unblown.within(from, to) }

// Paused tells whether the work stood still at a moment.
func (l Log) Paused(at time.Duration) bool { return l.idle.holds(at) }

// stops are stretches of time, in order.
type stops struct {
	done []stop
	open bool // another one goes on
	from time.Duration
}

type stop struct{ from, to time.Duration }

func (s *stops) set(at time.Duration, on bool) {
	switch {
	case on && !s.open:
		s.open, s.from = true, at
	case !on && s.open:
		s.open = false
		s.done = append(s.done, stop{s.from, at})
	}
}

// within is how much of the time between two moments they take.
func (s stops) within(from, to time.Duration) time.Duration {
	var sum time.Duration
	if s.open {
		sum = max(0, to-max(s.from, from))
	}
	for i := len(s.done) - 1; i >= 0 && s.done[i].to > from; i-- {
		sum += max(0, min(s.done[i].to, to)-max(s.done[i].from, from))
	}
	return sum
}

// holds tells whether a moment is in one of them; its end is not.
func (s stops) holds(at time.Duration) bool {
	if s.open && s.from <= at {
		return true
	}
	i, _ := slices.BinarySearchFunc(s.done, at, func(s stop, at time.Duration) int {
		if s.to <= at {
			return -1
		}
		return 1
	})
	return i < len(s.done) && s.done[i].from <= at
}
