package figure

import (
	"math"
	"testing"

	"chargehand/physics"
	"chargehand/physics/shaft"
)

// The balance of carbon gas with magnetite, wustite and iron, of the published
// oxygen buffers (O'Neill 1988; O'Neill and Pownceby 1993, as tabulated in
// testdata/physics/equilibria.csv, rows baur_glaessner_buffers). The two sets of
// published buffers differ by up to three points of CO.
func TestStepsNeedWhatTheBalanceSays(t *testing.T) {
	for _, c := range []struct {
		what    Process
		celsius float64
		percent float64
	}{
		{IronForms, 700, 59.0}, {IronForms, 900, 67.9}, {IronForms, 1100, 73.1}, {LosesOxygen, 700, 35.8}, {LosesOxygen, 900, 23.1},
	} {
		if got := c.what.LeastCO(c.celsius); !got.Known || math.Abs(got.Value-c.percent) > 3 {
			t.Errorf("step %d at %v C needs %v %% CO, want %v", c.what, c.celsius, got, c.percent)
		}
	}
	for _, p := range []Process{Drying, Roasting, SlagRuns, Burning} {
		if got := p.LeastCO(800); got.Known {
			t.Errorf("%d reduces nothing, and needs %v", p, got)
		}
	}
	if got := IronForms.LeastCO(500); got.Known { // wustite does not last below about 570 C (Darken and Gurry 1945)
		t.Errorf("wustite at 500 C needs %v", got)
	}
	if got := RedToBlack.LeastCO(500); !got.Known || got.Value > 1 { // next to none, common practice
		t.Errorf("hematite at 500 C needs %v", got)
	}
}

// Over a zone the gas is that of its layers, each by its thickness: by hand.
func TestGasOverAZone(t *testing.T) {
	profile := []shaft.Layer{
		{Bottom: 0, Top: 0.1, CO: 0.3, CO2: 0.1}, {Bottom: 0.1, Top: 0.4, CO: 0.2, CO2: 0.1}, {Bottom: 0.4, Top: 0.5, CO: 0.1, CO2: 0.3},
	}
	z := Zone{Bottom: 0, Top: 40}
	got, known := z.carbonMonoxide(profile, 100)
	want := physics.Band{P10: 100 * 0.045 / 0.085, P50: 100 * 0.09 / 0.13, P90: 100 * 0.18 / 0.22} // half and twice the CO for the CO2
	if !known || math.Abs(got.P10-want.P10)+math.Abs(got.P50-want.P50)+math.Abs(got.P90-want.P90) > 1e-9 {
		t.Errorf("got %v, want %v", got, want)
	}
	if got, known := (Zone{Bottom: 60, Top: 80}).carbonMonoxide(profile, 100); known {
		t.Errorf("where there is no layer the gas is %v", got)
	}
	if got, known := z.carbonMonoxide([]shaft.Layer{{Top: 0.1}}, 100); known {
		t.Errorf("gas without carbon is %v", got)
	}
}
