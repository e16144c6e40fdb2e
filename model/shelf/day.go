package shelf

import (
	"time"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/model/pace"
)

// HalfHour is what went on in half an hour of a smelt's own clock.
type HalfHour struct {
	Ore  entry.Kilogram `json:"ore,omitempty"`  // charged in it, as far as it was weighed
	Slow bool           `json:"slow,omitempty"` // a charge ended in it that burnt slower than this smelt's usual
}

// mostHalves bounds a day: two days and nights.
const mostHalves = 96

// dayOf is the smelt in half hours from light to its end, or to its last line while
// it is not over.
func dayOf(s fold.State) (day []HalfHour, lasted time.Duration) {
	for l := range s.Lines.All() {
		if s.Phase.Over() && l.At > s.Since {
			break
		}
		lasted = max(lasted, l.At)
	}
	const half = 30 * time.Minute
	at := func(t time.Duration) *HalfHour {
		n := int(max(t, 0) / half)
		if n >= mostHalves {
			return nil
		}
		for len(day) <= n {
			day = append(day, HalfHour{})
		}
		return &day[n]
	}
	at(lasted)
	for _, c := range s.Charges {
		if h := at(c.At); h != nil {
			h.Ore += entry.Kilogram(c.Ore.Charged.Kg)
		}
	}
	usual := s.Pace.Usual()
	for _, i := range s.Pace.Whole() {
		if h := at(i.To); h != nil && usual > 0 && !i.Double && float64(i.Burning()) > pace.SlowShare*float64(usual) {
			h.Slow = true
		}
	}
	return day, lasted
}

// FirstOre is the half hour of the day in which ore first went in, -1 for none.
func (s Summary) FirstOre() int {
	for i, h := range s.Day {
		if h.Ore > 0 {
			return i
		}
	}
	return -1
}

// Yield is the bloom as a share of the ore, dry where that is known, else as it was
// charged, and whether there is such a figure.
func (s Summary) Yield() (share float64, dry, known bool) {
	switch {
	case !s.Bloom.Positive():
		return 0, false, false
	case s.OreDry.Positive():
		return float64(s.Bloom.Value / s.OreDry.Value), true, true
	case s.Ore.Positive():
		return float64(s.Bloom.Value / s.Ore.Value), false, true
	}
	return 0, false, false
}
