package shaft

// dropFloor takes away a lowest layer that has all but burned: its charcoal joins the layer above, the rest falls.
func (s *Shaft) dropFloor() {
	if s.count == 0 {
		return
	}
	l := &s.layers[0]
	if l.fuelVolume > 0.05*s.thickness*s.wall.areaAt(0) && l.n[solidC] > 0 {
		return
	}
	if s.count == 1 && l.n[solidC] > 1e-3 {
		return // the last of the fire burns out where it lies
	}
	gone := l.n
	if s.count > 1 {
		gone[solidC], gone[solidVolatiles], gone[solidWater] = 0, 0, 0
	}
	s.toHearth(l, &gone)
	if s.count > 1 {
		above := &s.layers[1]
		// The cinders bring their heat; what toHearth left is carbon, volatiles and water.
		for j, moles := range l.n {
			above.n[j] += moles
		}
		above.enthalpy += l.enthalpy
		above.fuelVolume += l.fuelVolume
		above.stoneVolume += l.stoneVolume
		above.temperature = s.table.solidTemperature(&above.n, 0, above.enthalpy, above.temperature)
	} else {
		s.hearth.bath.enthalpy += l.enthalpy
	}
	copy(s.layers[:s.count-1], s.layers[1:s.count])
	s.count--
	s.layers[s.count] = layer{}
}

// merge joins neighbours that have burned thin: within a charge when the two make no more than a fresh layer, across charges
// only when one is a third of one. Where they burn, before the tuyere, the whirl has evened them out already.
func (s *Shaft) merge() {
	fresh := s.thickness * s.wall.areaAt(0)
	to := 0
	for from := 1; from < s.count; from++ {
		a, b := &s.layers[to], &s.layers[from]
		va, vb := a.volume(), b.volume()
		joins := va+vb <= fresh && (a.charge == b.charge || min(va, vb) < 0.3*fresh)
		if joins {
			s.join(a, b)
			continue
		}
		to++
		if to != from {
			s.layers[to] = *b
		}
	}
	if s.count > 0 {
		for i := to + 1; i < s.count; i++ {
			s.layers[i] = layer{}
		}
		s.count = to + 1
	}
}

// join adds layer b to a.
func (s *Shaft) join(a, b *layer) {
	// The younger names it: what is left of the older has all but burned.
	a.charge = max(a.charge, b.charge)
	if v := a.fuelVolume + b.fuelVolume; v > 0 {
		a.lump = (a.lump*a.fuelVolume + b.lump*b.fuelVolume) / v
		a.warming = (a.warming*a.fuelVolume + b.warming*b.fuelVolume) / v
	}
	for j, moles := range b.n {
		a.n[j] += moles
	}
	a.enthalpy += b.enthalpy
	a.fuelVolume += b.fuelVolume
	a.stoneVolume += b.stoneVolume
	a.edge, a.gasT, a.gas = b.edge, b.gasT, b.gas
	a.temperature = s.table.solidTemperature(&a.n, 0, a.enthalpy, a.temperature)
}
