package shaft

import "chargehand/physics"

// Slag running out of a layer.
const (
	// slagFusion is the heat in J/kg that solids take up when they run together as slag, the heat of mixing in it: melting of
	// fayalite 0.45 MJ/kg less 0.11 for its forming from the oxides, rounded (both from memory).
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
		iron := l.n[solidFe] * physics.MolarMassFe
		const trace = 1e-6 // kg: not worth running down; it sinks with its layer
		if slag+iron < trace && floor == 0 {
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
			gone[solidC] = min(gone[solidFe]*physics.MolarMassFe*c/(1-c)/physics.MolarMassC, 0.1*l.n[solidC])
		}
		s.toHearth(l, &gone)
	}
	s.dropFloor()
	s.warmBath()
}

// lastContact is the temperature in K of the last contact of solid iron with gas, and atLastContact the activity there of the
// carbon of a gas with as much CO as CO2 at a pascal each: to work that out at each step cost a fiftieth of it.
const lastContact = physics.ZeroCelsius + 1150

var atLastContact = physics.CarbonActivity(lastContact, 1, 1)

// carburisingAt gives the mass share of carbon in iron from the gas where the shaft passes 1150 C, the middle of the last
// solid contact with gas before slag wraps the iron.
func (s *Shaft) carburisingAt() float64 {
	const at = lastContact
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
		co, co2 := l.gas[gasCO]/moles*s.ambient.Pressure, l.gas[gasCO2]/moles*s.ambient.Pressure
		activity := atLastContact * co * co / co2
		return s.params.CarbonApproach * physics.AusteniteCarbon(at, activity)
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
func (s *Shaft) stirBath(w *work, dt float64) {
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
