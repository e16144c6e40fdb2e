package physics

import "fmt"

// Mineral is a pure iron mineral by its ideal formula. Real wustite lacks about a twentieth of its iron; here it is FeO, the
// ceiling of an assay and of scale.
type Mineral int

// The minerals an ore's iron can sit in.
const (
	Goethite  Mineral = iota // FeOOH, the iron of bog ore and limonite as dug
	Hematite                 // Fe2O3, what roasting in air makes of the others
	Magnetite                // Fe3O4
	Wustite                  // FeO, mill and hammer scale at its richest
	Siderite                 // FeCO3
)

// mineral is a formula: atoms of iron and oxygen, the oxygen that a furnace takes from the iron (not the part that leaves as
// water or carbon dioxide when the ore is roasted), and the molar mass in kg/mol.
type mineral struct {
	name                     string
	iron, oxygen, oxideBound float64
	molarMass                float64
}

var minerals = [...]mineral{
	Goethite:  {"goethite", 1, 2, 1.5, MolarMassFe + 2*MolarMassO + MolarMassH},
	Hematite:  {"hematite", 2, 3, 3, MolarMassFe2O3},
	Magnetite: {"magnetite", 3, 4, 4, MolarMassFe3O4},
	Wustite:   {"wustite", 1, 1, 1, MolarMassFeO},
	Siderite:  {"siderite", 1, 3, 1, MolarMassFe + MolarMassC + 3*MolarMassO},
}

// formula looks a mineral up; a value that is none is taken for hematite, what roasted ore is.
func (m Mineral) formula() mineral {
	if m < 0 || int(m) >= len(minerals) {
		m = Hematite
	}
	return minerals[m]
}

// String gives the mineral's name.
func (m Mineral) String() string { return m.formula().name }

// MolarMass gives kg/mol of the formula.
func (m Mineral) MolarMass() float64 { return m.formula().molarMass }

// IronShare gives kg of iron per kg of the pure mineral: the ceiling no assay of it can pass.
func (m Mineral) IronShare() float64 {
	f := m.formula()
	return f.iron * MolarMassFe / f.molarMass
}

// OxygenShare gives kg of oxygen per kg of the pure mineral, all of it.
func (m Mineral) OxygenShare() float64 {
	f := m.formula()
	return f.oxygen * MolarMassO / f.molarMass
}

// OxygenPerIron gives the kg of oxygen that have to be taken from the iron for each kg of it, after water and carbon dioxide
// are driven off.
func (m Mineral) OxygenPerIron() float64 {
	f := m.formula()
	return f.oxideBound * MolarMassO / (f.iron * MolarMassFe)
}

// RoastYield gives kg of hematite left when one kg of the pure mineral is roasted through in air. Magnetite and wustite gain.
func (m Mineral) RoastYield() float64 { return SameIron(1, m, Hematite) }

// RoastLoss is the share of its mass that a pure mineral loses when roasted through in air; negative where it gains.
func (m Mineral) RoastLoss() float64 { return 1 - m.RoastYield() }

// SameIron gives the mass of one mineral that holds the iron of a mass of another: goethite as dug to hematite as roasted, an
// assay by one oxide to another. A mass that cannot be gives none.
func SameIron(mass float64, from, to Mineral) float64 {
	return orNone(mass * from.IronShare() / to.IronShare())
}

// IronShareFromOxides gives the iron share of an assay stated as shares of FeO and Fe2O3; shares that cannot be
// give none.
func IronShareFromOxides(feo, fe2o3 float64) float64 {
	return orNone(feo*Wustite.IronShare() + fe2o3*Hematite.IronShare())
}

// AssayError says that a stated iron share is more than the mineral can hold: a typing slip, metallic iron in the sample, or
// the formula weight taken for the assay.
type AssayError struct {
	Mineral         Mineral
	Stated, Ceiling float64
}

func (e *AssayError) Error() string {
	return fmt.Sprintf("physics: %.1f %% iron is above the %.1f %% that pure %v holds", 100*e.Stated, 100*e.Ceiling, e.Mineral)
}

// CheckIronShare returns nil when a stated iron share (kg per kg of dry ore) can be true of an ore whose iron sits in m, an
// *AssayError when it is above the ceiling, and a *RangeError when it is no share at all. A share that reads like per cent is
// none.
func CheckIronShare(iron float64, m Mineral) error {
	if err := InRange("iron share of the ore", iron, 0, 1); err != nil {
		return err
	}
	if ceiling := m.IronShare(); iron > ceiling+roundingSlack {
		return &AssayError{Mineral: m, Stated: iron, Ceiling: ceiling}
	}
	return nil
}

// roundingSlack lets through a pure mineral whose ceiling is typed as the trade rounds it: 63, 70, 72.4, 48, 78 %.
const roundingSlack = 0.003
