package physics_test

import (
	"encoding/csv"
	"errors"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"testing"

	"chargehand/physics"
)

// agree fails the test unless got lies within a relative tolerance of want (absolute where want is zero).
func agree(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	scale := math.Abs(want)
	if want == 0 {
		scale = 1
	}
	if !(math.Abs(got-want) <= tolerance*scale) {
		t.Errorf("%s: got %.8g, want %.8g within %g", what, got, want, tolerance)
	}
}

// must unwraps a value whose error would be a mistake in the test.
func must(t testing.TB) func(float64, error) float64 {
	return func(v float64, err error) float64 {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
}

// isRangeError fails the test unless err holds a RangeError.
func isRangeError(t *testing.T, what string, err error) {
	t.Helper()
	var out *physics.RangeError
	if !errors.As(err, &out) {
		t.Errorf("%s: got error %v, want a RangeError", what, err)
	}
}

// figures reads a table of published figures: a header of names after the lines of its source.
func figures(t testing.TB, name string) []map[string]string {
	t.Helper()
	file, err := os.Open(filepath.Join("..", "testdata", "physics", name))
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	reader := csv.NewReader(file)
	reader.Comment = '#'
	lines, err := reader.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var rows []map[string]string
	for _, line := range lines[1:] {
		row := map[string]string{}
		for i, cell := range line {
			row[lines[0][i]] = cell
		}
		rows = append(rows, row)
	}
	return rows
}

// number reads a cell that must hold one.
func number(t testing.TB, cell string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(cell, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

func TestConversions(t *testing.T) {
	agree(t, "60 000 l/min", physics.FromLitresPerMinute(60000), 1, 1e-15)
	agree(t, "9 kg/h", physics.FromKgPerHour(9), 0.0025, 1e-15)
	agree(t, "15 C", physics.FromCelsius(15), 288.15, 1e-15)

	for name, there := range map[string][2]func(float64) float64{
		"l/min": {physics.FromLitresPerMinute, physics.ToLitresPerMinute},
		"C":     {physics.FromCelsius, physics.ToCelsius},
		"kg/h":  {physics.FromKgPerHour, physics.ToKgPerHour},
	} {
		for _, v := range []float64{-40, 0, 1, 700, 1e4} {
			agree(t, name+" there and back", there[1](there[0](v)), v, 1e-12)
		}
	}
}

func TestMolarMasses(t *testing.T) {
	// Molecular weights of the NIST Chemistry WebBook (SRD 69), from memory, unverified.
	agree(t, "CO2", physics.MolarMassCO2, 44.0095e-3, 2e-5)
	agree(t, "H2O", physics.MolarMassH2O, 18.0153e-3, 2e-5)
	agree(t, "Fe2O3", physics.MolarMassFe2O3, 159.688e-3, 2e-5)
	agree(t, "Fe3O4", physics.MolarMassFe3O4, 231.533e-3, 2e-5)
}
