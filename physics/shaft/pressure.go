package shaft

import "chargehand/physics"

// PressureDrop gives the pressure in Pa that the gas of the last step loses in the burden. Ore and slag that sank between
// the lumps take away void. roundness as [physics.LumpRoundness].
func (s *Shaft) PressureDrop(roundness float64) float64 {
	var w work
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
		density := mass / moles * s.ambient.Pressure / (physics.GasConstant * l.gasT)
		area := s.wall.areaAt((w.bottom[i] + w.bottom[i+1]) / 2)
		sum += thick * physics.ErgunGradient(roundness*l.lump, l.void(), mass/density/area, density, gasViscosity(l.gasT))
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
	hidden := l.stoneVolume * (1/physics.DefaultOreShare - 1)
	return max(0.2, (charcoalVoid*l.fuelVolume-hidden)/volume)
}
