package physics

import "math"

// SlagFreezes is the heat below which a hearth is too cold for its slag to run, C: fayalite
// melts at 1178 (Bowen and Schairer 1932, from memory), and the lime and alumina of a
// bloomery's slag take some of that (common practice). The solver has the hearth of 30 Nov
// 2016, which gave 7.8 kg, at 1162 to 1184.
const SlagFreezes = 1150.0

// CastFrom is the share of carbon at which iron begins to melt beside its slag (the
// iron-carbon diagram of any handbook).
const CastFrom = 0.021

// Running says how a slag runs, as chances that add up to 1.
type Running struct {
	Runs   float64 // all molten, or all but
	Creeps float64 // crystals in it, but fewer than lock it
	Not    float64 // it stands
}

// lockedBelow is how far below its liquidus, in K, a slag no longer moves: half of it is then crystals by the even freezing of
// [Oxides.Stiffness] over 150 K, and a mass of grains half solid stands (assumed).
const lockedBelow = 75.0

// Running gives the chances of how the slag runs at a heat in K, from the bands of that heat and of the liquidus together: it
// runs above its liquidus, creeps down to 75 K below it, and stands below that. The zero value without slag or heat.
func (o Oxides) Running(heat Band) Running {
	liquidus := o.Liquidus()
	if liquidus.IsZero() || !(heat.P50 > 0) {
		return Running{}
	}
	spread := math.Hypot(heat.SD(), liquidus.SD())
	above := func(kelvin float64) float64 {
		if spread == 0 {
			if kelvin > 0 {
				return 1
			}
			return 0
		}
		return math.Erfc(-kelvin/spread/math.Sqrt2) / 2
	}
	over := heat.P50 - liquidus.P50
	runs := above(over)
	moves := above(over + lockedBelow)
	return Running{Runs: runs, Creeps: moves - runs, Not: 1 - moves}
}
