package shaft

import (
	"testing"

	"chargehand/physics"
)

// What the model has hotter than any reading goes down to the hottest places that were
// read, and is told from what lies among them.
func TestBeyondReadingsTheBandGoesDownToThem(t *testing.T) {
	for _, c := range []float64{1300, 1450, 1451, 1517, 1604} {
		k := physics.ZeroCelsius + c
		b := TemperatureBand(k, 0.05, 288)
		beyond := c > HottestReadHigh
		if BeyondReadings(k) != beyond {
			t.Errorf("%v C: beyond readings %v", c, !beyond)
		}
		if low := physics.ToCelsius(b.P10); beyond && low > HottestReadLow+1e-6 || !beyond && low < c-zoneDown-1e-6 || b.P50 != k || b.P90 <= k {
			t.Errorf("%v C: %v to %v", c, low, physics.ToCelsius(b.P90))
		}
	}
}
