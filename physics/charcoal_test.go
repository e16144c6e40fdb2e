package physics_test

import (
	"math"
	"testing"

	"chargehand/physics"
)

func blast(t testing.TB, air physics.Air, lMin float64) physics.AirFlow {
	t.Helper()
	flow, err := air.Flow(physics.FromLitresPerMinute(lMin))
	if err != nil {
		t.Fatal(err)
	}
	return flow
}

// atomicMassSlack: the figures were computed with 12.0107 g/mol for carbon, this program has 12.011 (IUPAC 2021).
const atomicMassSlack = 4e-5

func TestBurnRateBounds(t *testing.T) {
	for _, row := range figuresOfAir(t, "burn_rate") {
		flow := blast(t, physics.StandardAir(), number(t, row["x1"]))
		share, want := number(t, row["x2"]), number(t, row["value"])
		what := row["x1"] + " l/min, CO share " + row["x2"]
		agree(t, what, physics.ToKgPerHour(must(t)(flow.CarbonAt(share))), want, atomicMassSlack)
		switch share {
		case 0:
			agree(t, what, physics.ToKgPerHour(flow.LeastCarbon()), want, atomicMassSlack)
		case 1:
			agree(t, what, physics.ToKgPerHour(flow.MostCarbon()), want, atomicMassSlack)
		}
	}
}

func TestAirPerCarbon(t *testing.T) {
	for _, row := range figuresOfAir(t, "stoich") {
		air := physics.StandardAir()
		if row["x1"] != "" {
			air.Temperature = physics.FromCelsius(number(t, row["x1"]))
		}
		flow := blast(t, air, 60000) // 1 m3/s
		air1 := flow.Mass()
		if row["unit"] == "m3/kg C" {
			air1 = 1
		}
		carbon := flow.LeastCarbon()
		if row["quantity"] == "CO" {
			carbon = flow.MostCarbon()
		}
		agree(t, "air to "+row["quantity"]+", "+row["unit"], air1/carbon, number(t, row["value"]), atomicMassSlack)
	}
}

func TestBlastMoistureBurnsCarbonToo(t *testing.T) {
	// Model notes, section 3: saturated air of 25 C, brought to the molar volume of 15 C and 1 atm, takes 13.32 kg C/h per
	// 1000 l/min with its water, 4.3 % above dry air (computed outside this program).
	humid := physics.Air{Temperature: physics.FromCelsius(25), Pressure: physics.StandardPressure, RelativeHumidity: 1}
	brought := 1000 * humid.Temperature / physics.StandardAir().Temperature
	flow := blast(t, humid, brought)
	got := physics.ToKgPerHour(flow.MostCarbon() + flow.SteamCarbon())
	agree(t, "moist bound", got, 13.32, 5e-4)
	agree(t, "against dry", got/physics.ToKgPerHour(blast(t, physics.StandardAir(), 1000).MostCarbon()), 1.043, 5e-4)
	if dry := blast(t, physics.StandardAir(), 1000).SteamCarbon(); dry != 0 {
		t.Errorf("dry air gave %g kg/s by its moisture", dry)
	}
}

func TestDefaultCharcoalIsWithinPublishedRanges(t *testing.T) {
	// Overviews of charcoal properties (jfe-project.blogspot.com 2011; stoves.bioenergylists.org/charquality): fixed carbon
	// 78 to 90 %, ash 1.5 to 5 %, volatiles of smelter's charcoal 10 to 15 %, moisture 5 to 8 %, carbon 80 % made at 400 to
	// 450 C and 93 % made at 700 C.
	c := physics.DefaultCharcoal()
	if err := c.Validate(); err != nil {
		t.Fatal(err)
	}
	for what, v := range map[string][3]float64{
		"carbon":    {0.78, c.Carbon, 0.90},
		"ash":       {0.015, c.Ash, 0.05},
		"volatiles": {0.10, c.Volatiles(), 0.15},
		"moisture":  {0.05, c.Moisture, 0.08},
	} {
		if v[1] < v[0] || v[1] > v[2] {
			t.Errorf("%s %g is outside the published %g to %g", what, v[1], v[0], v[2])
		}
	}
	spread := physics.Normal(c.Carbon, physics.CarbonShareSD)
	agree(t, "10th percentile of carbon", spread.P10, 0.78, 0.02)
	agree(t, "90th percentile of carbon", spread.P90, 0.90, 0.02)
}

func TestWaterNeverChangesTheCarbon(t *testing.T) {
	c := physics.Charcoal{Moisture: 0.10, Carbon: 0.85, Ash: 0.03}
	agree(t, "dry in 1.1 kg", c.DryMass(1.1), 1, 1e-15) // worked by hand: 1.1 / (1 + 0.10)
	agree(t, "carbon in 1.1 kg", c.CarbonMass(1.1), 0.85, 1e-15)
	agree(t, "as charged for 1 kg dry", c.ChargedMass(1), 1.1, 1e-15)
	agree(t, "dry for 0.85 kg carbon", c.DryMassForCarbon(0.85), 1, 1e-15)
	nan := math.NaN()
	soaked := physics.Charcoal{Moisture: -1, Carbon: 0.85}
	for _, got := range []float64{
		physics.Charcoal{}.DryMassForCarbon(1), c.DryMass(nan), c.DryMass(-1), c.ChargedMass(math.Inf(1)), c.CarbonMass(nan),
		soaked.DryMass(1), soaked.CarbonMass(1), physics.Charcoal{Carbon: 2}.Volatiles(), physics.Charcoal{Ash: nan}.Volatiles(),
	} {
		if got != 0 {
			t.Errorf("what cannot be: got %g, want none", got)
		}
	}
}

func TestCharcoalRefusesNonsense(t *testing.T) {
	nan := math.NaN()
	for _, c := range []physics.Charcoal{
		{Moisture: -0.01, Carbon: 0.85}, {Moisture: 6, Carbon: 0.85}, {Carbon: 85}, {Carbon: -0.1},
		{Carbon: 0.95, Ash: 0.10}, {Carbon: nan}, {Carbon: 0.85, Ash: nan}, {Carbon: 0.85, Moisture: nan},
	} {
		isRangeError(t, "bad charcoal", c.Validate())
	}
	flow := blast(t, physics.StandardAir(), 700)
	for _, share := range []float64{-0.1, 1.1, nan, 30} {
		_, err := flow.CarbonAt(share)
		isRangeError(t, "CO share", err)
	}
}
