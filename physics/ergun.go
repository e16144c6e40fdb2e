package physics

import "math"

// ErgunGradient gives the pressure drop in Pa per m of a packed bed: 150 mu u (1-e)^2/(d^2 e^3) + 1.75 rho u^2 (1-e)/(d e^3),
// with u the speed in the empty shaft in m/s, d the size of a lump as a ball in m, e the void. Ergun 1952, Chem. Eng. Prog.
// 48:89, for 1 < rho u d/(mu (1-e)) < 2300; above about 700 it reads high.
func ErgunGradient(size, void, speed, density, viscosity float64) float64 {
	solid := 1 - void
	e3 := void * void * void
	return 150*viscosity*speed*solid*solid/(size*size*e3) + 1.75*density*speed*speed*solid/(size*e3)
}

// LumpRoundness turns the sieve size of charcoal into that of the ball with its ratio of surface to volume (0.6-0.7, from
// memory, unverified).
const LumpRoundness = 0.65

// WithFines gives the size in m that a bed of lumps behaves like when a share (0 to 1) of its mass is fines: the mean by
// surface, which the fines soon rule.
func WithFines(lump, fines, share float64) (float64, error) {
	for _, err := range []error{inRange("lump size", lump, 1e-4, 0.2), inRange("size of the fines", fines, 1e-5, lump), inRange("share of fines", share, 0, 1)} {
		if err != nil {
			return 0, err
		}
	}
	return 1 / ((1-share)/lump + share/fines), nil
}

// PressureDrop gives the pressure in Pa that the gas of the last step loses in the burden. Ore and slag that sank between
// the lumps take away void. roundness as [LumpRoundness].
func (s *Shaft) PressureDrop(roundness float64) float64 {
	var w shaftWork
	s.layOut(&w)
	sum := 0.0
	for i := range s.count {
		l := &s.layers[i]
		thick := w.bottom[i+1] - w.bottom[i]
		mass, moles := 0.0, 0.0
		for j, n := range l.gas {
			mass += n * gasMolarMass[j]
			moles += n
		}
		if !(mass > 0) || !(thick > 0) {
			continue
		}
		density := mass / moles * s.ambient.Pressure / (GasConstant * l.gasT)
		area := s.wall.areaAt((w.bottom[i] + w.bottom[i+1]) / 2)
		sum += thick * ErgunGradient(roundness*l.lump, l.void(), mass/density/area, density, gasViscosity(l.gasT))
	}
	return sum
}

// void of a layer: that of charcoal, less what stones fill of it.
func (l *layer) void() float64 {
	volume := l.volume()
	if !(volume > 0) {
		return charcoalVoid
	}
	// Of the stones' own volume the burden shows a share; the rest lies in the voids.
	hidden := l.stoneVolume * (1/DefaultOreShare - 1)
	return max(0.2, (charcoalVoid*l.fuelVolume-hidden)/volume)
}

// BackPressure sets a measured static pressure before the tuyere, Pa, against what bed and tuyere should take.
type BackPressure struct {
	Measured float64
	Bed      float64 // from [Shaft.PressureDrop]
	Tuyere   float64 // from [TuyereDrop]
}

// Excess gives how much more the air meets than it should, as a factor: well above 1 a bridge, fines or a slagged tuyere; well
// below 1 a hole in the burden or a leak before the gauge. Two or a half mean little, for fines alone double the bed's part.
func (b BackPressure) Excess() float64 { return b.Measured / (b.Bed + b.Tuyere) }

// TuyereDrop gives the pressure in Pa that a flow of air, m3/s at a density in kg/m3, spends in a tuyere of a bore in m: the
// speed head of the jet, none of it recovered, times 1 + loss for entrance and pipe (0.5 for a sharp entrance; textbook).
func TuyereDrop(flow, density, bore, loss float64) (float64, error) {
	if err := inRange("tuyere bore", bore, 0.005, 0.2); err != nil {
		return 0, err
	}
	speed := flow / discArea(bore)
	return (1 + loss) * density * speed * speed / 2, nil
}

// TuyereSpeed gives the speed of the jet in m/s.
func TuyereSpeed(flow, bore float64) float64 { return flow / discArea(math.Max(bore, 1e-3)) }
