package physics_test

import (
	"math"
	"testing"

	"chargehand/physics"
)

// figuresOfAir gives the rows of one table of combustion_air.csv (its sources stand at the head of that file).
func figuresOfAir(t testing.TB, table string) []map[string]string {
	t.Helper()
	var rows []map[string]string
	for _, row := range figures(t, "combustion_air.csv") {
		if row["table"] == table {
			rows = append(rows, row)
		}
	}
	if len(rows) == 0 {
		t.Fatalf("no rows of table %q", table)
	}
	return rows
}

func TestStandardAtmosphere(t *testing.T) {
	for _, row := range figuresOfAir(t, "std_atm") {
		z, want := number(t, row["x1"]), number(t, row["value"])
		if row["quantity"] == "p" {
			agree(t, "pressure at "+row["x1"]+" m", must(t)(physics.PressureAtAltitude(z)), want, 5e-6) // printed to six digits
		}
	}
}

func TestDryAirDensity(t *testing.T) {
	for _, row := range figuresOfAir(t, "air_density") {
		air := physics.StandardAir()
		air.Temperature = physics.FromCelsius(number(t, row["x1"]))
		agree(t, "density at "+row["x1"]+" C", must(t)(air.Density()), number(t, row["value"]), 5e-6)
	}
}

func TestMoistAir(t *testing.T) {
	for _, row := range figuresOfAir(t, "humidity") {
		air := physics.StandardAir()
		air.Temperature = physics.FromCelsius(number(t, row["x1"]))
		if row["x2"] != "" {
			air.RelativeHumidity = number(t, row["x2"]) / 100
		}
		want, what := number(t, row["value"]), row["quantity"]+" at "+row["x1"]+" C, "+row["x2"]+" %"
		switch row["quantity"] {
		case "p_sat":
			// Two independent equations of state: they part by up to 0.07 % at 30 C.
			agree(t, what, must(t)(physics.SaturationPressure(air.Temperature)), want, 1e-3)
		case "ratio":
			agree(t, what, must(t)(air.HumidityRatio()), want, 1.1e-3)
		case "density":
			agree(t, what, must(t)(air.Density()), want, 3e-5)
		case "o2_share":
			flow, err := air.Flow(0.01)
			if err != nil {
				t.Fatal(err)
			}
			agree(t, what, flow.O2/flow.Moles(), want, 4e-5)
		}
	}
}

func TestSaturationBelowFreezing(t *testing.T) {
	// WMO-No. 8 (Guide to Instruments), annex 4.B: e_w = 6.112 hPa exp(17.62 t/(243.12 + t)) over water, -45 to 60 C
	// (coefficients from memory, unverified). It is good to a few tenths of a per cent.
	for _, c := range []float64{-30, -20, -10, 0, 10, 40, 50} {
		want := 611.2 * math.Exp(17.62*c/(243.12+c))
		agree(t, "p_sat", must(t)(physics.SaturationPressure(physics.FromCelsius(c))), want, 7e-3)
	}
}

func TestFlowInMoles(t *testing.T) {
	// Computed outside by hand from the ideal gas law: 700 l/min at 20 C are 0.4850 mol/s and 14.05 g/s of dry air; at 25 C and 1000 m
	// (89875 Pa) 0.4230 mol/s (computed outside this program).
	flow, err := physics.Air{Temperature: physics.FromCelsius(20), Pressure: physics.StandardPressure}.
		Flow(physics.FromLitresPerMinute(700))
	if err != nil {
		t.Fatal(err)
	}
	agree(t, "moles at 20 C", flow.Moles(), 0.4850, 1e-4)
	agree(t, "mass at 20 C", flow.Mass(), 14.05e-3, 3e-4)
	high, err := physics.Air{Temperature: physics.FromCelsius(25), Pressure: 89875}.Flow(physics.FromLitresPerMinute(700))
	if err != nil {
		t.Fatal(err)
	}
	agree(t, "moles at 1000 m", high.Moles(), 0.4230, 2e-4)
}

func TestAirRefusesNonsense(t *testing.T) {
	good := physics.StandardAir()
	if err := good.Validate(); err != nil {
		t.Errorf("standard air: %v", err)
	}
	nan := math.NaN()
	for _, air := range []physics.Air{
		{},
		{Temperature: 15, Pressure: physics.StandardPressure}, // Celsius given for kelvin
		{Temperature: 288, Pressure: 1013},                    // hectopascals
		{Temperature: nan, Pressure: physics.StandardPressure},
		{Temperature: 288, Pressure: nan},
		{Temperature: 288, Pressure: physics.StandardPressure, RelativeHumidity: 60},
		{Temperature: 288, Pressure: physics.StandardPressure, RelativeHumidity: -0.1},
		{Temperature: 288, Pressure: physics.StandardPressure, RelativeHumidity: nan},
	} {
		_, ofFlow := air.Flow(0.01)
		_, ofDensity := air.Density()
		_, ofRatio := air.HumidityRatio()
		_, ofConcentration := air.Concentration()
		for _, err := range []error{air.Validate(), ofFlow, ofDensity, ofRatio, ofConcentration} {
			isRangeError(t, "bad weather", err)
		}
	}
	for _, flow := range []float64{-1e-9, nan, math.Inf(1), 700} {
		got, err := good.Flow(flow)
		isRangeError(t, "bad flow", err)
		if got != (physics.AirFlow{}) {
			t.Errorf("a refused flow still gave %v", got)
		}
	}
	if flow, err := good.Flow(0); err != nil || flow.Moles() != 0 {
		t.Errorf("no air: got %v, %v", flow, err)
	}
	for _, z := range []float64{nan, -5000, 9000} {
		_, err := physics.PressureAtAltitude(z)
		isRangeError(t, "altitude", err)
	}
}

func BenchmarkAirFlow(b *testing.B) {
	air := physics.StandardAir()
	air.RelativeHumidity = 0.6
	for b.Loop() {
		if _, err := air.Flow(0.01); err != nil {
			b.Fatal(err)
		}
	}
}
