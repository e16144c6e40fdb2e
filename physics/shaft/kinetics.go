package shaft

import (
	"math"

	"chargehand/physics"
)

// The steps of reduction in a layer. Bound is FeO held by silica in slag, to iron.
const (
	stepMagnetite = iota // Fe2O3 to Fe3O4
	stepWustite          // Fe3O4 to FeO, below the triple point to iron
	stepIron             // free FeO to iron
	stepBound            // FeO in slag to iron
	oreSteps
)

// stepSpeed is how much faster than the last an earlier step goes at the same drive (assumed).
var stepSpeed = [oreSteps]float64{3, 2, 1, 1}

// Charcoal with CO2: 3.1e6 exp(-215 kJ/RT) p^0.38 per second with p in bar, birch char (Barrio & Hustad 2001, from memory,
// unverified). The gas sweep wants first order: the constant is the chord of that law at 0.1 bar, where a furnace's gas is
// when it matters; at 0.03 and 0.3 bar it is then a factor of two off, less after the pores have had their say. The choice
// answers the doubt that this constant was used per bar^0.38 and per bar alike.
const (
	gasificationFactor   = 3.1e6
	gasificationEnergy   = 215e3
	gasificationOrder    = 0.38
	gasificationPressure = 0.1
)

// Charcoal surface with oxygen, m/s: chosen, not measured, so that a lump lights at 350-400 C and the film alone decides
// above 800 C, as published.
const (
	combustionFactor = 1e4
	combustionEnergy = 100e3
)

// Reduction: 0.0065 per second and unit of drive at 950 C, 65 kJ/mol (assumed: about three times a good lump of the
// ISO 4695 test, for small porous ore). What stands for it in a furnace is ore_rate, fitted here.
const (
	oreFactor      = 0.0065
	oreTemperature = 1223.0
	oreEnergy      = 65e3
)

// Slag forms between 1100 and 1150 C and runs freely from 1150 to 1250 C: fayalite slags melt near 1180 C (slag.csv).
const (
	slaggingLow, slaggingHigh = physics.ZeroCelsius + 1100, physics.ZeroCelsius + 1150
	runningLow, runningHigh   = physics.ZeroCelsius + 1150, physics.ZeroCelsius + 1250
)

func ramp(x, low, high float64) float64 { return min(1, max(0, (x-low)/(high-low))) }

func kineticsOf(kelvin float64) kinetics {
	arrhenius := func(energy float64) float64 { return math.Exp(-energy / (physics.GasConstant * kelvin)) }
	const cap = 1e4
	r := kinetics{
		gasification: gasificationFactor * math.Pow(gasificationPressure, gasificationOrder-1) * arrhenius(gasificationEnergy),
		combustion:   combustionFactor * arrhenius(combustionEnergy),
		ore:          oreFactor * math.Exp(-oreEnergy/physics.GasConstant*(1/kelvin-1/oreTemperature)),
		boudouard:    min(cap, 1/physics.BoudouardConstant(kelvin)),
		steam:        min(cap, 1/physics.SteamCarbonConstant(kelvin)),
		waterGas:     physics.WaterGasConstant(kelvin),
		calcination:  physics.CalcinationPressure(kelvin),
		slagging:     ramp(kelvin, slaggingLow, slaggingHigh),
		running:      ramp(kelvin, runningLow, runningHigh),
	}
	lines := [oreSteps]physics.OxideBoundary{stepMagnetite: physics.HematiteMagnetite, stepWustite: physics.MagnetiteWustite, stepIron: physics.WustiteIron, stepBound: physics.FayaliteIron}
	if kelvin < physics.WustiteTriplePoint() {
		lines[stepWustite] = physics.MagnetiteIron
	}
	for i, line := range lines {
		r.boundaryCO[i], r.boundaryH2[i] = line.CO(kelvin), line.H2(kelvin)
	}
	return r
}

// kineticsAt reads the rows about a temperature. The magnetite step changes its product at the triple point, where its boundary
// has a kink and no jump, so that reading across it is harmless.
func (t *propertyTable) kineticsAt(kelvin float64, out *kinetics) {
	row, s := tableRow(kelvin)
	a, b := &t.kinetics[row], &t.kinetics[row+1]
	out.gasification = a.gasification + s*(b.gasification-a.gasification)
	out.combustion = a.combustion + s*(b.combustion-a.combustion)
	out.ore = a.ore + s*(b.ore-a.ore)
	out.boudouard = a.boudouard + s*(b.boudouard-a.boudouard)
	out.steam = a.steam + s*(b.steam-a.steam)
	out.waterGas = a.waterGas + s*(b.waterGas-a.waterGas)
	out.slagging = a.slagging + s*(b.slagging-a.slagging)
	out.running = a.running + s*(b.running-a.running)
	for i := range oreSteps {
		out.boundaryCO[i] = a.boundaryCO[i] + s*(b.boundaryCO[i]-a.boundaryCO[i])
		out.boundaryH2[i] = a.boundaryH2[i] + s*(b.boundaryH2[i]-a.boundaryH2[i])
	}
}

func (t *propertyTable) transportAt(kelvin float64) transport {
	row, s := tableRow(kelvin)
	a, b := &t.transport[row], &t.transport[row+1]
	return transport{
		conductivity:   a.conductivity + s*(b.conductivity-a.conductivity),
		viscosityPower: a.viscosityPower + s*(b.viscosityPower-a.viscosityPower),
		diffusivity:    a.diffusivity + s*(b.diffusivity-a.diffusivity),
	}
}
