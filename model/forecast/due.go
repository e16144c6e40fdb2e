package forecast

import (
	"math"
	"time"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/physics"
)

// Due is when the next charges are due, as far as it can be told just after the
// last one. It stays the same until the next charge, but for the time without
// blast, by which it moves on: nothing burns then. Doubts may join.
type Due struct {
	Next      Ahead   // the next charge
	Three     Ahead   // the third from now: the next three together
	Intervals int     // of this smelt, on which the level rests: 0 for the prior alone
	Doubts    []Doubt // what speaks against it, the gravest first
}

// Ahead is a time to come with its spread of 80 %.
type Ahead struct {
	From    time.Duration // the last charge, on the smelt's clock, of charges within two minutes the first; later by the time without blast since then
	Minutes physics.Band  // from there, unrounded, all above nought
}

// Next forecasts from a state; false before the first charge that holds
// charcoal and once nothing more is charged (burn-down, extracted, closed).
func Next(s fold.State) (Due, bool) {
	switch s.Phase {
	case entry.BurnsDown, entry.Extracted, entry.Closed:
		return Due{}, false
	}
	if len(s.Charges) == 0 {
		return Due{}, false
	}
	began := s.Pace.Began()
	from := began + s.Unblown(began, s.At)
	p := paceOf(shared, intervals(&s))
	return Due{
		Next:      Ahead{from, p.next()},
		Three:     Ahead{from, p.three()},
		Intervals: len(p.own),
		Doubts:    doubtsOf(&s, began, p),
	}, true
}

// At is the 10th, 50th and 90th percentile on the smelt's clock.
func (a Ahead) At() (p10, p50, p90 time.Duration) {
	return a.at(a.Minutes.P10), a.at(a.Minutes.P50), a.at(a.Minutes.P90)
}

func (a Ahead) at(minutes float64) time.Duration {
	return a.From + time.Duration(min(minutes*float64(time.Minute), farthest))
}

// farthest ahead that a forecast says anything, ns: an entry with a wrong year
// must not turn the clock over.
const farthest = float64(365 * 24 * time.Hour)

// Left are the whole minutes from a moment until the 10th, 50th and 90th
// percentile, negative when they have passed: the outer two rounded outwards,
// since a band of whole minutes must not promise more than the band.
func (a Ahead) Left(now time.Duration) (low, mid, high int) {
	gone := (now - a.From).Minutes()
	l, h := outwards(a.Minutes.P10-gone, a.Minutes.P90-gone)
	return int(l), int(math.Round(a.Minutes.P50 - gone)), int(h)
}

// outwards rounds a band to whole minutes, neither side inwards.
func outwards(low, high float64) (float64, float64) { return math.Floor(low), math.Ceil(high) }
