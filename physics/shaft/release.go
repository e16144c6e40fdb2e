package shaft

import "chargehand/physics"

// What heat drives out of a layer.
const (
	dryingFrom   = physics.ZeroCelsius + 87  // wet lumps in a stream of gas stay somewhat below boiling (assumed)
	dryingTime   = 5.0                       // s; heat decides, this only smooths it
	waterHeat    = 44e3                      // J/mol, only to size the step; the balance takes it from the enthalpies
	goethiteLow  = physics.ZeroCelsius + 250 // goethite loses its water at 250-350 C
	goethiteHigh = physics.ZeroCelsius + 350
	goethiteTime = 60.0  // s at the upper end
	calciteTime  = 300.0 // s far from equilibrium (guess: centimetre lumps)
	volatileTime = 60.0  // s (assumed)
)

// volatileShare is how much of dry charcoal is still volatile after long enough at a temperature: 20, 13, 7, 2, 0 % at 425,
// 500, 700, 900, 1100 C (stoves.bioenergylists.org/charquality for the first three, extrapolated beyond).
func volatileShare(kelvin float64) float64 {
	at := [...]float64{physics.ZeroCelsius + 425, physics.ZeroCelsius + 500, physics.ZeroCelsius + 700, physics.ZeroCelsius + 900, physics.ZeroCelsius + 1100}
	share := [...]float64{0.20, 0.13, 0.07, 0.02, 0}
	if kelvin <= at[0] {
		return 1 // colder than it was charred
	}
	for i := 1; i < len(at); i++ {
		if kelvin < at[i] {
			return share[i-1] + (share[i]-share[i-1])*(kelvin-at[i-1])/(at[i]-at[i-1])
		}
	}
	return 0
}

// release lets water, the water of goethite, the gas of calcite and volatiles go into the gas.
func (s *Shaft) release(l *layer, g *gasStream, dt float64) {
	n := &l.n
	t := l.temperature
	if n[solidWater] > 0 && t > dryingFrom {
		row, _ := tableRow(t)
		_, rise := s.table.solidEnthalpy(n, row)
		_, left := meanDecay(dt / dryingTime)
		surplus := rise / tableStep * (t - dryingFrom) / waterHeat
		gone := min(n[solidWater], surplus*(1-left))
		if n[solidWater]-gone < 1e-9 {
			gone = n[solidWater]
		}
		n[solidWater] -= gone
		g.n[gasH2O] += gone / dt
	}
	if n[solidFeOOH] > 0 && t > goethiteLow {
		_, left := meanDecay(dt / goethiteTime * ramp(t, goethiteLow, goethiteHigh))
		gone := n[solidFeOOH] * (1 - left)
		if n[solidFeOOH]-gone < 1e-9 {
			gone = n[solidFeOOH]
		}
		n[solidFeOOH] -= gone
		n[solidFe2O3] += gone / 2
		g.n[gasH2O] += gone / 2 / dt
	}
	if n[solidCaCO3] > 0 && t > physics.ZeroCelsius+600 {
		row, share := tableRow(t)
		calcination := s.table.kinetics[row].calcination
		calcination += share * (s.table.kinetics[row+1].calcination - calcination)
		carbonDioxide := 0.0
		if moles := g.moles(); moles > 0 {
			carbonDioxide = g.n[gasCO2] / moles * s.ambient.Pressure
		}
		_, left := meanDecay(dt / calciteTime * max(0, 1-carbonDioxide/calcination))
		gone := n[solidCaCO3] * (1 - left)
		n[solidCaCO3] -= gone
		n[solidCaO] += gone
		g.n[gasCO2] += gone / dt
	}
	if n[solidVolatiles] > 0 && t > physics.ZeroCelsius+425 {
		share := volatileShare(t)
		stays := share / (1 - share) * n[solidC] * physics.MolarMassC / molarMassVM
		if over := n[solidVolatiles] - stays; over > 0 {
			_, left := meanDecay(dt / volatileTime)
			gone := over * (1 - left)
			if n[solidVolatiles]-gone < 1e-9 {
				gone = n[solidVolatiles]
			}
			n[solidVolatiles] -= gone
			g.n[gasCO] += volatileCO * gone / dt
			g.n[gasH2O] += volatileH2O * gone / dt
			g.n[gasH2] += volatileH2 * gone / dt
		}
	}
}
