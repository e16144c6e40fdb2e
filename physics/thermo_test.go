package physics

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"
)

// referenceRows reads a data file of testdata/physics: rows as maps by column name, '#' lines skipped.
func referenceRows(t testing.TB, name string) []map[string]string {
	t.Helper()
	file, err := os.Open("../testdata/physics/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	reader := csv.NewReader(file)
	reader.Comment = '#'
	records, err := reader.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var rows []map[string]string
	for _, record := range records[1:] {
		row := map[string]string{}
		for i, column := range records[0] {
			row[column] = record[i]
		}
		rows = append(rows, row)
	}
	if len(rows) == 0 {
		t.Fatalf("%s holds no rows", name)
	}
	return rows
}

// referenceNumber reads a cell; blank is NaN.
func referenceNumber(t testing.TB, cell string) float64 {
	t.Helper()
	if cell == "" {
		return math.NaN()
	}
	v, err := strconv.ParseFloat(cell, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// The rows kept as Go data are the published ones: thermo_coefficients.csv (sources in its header).
func TestThermoCoefficientsArePublished(t *testing.T) {
	forms := map[string]thermoForm{"nasa9": nasa9, "shomate": shomate, "hp4": fourTerm}
	checked := map[Species]int{}
	for _, row := range referenceRows(t, "thermo_coefficients.csv") {
		for s := range speciesCount {
			for _, fit := range thermoFits[s].fits {
				if thermoFits[s].formula != row["species"] || forms[row["model"]] != fit.form || row["model"] == "nasa7" ||
					fit.low != referenceNumber(t, row["Tmin_K"]) || fit.high != referenceNumber(t, row["Tmax_K"]) {
					continue
				}
				checked[s]++
				for i, a := range fit.a {
					cell := row["a"+strconv.Itoa(i+1)]
					if fit.form == fourTerm && i == 5 {
						cell = row["hf298_J_per_mol"]
					}
					if cell != "" && a != referenceNumber(t, cell) {
						t.Errorf("%v from %g K: coefficient %d is %g, published %s", s, fit.low, i+1, a, cell)
					}
				}
			}
		}
	}
	for s := range speciesCount {
		if s != SpeciesMnO && checked[s] != len(thermoFits[s].fits) { // MnO is from memory and says so
			t.Errorf("%v: %d of %d rows found in the published set", s, checked[s], len(thermoFits[s].fits))
		}
	}
}

// NIST-JANAF tables, 4th edition (Chase 1998), and the NASA-9 and Shomate coefficients evaluated by another program:
// thermo_golden.csv. Tolerances against JANAF are the differences between the two published sets themselves, found outside
// this program (worst over 298-1700 K); against the other program, rounding.
func TestThermoAgainstJANAF(t *testing.T) {
	cases := []struct {
		golden    string
		species   Species
		phase     string  // only where this form is stable; "" for all
		cp, h, s  float64 // J/(mol K), kJ/mol, J/(mol K)
		evaluated string  // columns of the other program
	}{
		{"C", SpeciesC, "", 0.02, 0.005, 0.01, "NASA"},
		{"O2", SpeciesO2, "", 0.05, 0.02, 0.025, "NASA"},
		{"N2", SpeciesN2, "", 0.01, 0.005, 0.01, "NASA"},
		{"CO", SpeciesCO, "", 0.02, 0.01, 0.01, "NASA"},
		{"CO2", SpeciesCO2, "", 0.03, 0.02, 0.02, "NASA"},
		{"H2", SpeciesH2, "", 0.03, 0.01, 0.01, "NASA"},
		{"H2O(g)", SpeciesSteam, "", 0.4, 0.13, 0.08, "NASA"},
		{"H2O(l)", SpeciesWater, "", 0.3, 0.005, 0.02, "NASA"},
		{"Fe(ref)", SpeciesFe, "", 0.6, 0.65, 0.6, "NASA"},
		{"FeO(s)", SpeciesFeO, "solid", 0.08, 0.01, 0.01, "Shomate"},
		{"FeO(l)", SpeciesFeO, "liquid", 0.01, math.NaN(), 0.01, "Shomate"},
		{"Fe0.947O", SpeciesWustite, "wustite", 0.9, 0.25, 0.25, "NASA"},
		{"Fe3O4", SpeciesFe3O4, "magnetite", 54, 2, 4, "NASA"},
		{"Fe2O3", SpeciesFe2O3, "hematite", 8.5, 0.8, 0.6, "NASA"},
		{"CaO", SpeciesCaO, "", 3.5, 3, 2.5, "NASA"},
		{"Al2O3(alpha)", SpeciesAl2O3, "", 2, 2, 2, "NASA"},
		{"SiO2(quartz)", SpeciesSiO2, "alpha quartz", 2.5, 0.12, 0.2, "NASA"},
	}
	rows := referenceRows(t, "thermo_golden.csv")
	for _, c := range cases {
		checked := 0
		for _, row := range rows {
			kelvin := referenceNumber(t, row["T_K"])
			if row["species"] != c.golden || kelvin > 1700 && c.phase != "liquid" || c.phase != "" && c.species.fit(kelvin).phase != c.phase {
				continue
			}
			checked++
			cp, s := c.species.HeatCapacity(kelvin), c.species.Entropy(kelvin)
			h := (c.species.Enthalpy(kelvin) - c.species.Enthalpy(ReferenceTemperature)) / 1e3
			for _, q := range []struct {
				name                 string
				got, want, tolerance float64
			}{
				{"cp", cp, referenceNumber(t, row["JANAF_cp_J_molK"]), c.cp},
				{"h", h, referenceNumber(t, row["JANAF_h_minus_h298_kJ_mol"]), c.h},
				{"s", s, referenceNumber(t, row["JANAF_s_J_molK"]), c.s},
			} {
				if math.Abs(q.got-q.want) > q.tolerance { // a NaN tolerance leaves out what has no common zero
					t.Errorf("%s %s at %g K: %.4f, JANAF %.4f", c.golden, q.name, kelvin, q.got, q.want)
				}
			}
			otherCp, otherS := row[c.evaluated+"_cp"], row[c.evaluated+"_s"]
			for _, q := range []struct{ got, want float64 }{{cp, referenceNumber(t, otherCp)}, {s, referenceNumber(t, otherS)}} {
				if math.Abs(q.got-q.want) > 1e-4*math.Abs(q.want)+1e-4 {
					t.Errorf("%s at %g K: %.5f, another program with the same coefficients %.5f", c.golden, kelvin, q.got, q.want)
				}
			}
		}
		if checked < 3 {
			t.Errorf("%s: only %d rows checked", c.golden, checked)
		}
	}
}

// The heat capacity is the slope of the enthalpy and T times that of the entropy, in every row of every form: the three
// published formulas belong together.
func TestThermoFormsAreConsistent(t *testing.T) {
	for s := range speciesCount {
		for _, fit := range thermoFits[s].fits {
			for _, share := range []float64{0.25, 0.5, 0.75} {
				kelvin := fit.low + share*(math.Min(fit.high, 3000)-fit.low)
				const d = 0.05
				cp := fit.heatCapacity(kelvin)
				slope := (fit.enthalpy(kelvin+d) - fit.enthalpy(kelvin-d)) / (2 * d)
				entropy := kelvin * (fit.entropy(kelvin+d) - fit.entropy(kelvin-d)) / (2 * d)
				if math.Abs(slope-cp) > 1e-3*cp+1e-3 || math.Abs(entropy-cp) > 1e-3*cp+1e-3 {
					t.Errorf("%v at %g K: cp %g, dH/dT %g, T dS/dT %g", s, kelvin, cp, slope, entropy)
				}
			}
		}
	}
}

// Heats of formation, J/mol: CODATA (Cox, Wagman & Medvedev 1989) for CO -110.53 +- 0.17, CO2 -393.51 +- 0.13, water vapour
// -241.826 +- 0.040, liquid water -285.830 +- 0.040, SiO2 -910.7 +- 1.0, CaO -634.92 +- 0.90, Al2O3 -1675.7 +- 1.3 kJ/mol.
func TestThermoHeatsOfFormation(t *testing.T) {
	for s, want := range map[Species]struct{ value, spread float64 }{
		SpeciesCO: {-110530, 170}, SpeciesCO2: {-393510, 130}, SpeciesSteam: {-241826, 40}, SpeciesWater: {-285830, 40},
		SpeciesSiO2: {-910700, 1000}, SpeciesCaO: {-634920, 900}, SpeciesAl2O3: {-1675700, 1300},
		SpeciesC: {0, 5}, SpeciesO2: {0, 5}, SpeciesN2: {0, 5}, SpeciesH2: {0, 5}, SpeciesFe: {0, 5},
	} {
		if got := s.Enthalpy(ReferenceTemperature); math.Abs(got-want.value) > want.spread {
			t.Errorf("%v: %.0f J/mol, want %.0f +- %.0f", s, got, want.value, want.spread)
		}
	}
}

// Melting points and changes of form where the data themselves change: iron 1184, 1665 and 1809 K (Chase 1998), the water
// and quartz points of the tables. The free energies of the two forms must meet there.
func TestThermoFormsMeetInFreeEnergy(t *testing.T) {
	for _, c := range []struct {
		species Species
		kelvin  float64
	}{
		{SpeciesFe, 1184}, {SpeciesFe, 1665}, {SpeciesFe, 1809}, {SpeciesWustite, 1652}, {SpeciesFeO, 1650}, {SpeciesFe3O4, 1870},
	} {
		below, above := c.species.Gibbs(c.kelvin-1e-6), c.species.Gibbs(c.kelvin+1e-6)
		if math.Abs(below-above) > 60 {
			t.Errorf("%v at %g K: free energy steps by %.1f J/mol", c.species, c.kelvin, above-below)
		}
	}
}
