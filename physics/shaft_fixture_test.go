package physics

import "testing"

func must(tb testing.TB, err error) {
	tb.Helper()
	if err != nil {
		tb.Fatal(err)
	}
}

// standardFuel is graded charcoal: 87 % carbon, 3 % ash, 10 % volatiles, 6 % water (calibration study of the reference
// notes). standardOre is a roasted ore of 51 % iron.
func standardFuel(tb testing.TB) BurdenLot {
	tb.Helper()
	lot, err := CharcoalLot(Charcoal{Moisture: 0.06, Carbon: 0.87, Ash: 0.03}, DefaultBed(), DefaultLump)
	must(tb, err)
	return lot
}

func standardOre(tb testing.TB) BurdenLot {
	tb.Helper()
	lot, err := OreLot(OreAssay{Mineral: Hematite, Iron: 0.51}, DefaultBed())
	must(tb, err)
	return lot
}

// litresAMinute is a dry blast metered at 20 C and one atmosphere: the air of the reference notes' prototypes.
func litresAMinute(tb testing.TB, lMin float64) Blast {
	tb.Helper()
	air := Air{Temperature: FromCelsius(20), Pressure: StandardPressure}
	flow, err := air.Flow(FromLitresPerMinute(lMin))
	must(tb, err)
	return Blast{Flow: flow, Temperature: air.Temperature}
}
