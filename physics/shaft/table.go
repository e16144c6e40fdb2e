package shaft

import (
	"math"
	"sync"

	"chargehand/physics"
)

// The step reads every property that depends on temperature from one table, straight between rows 10 K apart. Enthalpies so
// read are a property of their own, met by every inversion exactly, so that energy closes to rounding; against the fits they
// are a few J/mol off, more only where a change of form is smeared over a row. Arrhenius terms are within 1 %.
const (
	tableLow   = 200.0 // K
	tableStep  = 10.0  // K
	tableCount = 331   // up to 3500 K
	tableHigh  = tableLow + tableStep*(tableCount-1)
)

// kinetics is one row of rates and transport properties.
type kinetics struct {
	gasification float64 // carbon with CO2 inside a lump, 1/s per bar of CO2
	combustion   float64 // carbon surface with oxygen, m/s
	ore          float64 // reference rate of reduction, 1/s per unit of drive
	boudouard    float64 // 1/K in 1/bar, capped where nothing reacts anyway
	steam        float64 // 1/K of C + H2O, 1/bar, capped
	waterGas     float64
	calcination  float64 // Pa of CO2 over calcite
	boundaryCO   [oreSteps]float64
	boundaryH2   [oreSteps]float64
	slagging     float64 // 0 to 1: how far slag has formed
	running      float64 // 0 to 1: how freely it runs
}

// transport is one row of gas properties at a film temperature and one atmosphere.
type transport struct {
	conductivity   float64 // W/m/K
	viscosityPower float64 // viscosity in Pa s to the power -0.6
	diffusivity    float64 // of CO2 in nitrogen, m2/s
}

type propertyTable struct {
	solid     [tableCount][solidCount]float64 // J/mol
	gas       [tableCount][gasCount]float64   // J/mol
	kinetics  [tableCount]kinetics
	transport [tableCount]transport
}

// properties is built once, at the first furnace, and never changes.
var properties = sync.OnceValue(buildTable)

// tableRow gives the row below a temperature and the share of the way to the next.
func tableRow(kelvin float64) (row int, share float64) {
	x := (kelvin - tableLow) / tableStep
	row = int(x)
	if !(x > 0) {
		return 0, 0
	}
	if row >= tableCount-1 {
		return tableCount - 2, 1
	}
	return row, x - float64(row)
}

func buildTable() *propertyTable {
	t := new(propertyTable)
	solids := [solidCount]func(float64) float64{
		solidC: physics.SpeciesC.Enthalpy, solidVolatiles: volatileEnthalpy, solidWater: physics.SpeciesWater.Enthalpy,
		solidFeOOH: physics.SpeciesFeOOH.Enthalpy, solidFe2O3: physics.SpeciesFe2O3.Enthalpy, solidFe3O4: physics.SpeciesFe3O4.Enthalpy,
		solidFeO: wustiteEnthalpy, solidFe: physics.SpeciesFe.Enthalpy, solidCaCO3: physics.SpeciesCaCO3.Enthalpy,
		solidCaO: physics.SpeciesCaO.Enthalpy, solidSiO2: physics.SpeciesSiO2.Enthalpy, solidAl2O3: physics.SpeciesAl2O3.Enthalpy,
		solidMgO: physics.SpeciesMgO.Enthalpy, solidMnO: physics.SpeciesMnO.Enthalpy,
		// Minor slag makers that take part in nothing here: about 1 kJ/kg/K and no heat of formation (a round figure).
		solidK2O:  func(k float64) float64 { return 1000 * physics.MolarMassK2O * (k - physics.ReferenceTemperature) },
		solidP2O5: func(k float64) float64 { return 1000 * physics.MolarMassP2O5 * (k - physics.ReferenceTemperature) },
	}
	gases := [gasCount]physics.Species{gasO2: physics.SpeciesO2, gasN2: physics.SpeciesN2, gasCO: physics.SpeciesCO, gasCO2: physics.SpeciesCO2, gasH2: physics.SpeciesH2, gasH2O: physics.SpeciesSteam}
	for i := range t.kinetics {
		kelvin := tableLow + tableStep*float64(i)
		for j, h := range solids {
			t.solid[i][j] = h(kelvin)
		}
		for j, s := range gases {
			t.gas[i][j] = s.Enthalpy(kelvin)
		}
		t.kinetics[i] = kineticsOf(kelvin)
		t.transport[i] = transport{
			conductivity:   0.026 * math.Pow(kelvin/300, 0.78),
			viscosityPower: math.Pow(gasViscosity(kelvin), -0.6),
			diffusivity:    gasDiffusivity(kelvin),
		}
	}
	return t
}

// gasViscosity of furnace gas in Pa s: power law through air and nitrogen, good to 5-10 % (assumed).
func gasViscosity(kelvin float64) float64 { return 1.8e-5 * math.Pow(kelvin/300, 0.68) }

// gasDiffusivity of CO2 in nitrogen at one atmosphere in m2/s: power law through 1.67e-5 at 300 K and 2.23e-4 at 1300 K
// (Marrero & Mason 1972, from memory, unverified).
func gasDiffusivity(kelvin float64) float64 { return 1.67e-5 * math.Pow(kelvin/300, 1.767) }

// wustiteEnthalpy carries FeO as 1 Fe0.947O and 0.053 Fe: whole atoms for the balances, and the heats of reduction of real
// wustite from the one data set (NASA, Pankratz) that also gives hematite and magnetite. The stoichiometric FeO of the JANAF
// tables would mix two sets 6 kJ/mol apart. Solid throughout: the heat of melting is that of the slag it ends up in.
func wustiteEnthalpy(kelvin float64) float64 {
	const melting = 1651.9
	oxide := physics.SpeciesWustite.Enthalpy(min(kelvin, melting))
	if kelvin > melting {
		oxide += physics.SpeciesWustite.HeatCapacity(melting) * (kelvin - melting)
	}
	return oxide + 0.053*physics.SpeciesFe.Enthalpy(kelvin)
}

// volatileEnthalpy: driving the volatiles out takes 1 MJ/kg at 800 K (assumed; 0 to 4 cannot be ruled out), and
// they hold heat like the charcoal they sit in.
func volatileEnthalpy(kelvin float64) float64 {
	const release, at = 1e6 * molarMassVM, 800.0
	gas := volatileCO*physics.SpeciesCO.Enthalpy(at) + volatileH2O*physics.SpeciesSteam.Enthalpy(at) + volatileH2*physics.SpeciesH2.Enthalpy(at)
	return gas - release + molarMassVM/physics.MolarMassC*(physics.SpeciesC.Enthalpy(kelvin)-physics.SpeciesC.Enthalpy(at))
}

// solidEnthalpy gives the enthalpy of solids in J at a row, and its growth to the next row.
func (t *propertyTable) solidEnthalpy(n *[solidCount]float64, row int) (h, rise float64) {
	low, high := &t.solid[row], &t.solid[row+1]
	var h2, top, top2 float64 // two sums each, so that additions need not wait for one another; solids are even in number
	for i := 0; i < solidCount; i += 2 {
		a, b := n[i], n[i+1]
		h += a * low[i]
		h2 += b * low[i+1]
		top += a * high[i]
		top2 += b * high[i+1]
	}
	h += h2
	return h, top + top2 - h
}

// enthalpyChord is the enthalpy of a layer's solids across one row of the table: J at its lower end, J more at its upper.
type enthalpyChord struct {
	base, rise float64
	row        int
}

// at gives the temperature that an enthalpy stands for, if it lies on the chord.
func (c *enthalpyChord) at(enthalpy float64) (kelvin float64, within bool) {
	share := (enthalpy - c.base) / c.rise
	return tableLow + tableStep*(float64(c.row)+share), share >= 0 && share <= 1
}

// solidTemperature inverts the enthalpy of solids, starting the search at a guess. A plain heat capacity in J/K (counted
// from 0 K) may come along, for the packing of the hearth.
func (t *propertyTable) solidTemperature(n *[solidCount]float64, extra, enthalpy, guess float64) float64 {
	row, _ := tableRow(guess)
	for range 2 * tableCount {
		h, rise := t.solidEnthalpy(n, row)
		at := tableLow + tableStep*float64(row)
		h += extra * at
		rise += extra * tableStep
		if !(rise > 0) {
			return guess // nothing here to have a temperature
		}
		share := (enthalpy - h) / rise
		switch {
		case share < 0 && row > 0:
			row--
		case share > 1 && row < tableCount-2:
			row++
		default:
			return at + share*tableStep
		}
	}
	return guess
}

// gasEnthalpy gives the enthalpy flow in W of gas flows in mol/s at a temperature, and its slope in W/K.
func (t *propertyTable) gasEnthalpy(n *[gasCount]float64, kelvin float64) (h, slope float64) {
	row, share := tableRow(kelvin)
	low, high := &t.gas[row], &t.gas[row+1]
	var top float64
	for i, moles := range n {
		h += moles * low[i]
		top += moles * high[i]
	}
	return h + share*(top-h), (top - h) / tableStep
}
