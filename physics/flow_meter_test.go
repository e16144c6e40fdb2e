package physics

import (
	"math"
	"testing"
)

// Orifices against the python library fluids 1.0.22 (ISO 5167-2 and ASME MFC-3M; the first three are its documented examples).
func TestOrificeAgainstLibrary(t *testing.T) {
	o := Orifice{Pipe: 0.07391, Bore: 0.0222, Taps: FlangeTaps}
	if got := o.DischargeCoefficient(4 * 0.12 / (math.Pi * o.Pipe * 1.85e-5)); math.Abs(got-0.5990326277) > 1e-9 {
		t.Errorf("C %.10f, library 0.5990326277", got)
	}
	o.Pipe = 0.0739
	if got := o.Expansibility(1e5, 9.9e4, 1.4); math.Abs(got-0.9974739057) > 1e-9 {
		t.Errorf("expansibility %.10f, library 0.9974739057", got)
	}
	if got := o.MassFlow(1e3, 1.1646, 0.5988, 0.9975); math.Abs(got-0.01120390944) > 1e-9 {
		t.Errorf("%.11f kg/s, library 0.01120390944", got)
	}
	air := Air{Temperature: FromCelsius(20), Pressure: StandardPressure}
	for _, c := range []struct {
		pipe, bore          float64
		taps                OrificeTaps
		dp, coefficient, ll float64
	}{
		{52.5, 25, CornerTaps, 250, 0.61852, 381.4}, {52.5, 25, CornerTaps, 500, 0.61582, 537.3},
		{52.5, 25, CornerTaps, 1000, 0.61368, 758.1}, {52.5, 30, CornerTaps, 500, 0.61879, 801.0},
		{52.5, 30, FlangeTaps, 500, 0.61873, 801.0}, {52.5, 30, DAndHalfDTaps, 500, 0.61915, 801.5},
		{77.9, 40, CornerTaps, 250, 0.61481, 979.8},
	} {
		r, err := Orifice{Pipe: c.pipe / 1000, Bore: c.bore / 1000, Taps: c.taps}.Air(c.dp, air)
		must(t, err)
		if math.Abs(r.Discharge-c.coefficient) > 2e-5 || math.Abs(ToLitresPerMinute(r.Volume)-c.ll) > 0.5 {
			t.Errorf("%+v: C %.5f, %.1f l/min", c, r.Discharge, ToLitresPerMinute(r.Volume))
		}
	}
	// C of corner taps in a 100 mm pipe (same library).
	for b, row := range map[float64][6]float64{
		0.2: {0.60445, 0.60169, 0.59999, 0.59869, 0.59813, 0.59738}, 0.5: {0.62757, 0.61858, 0.61311, 0.60884, 0.60687, 0.60378},
		0.75: {0.66628, 0.63937, 0.62363, 0.61157, 0.60596, 0.59653},
	} {
		for i, re := range []float64{5e3, 1e4, 2e4, 5e4, 1e5, 1e6} {
			if got := (Orifice{Pipe: 0.1, Bore: 0.1 * b}).DischargeCoefficient(re); math.Abs(got-row[i]) > 1.5e-5 {
				t.Errorf("ratio %g, Re %g: %.5f, library %.5f", b, re, got, row[i])
			}
		}
	}
}

func TestOrificeOutsideTheStandard(t *testing.T) {
	air := StandardAir()
	for _, o := range []Orifice{{Pipe: 0.03, Bore: 0.02}, {Pipe: 0.1, Bore: 0.09}, {Pipe: 0.1, Bore: 0.005}, {Pipe: math.NaN(), Bore: 0.02}} {
		if _, err := o.Air(500, air); err == nil {
			t.Errorf("%+v was taken", o)
		}
	}
	if _, err := (Orifice{Pipe: 0.0525, Bore: 0.025}).Air(1, air); err == nil {
		t.Error("a breath of air, below the least Reynolds number, was taken")
	}
}

// Pitot speeds in air of 20 C (v = sqrt(2p/rho), computed elsewhere).
func TestPitot(t *testing.T) {
	rho, err := Air{Temperature: FromCelsius(20), Pressure: StandardPressure}.Density()
	must(t, err)
	for p, want := range map[float64]float64{1: 1.289, 5: 2.882, 10: 4.076, 25: 6.444, 50: 9.113, 100: 12.888} {
		if got := PitotSpeed(p, rho); math.Abs(got-want) > 2e-3 {
			t.Errorf("%g Pa: %.3f m/s, want %.3f", p, got, want)
		}
	}
}

// The record of 30 Oct 2021 multiplies its anemometer by 57.4 to l/min: 13.8 m/s is 793 l/min through 9.57 cm2. The bellows
// record of 7 Nov 2009 has 700 l/min at 72 strokes a minute, 9.72 l a stroke.
func TestVaneAndBellows(t *testing.T) {
	if got := ToLitresPerMinute(VaneFlow(13.8, 9.57e-4, 1)); math.Abs(got-793) > 1.5 {
		t.Errorf("vane: %.1f l/min, record 793", got)
	}
	if got := ToLitresPerMinute(BellowsFlow(72.0/60, 9.72e-3, 1)); math.Abs(got-700) > 0.5 {
		t.Errorf("bellows: %.1f l/min, record 700", got)
	}
}

// Gate marks with the lettered gates of a published log (B 625, D 815 l/min) as marks 2 and 4.
func TestGateTable(t *testing.T) {
	g := GateTable{{2, FromLitresPerMinute(625)}, {4, FromLitresPerMinute(815)}}
	must(t, g.Validate())
	for _, c := range []struct {
		mark, want float64
		known      bool
	}{{2, 625, true}, {3, 720, true}, {4, 815, true}, {5, 815, false}, {1, 625, false}} {
		got, known := g.Flow(c.mark)
		if math.Abs(ToLitresPerMinute(got)-c.want) > 1e-9 || known != c.known {
			t.Errorf("mark %g: %.1f %v", c.mark, ToLitresPerMinute(got), known)
		}
	}
	for _, bad := range []GateTable{nil, {{1, 0.01}}, {{2, 0.01}, {1, 0.02}}, {{1, -1}, {2, 0.01}}} {
		if bad.Validate() == nil {
			t.Errorf("%v was taken", bad)
		}
	}
	if _, known := (GateTable{}).Flow(1); known {
		t.Error("an empty table knows a flow")
	}
}
