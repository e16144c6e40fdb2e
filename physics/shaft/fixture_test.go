package shaft

import (
	"encoding/csv"
	"os"
	"testing"

	"chargehand/physics"
)

func must(tb testing.TB, err error) {
	tb.Helper()
	if err != nil {
		tb.Fatal(err)
	}
}

// standardFuel is graded charcoal: 87 % carbon, 3 % ash, 10 % volatiles, 6 % water (assumed). standardOre is a roasted ore of 51 % iron.
func standardFuel(tb testing.TB) Lot {
	tb.Helper()
	lot, err := CharcoalLot(physics.Charcoal{Moisture: 0.06, Carbon: 0.87, Ash: 0.03}, physics.DefaultBed(), DefaultLump)
	must(tb, err)
	return lot
}

func standardOre(tb testing.TB) Lot {
	tb.Helper()
	lot, err := OreLot(OreAssay{Mineral: physics.Hematite, Iron: 0.51}, physics.DefaultBed())
	must(tb, err)
	return lot
}

// litresAMinute is a blast metered at 20 C and one atmosphere, as damp as the air of an ordinary day.
func litresAMinute(tb testing.TB, lMin float64) Blast {
	tb.Helper()
	air := physics.Air{Temperature: physics.FromCelsius(20), Pressure: physics.StandardPressure, RelativeHumidity: physics.UsualHumidity}
	flow, err := air.Flow(physics.FromLitresPerMinute(lMin))
	must(tb, err)
	return Blast{Flow: flow, Temperature: air.Temperature}
}

// publishedRows reads a table of published figures as rows by column.
func publishedRows(tb testing.TB, name string) []map[string]string {
	tb.Helper()
	file, err := os.Open("../../testdata/physics/" + name)
	must(tb, err)
	defer func() { _ = file.Close() }() // only read
	reader := csv.NewReader(file)
	reader.Comment = '#'
	records, err := reader.ReadAll()
	must(tb, err)
	var rows []map[string]string
	for _, record := range records[1:] {
		row := map[string]string{}
		for i, column := range records[0] {
			row[column] = record[i]
		}
		rows = append(rows, row)
	}
	return rows
}
