package figure

import (
	"testing"

	"chargehand/physics"
)

// A meter is not believed where the band of its factor lies outside of what can be, above
// all to monoxide or below half of that, and never on guesses alone.
func TestAMeterIsDisbelievedForCertainOnly(t *testing.T) {
	for _, c := range []struct {
		low, high float64
		basis     Basis
		want      bool
	}{
		{1.02, 1.24, Estimated, true}, {0.98, 1.2, Estimated, false}, {0.3, 0.45, Estimated, true}, {0.4, 0.6, Estimated, false}, {1.02, 1.24, Guessed, false},
	} {
		var r Reading
		r.Figures[MeterFactor] = Figure{Band: physics.Band{P10: c.low, P50: (c.low + c.high) / 2, P90: c.high}, Basis: c.basis}
		if r.MeterDoubted() != c.want {
			t.Errorf("%+v: doubted %v", c, r.MeterDoubted())
		}
	}
}
