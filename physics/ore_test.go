package physics_test

import (
	"errors"
	"math"
	"testing"

	"chargehand/physics"
)

func TestIronCeilings(t *testing.T) {
	// Ceilings in % Fe from atomic masses, computed outside this program; the first three are printed as 63, 70 and 72 in
	// "Truth in reporting: sample iron content" (warehamforgeblog.blogspot.com, January 2021).
	for mineral, want := range map[physics.Mineral]float64{
		physics.Goethite: 62.9, physics.Hematite: 69.9, physics.Magnetite: 72.4, physics.Siderite: 48.2, physics.Wustite: 77.7,
	} {
		if got := 100 * mineral.IronShare(); math.Abs(got-want) > 0.051 {
			t.Errorf("%v: got %.2f %% Fe, want %.1f", mineral, got, want)
		}
	}
	// The "89 % iron" that page reports was the formula weight of FeO(OH).
	agree(t, "formula weight of goethite", physics.Goethite.MolarMass(), 88.85e-3, 1e-4)
}

func TestRoasting(t *testing.T) {
	// Goethite loses 10.1 % (from atomic masses, computed outside this program): 18.015 g of water per 2 x 88.85 g.
	agree(t, "loss of goethite", physics.Goethite.RoastLoss(), 0.101, 5e-3)
	agree(t, "by its water", physics.Goethite.RoastLoss(), physics.MolarMassH2O/(2*physics.Goethite.MolarMass()), 1e-12)
	// 4 Fe3O4 + O2 = 6 Fe2O3 gains one mole of oxygen; 4 FeCO3 + O2 = 2 Fe2O3 + 4 CO2 loses four of CO2 for it.
	o2 := 2 * physics.MolarMassO
	agree(t, "gain of magnetite", -physics.Magnetite.RoastLoss(), o2/(4*physics.MolarMassFe3O4), 1e-12)
	agree(t, "loss of siderite", physics.Siderite.RoastLoss(),
		(4*physics.MolarMassCO2-o2)/(4*physics.Siderite.MolarMass()), 1e-12)
	agree(t, "hematite", physics.Hematite.RoastYield(), 1, 1e-15)
	agree(t, "there and back", physics.SameIron(physics.SameIron(3, physics.Goethite, physics.Hematite),
		physics.Hematite, physics.Goethite), 3, 1e-15)
}

func TestOxygenToTake(t *testing.T) {
	// Worked by hand from 15.999 and 55.845 g/mol: 3/2, 4/3 and 1 atom of oxygen per atom of iron.
	perAtom := 15.999 / 55.845
	agree(t, "hematite", physics.Hematite.OxygenPerIron(), 1.5*perAtom, 1e-12)
	agree(t, "goethite once dry", physics.Goethite.OxygenPerIron(), 1.5*perAtom, 1e-12)
	agree(t, "magnetite", physics.Magnetite.OxygenPerIron(), 4.0/3*perAtom, 1e-12)
	agree(t, "wustite", physics.Wustite.OxygenPerIron(), perAtom, 1e-12)
	agree(t, "siderite once calcined", physics.Siderite.OxygenPerIron(), perAtom, 1e-12)
	for _, m := range []physics.Mineral{physics.Hematite, physics.Magnetite, physics.Wustite} {
		agree(t, m.String()+" is iron and oxygen", m.IronShare()+m.OxygenShare(), 1, 1e-12)
	}
	if m := physics.Goethite; m.IronShare()+m.OxygenShare() >= 1 {
		t.Errorf("goethite leaves no room for its hydrogen")
	}
}

func TestIronFromOxides(t *testing.T) {
	// Printed total iron beside printed oxides, %: slags 1 to 8, 10 and 11 of table 2 in Freiberger Forschungshefte D 6
	// (sachsen.digital/werkansicht/30824/40, OCR; 12 and 14 miss by more than 0.7 and are left out as OCR slips), and the
	// bog ores of L'Anse aux Meadows and St Lunaire (warehamforge.ca/ironsmelting/smeltvariables.html).
	for _, row := range []struct{ feo, fe2o3, iron float64 }{
		{48.26, 24.29, 54.55}, {55.39, 12.62, 51.82}, {55.72, 10.33, 50.52}, {56.73, 6.03, 48.38}, {47.74, 3.36, 39.54},
		{52.94, 3.99, 43.80}, {59.75, 16.28, 57.90}, {41.12, 11.42, 40.00}, {51.70, 0, 40.17}, {39.38, 0.44, 30.90},
		{0, 89.5, 62.7}, {0, 93.8, 65.7},
	} {
		if got := 100 * physics.IronShareFromOxides(row.feo/100, row.fe2o3/100); math.Abs(got-row.iron) > 0.16 {
			t.Errorf("FeO %g, Fe2O3 %g: got %.2f %% Fe, printed %g", row.feo, row.fe2o3, got, row.iron)
		}
	}
}

func TestAssayAboveTheCeiling(t *testing.T) {
	// Assays in print that can be true (smelt overviews and warehamforge.ca/ironsmelting/smeltvariables.html).
	for _, ok := range []struct {
		iron    float64
		mineral physics.Mineral
	}{
		{0.51, physics.Hematite}, {0.61, physics.Hematite}, {0.657, physics.Hematite}, {0.6642, physics.Magnetite},
		{0.4267, physics.Siderite}, {0.629, physics.Goethite}, {0.699, physics.Hematite}, {0.7, physics.Hematite}, {0.63, physics.Goethite}, {0.72, physics.Magnetite},
		{0.78, physics.Wustite}, {0, physics.Goethite},
	} {
		if err := physics.CheckIronShare(ok.iron, ok.mineral); err != nil {
			t.Errorf("%g of %v: %v", ok.iron, ok.mineral, err)
		}
	}
	// The "89 % iron" of the January 2021 page, and siderite roasted (52 %) but called raw.
	for _, bad := range []struct {
		iron    float64
		mineral physics.Mineral
	}{{0.89, physics.Goethite}, {0.89, physics.Wustite}, {0.52, physics.Siderite}, {0.633, physics.Goethite}} {
		var above *physics.AssayError
		if err := physics.CheckIronShare(bad.iron, bad.mineral); !errors.As(err, &above) {
			t.Errorf("%g of %v: got %v, want an AssayError", bad.iron, bad.mineral, err)
		} else if above.Ceiling != bad.mineral.IronShare() || above.Stated != bad.iron {
			t.Errorf("the error tells %v", above)
		}
	}
	for _, none := range []float64{-0.1, 51, math.NaN(), math.Inf(1)} {
		isRangeError(t, "iron share", physics.CheckIronShare(none, physics.Hematite))
	}
	for _, got := range []float64{
		physics.SameIron(math.NaN(), physics.Goethite, physics.Hematite), physics.SameIron(-1, physics.Goethite, physics.Hematite),
		physics.IronShareFromOxides(math.NaN(), 0.5), physics.IronShareFromOxides(-1, 0),
	} {
		if got != 0 {
			t.Errorf("what cannot be: got %g, want none", got)
		}
	}
	if got := physics.Mineral(99).IronShare(); got != physics.Hematite.IronShare() {
		t.Errorf("an unknown mineral: got %g, want that of hematite", got)
	}
}
