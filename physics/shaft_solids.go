package physics

// What heat drives out of a layer.
const (
	dryingFrom   = ZeroCelsius + 87  // wet lumps in a stream of gas stay somewhat below boiling (recommended model)
	dryingTime   = 5.0               // s; heat decides, this only smooths it
	waterHeat    = 44e3              // J/mol, only to size the step; the balance takes it from the enthalpies
	goethiteLow  = ZeroCelsius + 250 // goethite loses its water at 250-350 C
	goethiteHigh = ZeroCelsius + 350
	goethiteTime = 60.0  // s at the upper end
	calciteTime  = 300.0 // s far from equilibrium (guess: centimetre lumps)
	volatileTime = 60.0  // s (calibration study)
)

// volatileShare is how much of dry charcoal is still volatile after long enough at a temperature: 20, 13, 7, 2, 0 % at 425,
// 500, 700, 900, 1100 C (stoves.bioenergylists.org/charquality for the first three, extrapolated beyond).
func volatileShare(kelvin float64) float64 {
	at := [...]float64{ZeroCelsius + 425, ZeroCelsius + 500, ZeroCelsius + 700, ZeroCelsius + 900, ZeroCelsius + 1100}
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
		surplus := rise / shaftTableStep * (t - dryingFrom) / waterHeat
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
	if n[solidCaCO3] > 0 && t > ZeroCelsius+600 {
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
	if n[solidVolatiles] > 0 && t > ZeroCelsius+425 {
		share := volatileShare(t)
		stays := share / (1 - share) * n[solidC] * MolarMassC / molarMassVM
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

// Slag running out of a layer.
const (
	// slagFusion is the heat in J/kg that solids take up when they run together as slag, the heat of mixing in it: melting of
	// fayalite 0.45 MJ/kg less 0.11 for its forming from the oxides, rounded as in the calibration study (from memory).
	// Fayalite is not a species of the layers: its heat of formation comes from another data set than the oxides' (about
	// 2 kJ/mol for it and for goethite), which at a few kilograms of slag a smelt is nothing.
	slagFusion = 0.4e6
	// ironPerSlag is how many kg of iron a kg of running slag can carry down (guess). Iron is solid at 1200 C: what moves it
	// is the slag it floats in, and without slag it sinks only as the charcoal under it burns away.
	ironPerSlag = 2.0
	// floorTime is the time in s in which what has reached the lowest layer falls through to the hearth (guess).
	floorTime = 120.0
	// bathTime is the time in s in which FeO of the bath takes carbon out of the iron in it, hot and well mixed (guess).
	bathTime = 3600.0
)

// settle lets slag and the iron it carries run down, empties the lowest layer, and works out what carbon iron takes along.
func (s *Shaft) settle(dt float64) {
	carburising := -1.0
	for i := range s.count {
		l := &s.layers[i]
		running := ramp(l.temperature, runningLow, runningHigh)
		floor := 0.0
		if i == 0 {
			floor = dt / floorTime
		}
		if running == 0 && floor == 0 {
			continue
		}
		slag := slagMass(&l.n)
		iron := l.n[solidFe] * MolarMassFe
		if slag == 0 && iron == 0 && floor == 0 {
			continue
		}
		_, stays := meanDecay(s.params.DripRate * running * dt)
		slagShare := 1 - stays
		ironShare := 0.0
		if iron > 0 {
			ironShare = slagShare * min(1, ironPerSlag*slag/iron)
		}
		var gone [solidCount]float64
		for j := solidFeOOH; j < solidCount; j++ {
			share := floor
			if isSlag[j] {
				share = max(share, slagShare)
			} else if j == solidFe {
				share = max(share, ironShare)
			}
			gone[j] = l.n[j] * share
		}
		// Iron takes carbon of the charcoal it lies in, as much as the gas of its last contact stands for.
		if gone[solidFe] > 0 {
			if carburising < 0 {
				carburising = s.carburisingAt()
				s.hearth.carburising = carburising
			}
			c := carburising
			gone[solidC] = min(gone[solidFe]*MolarMassFe*c/(1-c)/MolarMassC, 0.1*l.n[solidC])
		}
		s.toHearth(l, &gone)
	}
	s.dropFloor()
	s.warmBath()
}

// carburisingAt gives the mass share of carbon in iron from the gas where the shaft passes 1150 C, the middle of the last
// solid contact with gas before slag wraps the iron.
func (s *Shaft) carburisingAt() float64 {
	const at = ZeroCelsius + 1150
	for i := s.count - 1; i >= 0; i-- {
		l := &s.layers[i]
		if l.temperature < at {
			continue
		}
		moles := 0.0
		for _, n := range l.gas {
			moles += n
		}
		if !(moles > 0) || !(l.gas[gasCO] > 0) {
			return 0
		}
		activity := CarbonActivity(at, l.gas[gasCO]/moles*s.ambient.Pressure, l.gas[gasCO2]/moles*s.ambient.Pressure)
		return s.params.CarbonApproach * AusteniteCarbon(at, activity)
	}
	return 0
}

// toHearth moves solids with their heat from a layer to the bath; slag takes its heat of melting from the layer.
func (s *Shaft) toHearth(l *layer, gone *[solidCount]float64) {
	row, share := tableRow(l.temperature)
	low, rise := s.table.solidEnthalpy(gone, row)
	heat := low + share*rise
	melting := 0.0
	if l.temperature > runningLow {
		melting = slagFusion * slagMass(gone)
	}
	stone, lost := 0.0, 0.0
	for j, moles := range gone {
		if j > solidWater {
			stone += l.n[j] * solidMolarMass[j]
			lost += moles * solidMolarMass[j]
		}
	}
	if stone > 0 {
		l.stoneVolume *= max(0, 1-lost/stone)
	}
	if l.n[solidC] > 0 {
		l.fuelVolume *= 1 - gone[solidC]/l.n[solidC]
	}
	h := &s.hearth
	for j, moles := range gone {
		l.n[j] -= moles
		h.bath.n[j] += moles
	}
	l.enthalpy -= heat + melting
	if melting > 0 { // else what leaves takes its share and the rest keeps its temperature
		l.temperature = s.table.solidTemperature(&l.n, 0, l.enthalpy, l.temperature)
	}
	h.bath.enthalpy += heat
	h.fusion += melting
}

// warmBath brings the temperature of the bath up to its enthalpy.
func (s *Shaft) warmBath() {
	b := &s.hearth.bath
	b.temperature = s.table.solidTemperature(&b.n, s.hearth.packing, b.enthalpy, b.temperature)
}

// stirBath lets the slag of the bath burn carbon out of the iron in it: FeO + C = Fe + CO. The gas goes up through the shaft.
func (s *Shaft) stirBath(w *shaftWork, dt float64) {
	b := &s.hearth.bath
	running := ramp(b.temperature, runningLow, runningHigh)
	if running == 0 || b.n[solidC] == 0 || b.n[solidFeO] == 0 {
		return
	}
	_, left := meanDecay(dt / bathTime * running)
	gone := min(b.n[solidC], b.n[solidFeO]) * (1 - left)
	b.n[solidC] -= gone
	b.n[solidFeO] -= gone
	b.n[solidFe] += gone
	w.bathGas = gone / dt
	var gas [gasCount]float64
	gas[gasCO] = w.bathGas
	heat, _ := s.table.gasEnthalpy(&gas, b.temperature)
	w.bathHeat = heat
	b.enthalpy -= heat * dt
}

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
	a.inGas += b.inGas
	a.temperature = s.table.solidTemperature(&a.n, 0, a.enthalpy, a.temperature)
}
