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

// interval is the time from one charge to the next.
type interval struct {
	Minutes float64
	Stopped bool // work or blast stood still in it for longer than charging takes
	NewAir  bool // the air was changed for good in it or in the one before
	Filled  bool // it only brought a new fill up to the mark
}

// intervals are all that have ended, by what was known when each did: from the
// beginning of one charge to that of the next. A charge is due by the clock, so a stop
// is in their length.
func intervals(s *fold.State) []interval {
	var is []interval
	var before time.Duration // when the charge before the one at its beginning began
	for _, i := range s.Pace.Whole() {
		if len(is) == 0 {
			before = i.From
		}
		is = append(is, interval{
			Minutes: i.Length().Minutes(),
			Stopped: i.Stopped(), Filled: i.Filled,
			// One that was changed shortly before a charge shows only in the
			// interval after it.
			NewAir: newAir(airBy(s.Blast, before+1), airBy(s.Blast, i.To)),
		})
		before = i.From
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
