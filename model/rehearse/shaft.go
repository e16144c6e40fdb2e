package rehearse

import (
	"time"

	"chargehand/model/figure"
	"chargehand/model/picture"
	"chargehand/model/truth"
)

// Shaft is the furnace at a moment as it truly was beside as it was believed, to be drawn, with the figures that differ.
type Shaft struct {
	At             time.Duration
	True, Believed picture.Picture
	Is             truth.Truth
	Heat, Stack    figure.Figure // as believed
	Down           figure.Figure
	SlagBelow      figure.Figure // cm under the tuyere
	Bloom          figure.Figure // so far
}

// bloomMetal is the share of metal in a bloom as it lies in the furnace, as the believed one has it in the middle (section on
// yields: 0.6 to 0.9).
const bloomMetal = 0.75

// shaftOf draws a moment: the believed one as the screen did, the true one in the same frame.
func shaftOf(r *figure.Reading, is truth.Truth) Shaft {
	s := Shaft{
		At: r.At, Is: is, Believed: picture.From(r), Heat: r.Figure(figure.HearthTemperature), Stack: r.Figure(figure.StackHeight), Down: r.Figure(figure.OreComeDown),
		SlagBelow: r.Figure(figure.SlagBelowTuyere), Bloom: r.Figure(figure.BloomSoFar),
	}
	s.True = s.Believed.Truly(is.StackCm, is.TopC, is.PeepC, is.HearthC, is.SlagCm, is.Bloom/bloomMetal)
	return s
}

// ShaftAt is the last one at or before a moment; false where there is none.
func (d End) ShaftAt(at time.Duration) (s Shaft, ok bool) {
	for _, one := range d.Shafts {
		if one.At > at && ok {
			break
		}
		s, ok = one, true
	}
	return s, ok
}
