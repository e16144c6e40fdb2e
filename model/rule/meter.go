package rule

import (
	"chargehand/model/figure"
	"chargehand/model/fold"
)

const (
	// fewestForMeter is after how many charges the meter is first judged, and
	// every how many again.
	fewestForMeter, meterEvery = 8, 4
	// meterLow is a factor below which so much of the metered air cannot have
	// burned: the least a blast burns, all to dioxide, is half the most.
	meterLow = 0.5
)

// meterFactor is the carbon burned over the most the metered blast allows, once
// it is certainly odd.
type meterFactor struct {
	odd  bool
	fact figure.Figure
}

// judge looks at the factor after some more charges, until it is odd.
func (f *meterFactor) judge(c *fold.Course, charges int) {
	if f.odd || charges < fewestForMeter || (charges-fewestForMeter)%meterEvery != 0 {
		return
	}
	s := c.State
	s.Charges = s.Charges[:charges]
	s.HasLevel = false // no layers: only the factor is wanted
	fact := figure.From(s).Figure(figure.MeterFactor)
	f.odd = fact.Known() && fact.Basis != figure.Guessed && (fact.P10 > 1 || fact.P90 < meterLow)
	f.fact = fact
}

// meterOdd: more carbon burned than the blast can burn, or less than it must.
// That is the meter, the measure or a leak; it is told once.
func meterOdd(m *moment) (Evidence, bool) {
	if !m.factor.odd {
		return nil, false
	}
	f := m.factor.fact
	return Evidence{
		number("factor", f.P50, Count), number("low", f.P10, Count), number("high", f.P90, Count),
	}, true
}
