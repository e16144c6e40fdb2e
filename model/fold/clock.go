package fold

import (
	"time"

	"chargehand/model/entry"
)

// clock places entries on the smelt's own clock, one after the other. It counts from
// the first acceptance; a Journal takes the light off.
//
// Within one start of the machine the boot clock tells, so a stepped wall clock
// scrambles nothing. A later start is joined on by wall time, less what the
// wall clock had been stepped by; never before what was accepted already. A
// clock jump may shift a whole start (a board that woke with a wrong time).
// Entries without a boot clock (an imported log) go by wall time alone.
type clock struct {
	zero    time.Time
	starts  *bootAt
	last    time.Duration // last acceptance
	stepped time.Duration // how far the wall has been stepped by then
	day     time.Duration // of a log: by how much its days were shifted when its light was amended; see Journal.dayOf
}

// bootAt is where one start of the machine lies on the clock, the last one first.
type bootAt struct {
	boot   string
	at     time.Duration
	before *bootAt
}

// place is when the next entry happened and when it was taken down. The clock goes
// on to it.
func (c *clock) place(e entry.Entry, shift map[string]time.Duration) (at, accepted time.Duration) {
	wall := acceptedWall(e).Sub(c.zero)
	accepted = wall
	if e.Boot != "" {
		accepted = c.startOf(e, wall, shift) + e.Mono
		c.stepped = wall - accepted
		c.last = accepted
	}
	at = c.when(e, accepted, e.Happened, e.Uncertain > 0)
	if e.Boot != "" {
		at -= c.day
	}
	return at, accepted
}

// together is how far wall and boot clock may part while nobody set the one: they are
// read one after the other, and to the millisecond.
const together = time.Second

// when is a moment that an entry names, by the wall clock as it was when the entry was
// taken down. One that was typed (it is known to half a minute or so) was read off that
// clock too and stands where it says, or 03:20 would be shown as 03:19 for a millisecond
// between the two clocks.
func (c *clock) when(e entry.Entry, accepted time.Duration, happened time.Time, typed bool) time.Duration {
	wall, back := acceptedWall(e).Sub(c.zero), acceptedWall(e).Sub(happened)
	if typed && (accepted-wall).Abs() < together {
		return wall - back
	}
	return accepted - back
}

func (c *clock) startOf(e entry.Entry, wall time.Duration, shift map[string]time.Duration) time.Duration {
	for b := c.starts; b != nil; b = b.before {
		if b.boot == e.Boot {
			return b.at
		}
	}
	at := max(wall-c.stepped+shift[e.Boot], c.last) - e.Mono
	c.starts = &bootAt{e.Boot, at, c.starts}
	return at
}

// ShiftTo is by how much the start of the machine that now tells the time has to be
// moved on the smelt's clock, so that it is the right time now: its wall clock stood
// wrong from the beginning. False when that would put it before what was kept in an
// earlier start.
func (j Journal) ShiftTo(now entry.Stamp, right time.Time) (time.Duration, bool) {
	k := j.AsKnown(All)
	if k.n == 0 {
		return 0, false
	}
	j = k.journal
	first, i := entry.Entry{Happened: now.Wall, Kept: now.Wall, Boot: now.Boot, Mono: now.Mono}, 0
	for ; i < j.Len(); i++ {
		if e := j.records.At(i).entry; e.Boot == now.Boot {
			first = e
			break
		}
	}
	if i == 0 {
		return 0, false
	}
	before := j.records.At(i - 1).clock
	at := right.Sub(k.About().Lit) + k.lit() - now.Mono + first.Mono
	return at - (acceptedWall(first).Sub(before.zero) - before.stepped) - j.shift[now.Boot], at >= before.last
}

// acceptedWall is the wall time at which the entry was taken down. An entry of
// an imported log has none of its own; its happening stands for it, so that the
// log's own day is the smelt's day.
func acceptedWall(e entry.Entry) time.Time {
	if e.Boot == "" || e.Kept.IsZero() {
		return e.Happened
	}
	return e.Kept
}

// shifts adds up what the clock jumps in force say of each start; nil for nothing.
func (j Journal) shifts(jumps []int, changes map[int]*change) map[string]time.Duration {
	var shift map[string]time.Duration
	add := func(i int, ev entry.Event) {
		jump, ok := ev.(entry.ClockJump)
		if !ok || jump.ShiftMs == 0 {
			return
		}
		boot := jump.Boot
		if boot == "" {
			boot = j.records.At(i).entry.Boot
		}
		if shift == nil {
			shift = map[string]time.Duration{}
		}
		shift[boot] += time.Duration(jump.ShiftMs) * time.Millisecond
	}
	for _, i := range jumps {
		if changes[i] == nil {
			add(i, j.records.At(i).entry.Event)
		}
	}
	for i, c := range changes {
		if c.struckBy < 0 {
			add(i, c.event)
		}
	}
	return shift
}
