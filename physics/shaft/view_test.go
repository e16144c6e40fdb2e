package shaft

import (
	"math"
	"testing"

	"chargehand/physics"
)

// In a working furnace the zones lie in their order: nothing that burns above slag, no drying below iron.
func TestZonesAndChargesLieInOrder(t *testing.T) {
	s := dayShaft(t, DefaultParams(), Fine)
	seen := map[Zone]bool{}
	var profile []Layer
	runDay(t, &s, 4, 1.5, func(second float64) {
		if second < 2.5*3600 || math.Mod(second, 60) != 0 {
			return
		}
		profile = s.AppendProfile(profile[:0])
		before := ZoneBurning
		for i, l := range profile {
			z := l.Zone()
			seen[z] = true
			if z > before {
				t.Fatalf("at %.0f s layer %d at %.2f m is in zone %d above zone %d", second, i, l.Bottom, z, before)
			}
			before = z
		}
	})
	for _, z := range []Zone{ZoneDrying, ZoneHematite, ZoneMagnetite, ZoneWustite, ZoneSlag, ZoneBurning} {
		if !seen[z] {
			t.Errorf("zone %d was never seen", z)
		}
	}
}

func TestTemperatureBand(t *testing.T) {
	for _, c := range []struct{ kelvin, height, low, high float64 }{{1500, 0.1, 1210, 1640}, {900, 0.4, 650, 1100}, {300, 0.4, 288, 500}} {
		if b := TemperatureBand(c.kelvin, c.height, 288); b != (physics.Band{P10: c.low, P50: c.kelvin, P90: c.high}) {
			t.Errorf("%v K at %v m: %+v", c.kelvin, c.height, b)
		}
	}
	// The hearth is less certain than the fire over it, on both sides.
	if fire, hearth := TemperatureBand(1500, 0, 288), HearthBand(1500, 288); hearth.P10 >= fire.P10 || hearth.P90 <= fire.P90 || hearth.P10 < fire.P10-90 {
		t.Errorf("hearth %+v under a fire of %+v", hearth, fire)
	}
}

// The logs' own numbers: the model at factor 1 makes a charge in 10.4 x 0.93 min where 14.7 were measured (30 Oct 2021 at 798
// l/min): about 0.66. The band closes with intervals but never below what a measure leaves open.
func TestEstimateAirFactor(t *testing.T) {
	prior := AirFactorPrior()
	one := []ChargeInterval{{Measured: 14.7 * 60, Modelled: 10.4 * 0.93 * 60, AtFactor: 1}}
	many := make([]ChargeInterval, 0, 20)
	for range 20 {
		many = append(many, one[0])
	}
	a, b := EstimateAirFactor(prior, one), EstimateAirFactor(prior, many)
	if !(b.RelSD() < a.RelSD() && a.RelSD() < prior.RelSD()) || b.RelSD() < 0.07 {
		t.Errorf("spreads %.3f, %.3f, %.3f", prior.RelSD(), a.RelSD(), b.RelSD())
	}
	if math.Abs(b.P50-0.66) > 0.03 {
		t.Errorf("factor %.3f", b.P50)
	}
	if EstimateAirFactor(prior, nil) != prior || !EstimateAirFactor(physics.Band{}, one).IsZero() {
		t.Error("without intervals or prior")
	}
}
