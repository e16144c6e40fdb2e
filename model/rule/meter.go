package rule

import (
	"chargehand/model/figure"
	"chargehand/model/fold"
)

// fewestForMeter is after how many charges the meter is first judged.
const fewestForMeter = 8

// meterFactor is the carbon burned over the most the metered blast allows, as it was
// at the last charge.
type meterFactor struct {
	odd  bool // it certainly is
	fact figure.Figure
}

// judge looks at the factor after a charge.
func (f *meterFactor) judge(c *fold.Timeline, charges int) {
	if charges < fewestForMeter {
		return
	}
	s := c.State
	s.Charges = s.Charges[:charges]
	f.fact = figure.MeterOf(s)
	f.odd = f.fact.Disbelieved()
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
