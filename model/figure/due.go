package figure

import (
	"chargehand/model/fold"
	"chargehand/model/forecast"
	"chargehand/physics"
)

// due sets when the next charge and the third from now are due, as minutes from
// this moment.
func (r *Reading) due(s fold.State) {
	r.Due, r.HasDue = forecast.Next(s)
	if !r.HasDue {
		return
	}
	basis := Estimated
	if r.Due.Intervals == 0 {
		basis = Guessed
	}
	left := func(a forecast.Ahead) Figure {
		gone := (s.At - a.From).Minutes()
		return Figure{Band: physics.Band{P10: a.Minutes.P10 - gone, P50: a.Minutes.P50 - gone, P90: a.Minutes.P90 - gone}, Basis: basis}
	}
	r.Figures[NextCharge], r.Figures[NextThree] = left(r.Due.Next), left(r.Due.Three)
}
