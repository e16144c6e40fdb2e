package forecast

import (
	"cmp"
	"math"
	"slices"
	"time"

	"chargehand/model/entry"
	"chargehand/model/fold"
)

// changedShare is the least change of the blast that counts as one: as much as
// one interval scatters by itself on a steady smelt (the last of
// fitted.Scatter), below which an effect could not be told from chance.
const changedShare = 0.15

// start is a charge as the beginning of an interval.
type start struct {
	At  time.Duration
	Seq uint64
}

// starts are the charges, of those that belong together the first.
func starts(cs []fold.Charge) []start {
	first := make([]start, 0, len(cs))
	for i := range cs {
		if n := len(first); n == 0 || cs[i].At-first[n-1].At > fold.Together {
			first = append(first, start{cs[i].At, cs[i].Seq})
		}
	}
	return first
}

// interval is the time from one charge to the next.
type interval struct {
	Minutes float64
	Stopped bool // work or blast stood still in it for longer than charging takes
	NewAir  bool // the air was changed for good in it or in the one before
}

// intervals are all that have ended, by what was known when each did.
func intervals(s fold.State) []interval {
	cs := starts(s.Charges)
	if len(cs) < 2 {
		return nil
	}
	work := stops(s)
	is := make([]interval, len(cs)-1)
	for i := range is {
		from, to := cs[i].At, cs[i+1].At
		is[i] = interval{
			Minutes: (to - from).Minutes(),
			Stopped: work.within(from, to) > fold.Together || s.Unblown(from, to) > fold.Together,
			// One that was changed shortly before a charge shows only in the
			// interval after it.
			NewAir: newAir(airBy(s.Blast, cs[max(i-1, 0)].At+1), airBy(s.Blast, to)),
		}
	}
	return is
}

// air is the blast while it blows, as far as it was recorded.
type air struct {
	entry  int // which one set it, from 0; -1 for none
	volume entry.Maybe[entry.LitrePerMinute]
}

// airBy is the air as last set before a moment. A blast that stands still is a
// stop, not another air.
func airBy(bs []fold.Blast, before time.Duration) air {
	i, _ := slices.BinarySearchFunc(bs, before, func(b fold.Blast, t time.Duration) int { return cmp.Compare(b.At, t) })
	for i--; i >= 0; i-- {
		if !bs[i].Off {
			return air{i, bs[i].Volume}
		}
	}
	return air{entry: -1}
}

// newAir tells whether the air is another one now: set to a volume that differs
// by enough, or set anew without anybody knowing by how much.
func newAir(was, is air) bool {
	if is.entry == was.entry {
		return false
	}
	if !was.volume.Positive() || !is.volume.Positive() {
		return true
	}
	return math.Abs(math.Log(float64(is.volume.Value/was.volume.Value))) > math.Log1p(changedShare)
}

// spans are stretches of time, in order.
type spans [][2]time.Duration

// stops are when the work was paused; the last may go on still.
func stops(s fold.State) (work spans) {
	for _, l := range s.Lines {
		switch l.Event.(type) {
		case entry.Pause:
			work = work.open(l.At)
		case entry.Resume:
			work = work.close(l.At)
		}
	}
	return work
}

func (sp spans) isOpen() bool { return len(sp) > 0 && sp[len(sp)-1][1] == math.MaxInt64 }

func (sp spans) open(at time.Duration) spans {
	if sp.isOpen() {
		return sp
	}
	return append(sp, [2]time.Duration{at, math.MaxInt64})
}

func (sp spans) close(at time.Duration) spans {
	if sp.isOpen() {
		sp[len(sp)-1][1] = at
	}
	return sp
}

// within is how much of the time between two moments the spans take.
func (sp spans) within(from, to time.Duration) time.Duration {
	var sum time.Duration
	for _, s := range sp {
		sum += max(0, min(s[1], to)-max(s[0], from))
	}
	return sum
}
