package shaft

import (
	"math"

	"chargehand/physics"
)

// oreSpeeds says how fast each step of the layer's ore can go in a gas flow of `through` mol/s, and how far.
//
// The speed of a step is the reference rate times all the oxygen the ore had as Fe2O3, times two thirds' power of the share
// of iron still at that stage, times the drive: the share of CO above the boundary. Hydrogen drives the same steps against
// its own boundaries, a few times faster. Steps can go backwards where the gas is above the boundary.
//
// FeO that silica holds is not out of reach (the fayalite line is passed at 86 % CO): it is a step of its own, slow, with
// its own boundary. So the "reducible iron" of an assay is a rate here and not a wall.
func (s *Shaft) oreSpeeds(l *layer, k *kinetics, through, dt float64, r *reduction) {
	n := &l.n
	iron := ironAtoms(n)
	reducible := iron - n[solidFeOOH]
	r.active = reducible > 1e-9 && l.temperature > 450
	if !r.active {
		return
	}
	bound := min(n[solidFeO], 2*s.params.LockedShare*k.slagging*n[solidSiO2])
	free := n[solidFeO] - bound
	belowTriple := l.temperature < wustiteTriple
	r.forward = [oreSteps]float64{n[solidFe2O3] / 3, n[solidFe3O4], free, bound}
	r.behind = [oreSteps]float64{n[solidFe3O4] / 2, n[solidFeO] / 3, n[solidFe] / 2, 0}
	held := [oreSteps]float64{2 * n[solidFe2O3], 3 * n[solidFe3O4], free, bound}
	if belowTriple {
		r.forward[stepWustite] = 4 * n[solidFe3O4]
		r.behind[stepWustite] = 0 // iron is not taken back to magnetite so cold
	}
	rate := s.params.OreRate * k.ore * 1.5 * iron / through
	for i := range oreSteps {
		share := held[i] / iron
		speed := rate * stepSpeed[i]
		if i == stepBound {
			speed *= s.params.LockedRate
		}
		switch {
		case share > 1e-6:
			speed *= twoThirds(share)
		case i == stepIron && n[solidFe] > 0 || i == stepWustite && free > 0:
			// Only the way back is open: the product's surface counts, slowly.
			speed *= 0.1
		default:
			speed = 0
		}
		r.co[i] = speed
		r.h2[i] = speed * s.params.HydrogenFactor
	}
}

// twoThirds gives a share to the power two thirds, the surface of a shrinking core, read from a table: 3e-4 off at most above
// a hundredth, and going to nothing straight below a thousandth, so that the last of an oxide dies away and does not end.
func twoThirds(share float64) float64 {
	x := min(share, 1) * (twoThirdsParts - 1)
	i := min(int(x), twoThirdsParts-2)
	return twoThirdsTable[i] + (x-float64(i))*(twoThirdsTable[i+1]-twoThirdsTable[i])
}

const twoThirdsParts = 1025

var twoThirdsTable = func() (t [twoThirdsParts]float64) {
	for i := range t {
		t[i] = math.Pow(float64(i)/(twoThirdsParts-1), 2.0/3)
	}
	return t
}()

// wustiteTriple is the triple point, K.
var wustiteTriple = physics.WustiteTriplePoint()

// reduceOre books oxygen given up (mol/s, per step) on the solids.
func (s *Shaft) reduceOre(l *layer, given *[oreSteps]float64, dt float64) {
	n := &l.n
	a := given[stepMagnetite] * dt // 3 Fe2O3 -> 2 Fe3O4 + O
	n[solidFe2O3] -= 3 * a
	n[solidFe3O4] += 2 * a
	b := given[stepWustite] * dt
	if l.temperature < wustiteTriple { // Fe3O4 -> 3 Fe + 4 O
		n[solidFe3O4] -= b / 4
		n[solidFe] += 0.75 * b
	} else { // Fe3O4 -> 3 FeO + O
		n[solidFe3O4] -= b
		n[solidFeO] += 3 * b
	}
	c := (given[stepIron] + given[stepBound]) * dt
	n[solidFeO] -= c
	n[solidFe] += c
	s.totals.OxygenFromOre += (a + b + c) * physics.MolarMassO
}
