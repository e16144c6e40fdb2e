package shaft

import "chargehand/physics"

// The solids of a layer, in mol. Iron oxides are carried as whole formulas so that every element is a plain sum.
const (
	solidC         = iota // fixed carbon of charcoal, and carbon dissolved in iron
	solidVolatiles        // one unit gives CO + 0.75 H2O + 5.2 H2
	solidWater
	solidFeOOH
	solidFe2O3
	solidFe3O4
	solidFeO
	solidFe
	solidCaCO3
	solidCaO
	solidSiO2
	solidAl2O3
	solidMgO
	solidMnO
	solidK2O
	solidP2O5
	solidCount
)

// The gases, in mol/s. Argon and the carbon dioxide of air count as nitrogen.
const (
	gasO2 = iota
	gasN2
	gasCO
	gasCO2
	gasH2
	gasH2O
	gasCount
)

// Element indexes the balances of the shaft.
type Element int

// The elements kept account of.
const (
	ElementC Element = iota
	ElementO
	ElementN
	ElementH
	ElementFe
	ElementSi
	ElementCa
	ElementCount
)

// What a unit of volatiles turns into. Assumed: from 3 % hydrogen and 7 % oxygen in charcoal (from memory).
const (
	volatileCO  = 1.0
	volatileH2O = 0.75
	volatileH2  = 5.2
)

const (
	molarMassCaCO3 = physics.MolarMassCaO + physics.MolarMassCO2
	molarMassFeOOH = physics.MolarMassFe + 2*physics.MolarMassO + physics.MolarMassH
	molarMassVM    = volatileCO*physics.MolarMassCO + volatileH2O*physics.MolarMassH2O + volatileH2*2*physics.MolarMassH
)

var solidMolarMass = [solidCount]float64{
	solidC: physics.MolarMassC, solidVolatiles: molarMassVM, solidWater: physics.MolarMassH2O, solidFeOOH: molarMassFeOOH,
	solidFe2O3: physics.MolarMassFe2O3, solidFe3O4: physics.MolarMassFe3O4, solidFeO: physics.MolarMassFeO, solidFe: physics.MolarMassFe,
	solidCaCO3: molarMassCaCO3, solidCaO: physics.MolarMassCaO, solidSiO2: physics.MolarMassSiO2, solidAl2O3: physics.MolarMassAl2O3,
	solidMgO: physics.MolarMassMgO, solidMnO: physics.MolarMassMnO, solidK2O: physics.MolarMassK2O, solidP2O5: physics.MolarMassP2O5,
}

var gasMolarMass = [gasCount]float64{
	gasO2: 2 * physics.MolarMassO, gasN2: 2 * physics.MolarMassN, gasCO: physics.MolarMassCO, gasCO2: physics.MolarMassCO2,
	gasH2: 2 * physics.MolarMassH, gasH2O: physics.MolarMassH2O,
}

// solidAtoms and gasAtoms count the atoms of each element in a unit.
var solidAtoms = [solidCount][ElementCount]float64{
	solidC:         {ElementC: 1},
	solidVolatiles: {ElementC: volatileCO, ElementO: volatileCO + volatileH2O, ElementH: 2 * (volatileH2O + volatileH2)},
	solidWater:     {ElementO: 1, ElementH: 2},
	solidFeOOH:     {ElementFe: 1, ElementO: 2, ElementH: 1},
	solidFe2O3:     {ElementFe: 2, ElementO: 3},
	solidFe3O4:     {ElementFe: 3, ElementO: 4},
	solidFeO:       {ElementFe: 1, ElementO: 1},
	solidFe:        {ElementFe: 1},
	solidCaCO3:     {ElementCa: 1, ElementC: 1, ElementO: 3},
	solidCaO:       {ElementCa: 1, ElementO: 1},
	solidSiO2:      {ElementSi: 1, ElementO: 2},
	solidAl2O3:     {ElementO: 3},
	solidMgO:       {ElementO: 1},
	solidMnO:       {ElementO: 1},
	solidK2O:       {ElementO: 1},
	solidP2O5:      {ElementO: 5},
}

var gasAtoms = [gasCount][ElementCount]float64{
	gasO2: {ElementO: 2}, gasN2: {ElementN: 2}, gasCO: {ElementC: 1, ElementO: 1}, gasCO2: {ElementC: 1, ElementO: 2},
	gasH2: {ElementH: 2}, gasH2O: {ElementH: 2, ElementO: 1},
}

// isSlag marks what runs together once hot: the oxides, wustite among them.
var isSlag = [solidCount]bool{
	solidFe3O4: true, solidFeO: true, solidCaO: true, solidSiO2: true, solidAl2O3: true, solidMgO: true, solidMnO: true,
	solidK2O: true, solidP2O5: true,
}

// ironAtoms gives the iron in a set of solids, mol.
func ironAtoms(n *[solidCount]float64) float64 {
	return n[solidFeOOH] + 2*n[solidFe2O3] + 3*n[solidFe3O4] + n[solidFeO] + n[solidFe]
}

// slagMass gives the slag-making oxides in a set of solids, kg.
func slagMass(n *[solidCount]float64) (kg float64) {
	for i := solidFe3O4; i < solidCount; i++ {
		if isSlag[i] {
			kg += n[i] * solidMolarMass[i]
		}
	}
	return kg
}
