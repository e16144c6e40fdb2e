package physics

import "math"

const stefanBoltzmann = 5.670374419e-8 // W/m2/K4, CODATA 2018

// Exchange with the wall: a contact coefficient and the radiation of glowing charcoal against clay.
const (
	wallContact   = 20.0 // W/m2/K (recommended model)
	wallRadiation = 0.35 // exchange factor, so 4 x 0.35 sigma T^3 (recommended model)
)

// airReach is how far up the by-pass air gets, as a share of the charging mark (calibration study: 34 cm of 50).
const airReach = 0.68

// sweep takes the gas from the hearth to the top through every layer, with reactions and the exchange of heat.
func (s *Shaft) sweep(w *shaftWork, dt float64) {
	height := w.bottom[s.count]
	raceway := math.Min(s.params.RacewayHeight, height)
	reach := math.Min(math.Max(airReach*s.geometry.Stack, raceway+0.02), height)
	var air airShare // the whole blast
	air.n[gasO2] = s.blast.Flow.O2 * s.params.AirFactor
	air.n[gasN2] = s.blast.Flow.N2 * s.params.AirFactor
	air.n[gasH2O] = s.blast.Flow.H2O * s.params.AirFactor
	air.temperature = s.blast.Temperature
	airSlope := 0.0
	air.heat, airSlope = s.table.gasEnthalpy(&air.n, air.temperature)
	bypass := s.params.BypassShare
	if reach <= raceway {
		bypass = 0
	}

	var g gasStream
	g.temperature = s.hearth.bath.temperature
	g.n[gasCO] = w.bathGas
	g.heat = w.bathHeat

	s.totals.LastStepCarbon = 0
	for i := range s.count {
		l := &s.layers[i]
		low, high := w.bottom[i], w.bottom[i+1]
		share := (1-bypass)*overlap(low, high, 0, raceway) + bypass*overlap(low, high, raceway, reach)
		var part airShare
		if share > 0 {
			for j := range part.n {
				part.n[j] = air.n[j] * share
			}
			part.heat = air.heat * share
		}
		part.temperature = air.temperature
		s.passLayer(w, i, l, &g, &part, airSlope*share, dt)
	}
	if s.count == 0 {
		for j := range g.n {
			g.n[j] += air.n[j]
		}
		g.heat += air.heat
		g.temperature = air.temperature
	}
	s.topGas = g

	for j, flow := range air.n {
		for e, atoms := range gasAtoms[j] {
			s.ledger.In[e] += atoms * flow * dt
			s.ledger.Out[e] += atoms * g.n[j] * dt
		}
	}
	s.ledger.BlastHeat += air.heat * dt
	s.ledger.TopGasHeat += g.heat * dt
	s.totals.UnburnedOxygen += g.n[gasO2] * dt
	s.totals.CarbonBurned += s.totals.LastStepCarbon * dt
}

// overlap gives the share of a zone that a layer covers.
func overlap(low, high, zoneLow, zoneHigh float64) float64 {
	if zoneHigh <= zoneLow {
		return 0
	}
	return math.Max(0, math.Min(high, zoneHigh)-math.Max(low, zoneLow)) / (zoneHigh - zoneLow)
}

// passLayer is one layer's turn: it lets go of water and volatiles, reacts, and trades heat with gas and wall. Its enthalpy
// becomes what it was, plus all that came in, less all that went out, so that a coarse estimate of its temperature on the
// way costs accuracy and never energy.
func (s *Shaft) passLayer(w *shaftWork, i int, l *layer, g *gasStream, air *airShare, airSlope, dt float64) {
	low, high := w.bottom[i], w.bottom[i+1]
	thick := high - low
	area := s.geometry.Bore.Area((low + high) / 2)
	heatIn := g.heat + air.heat

	gasBefore := g.moles()
	s.release(l, g, dt)
	transport := s.table.transportAt((l.temperature + g.temperature) / 2)
	massFlow := 0.0
	for j := range g.n {
		massFlow += (g.n[j] + air.n[j]/2) * gasMolarMass[j]
	}
	// Wakao & Kaguei 1982: Nu = 2 + 1.1 Pr^(1/3) Re^0.6, with Pr = Sc = 0.7.
	reynolds := math.Pow(massFlow/area*l.lump, 0.6) * transport.viscosityPower
	w.nusselt = wakaoNusselt(reynolds)
	s.react(w, l, g, air, thick, dt)

	// Gas side.
	surface := 6 * (1 - charcoalVoid) / l.lump * l.volume() * s.params.ContactFactor
	transfer := w.nusselt * transport.conductivity / l.lump * surface // W/K
	heatAtInlet, slope := s.table.gasEnthalpy(&g.n, g.temperature)
	reference := g.temperature
	steer, follow, steady := 1.0, 0.0, l.temperature // Tgas = Tgas,in steer + follow Tsolid + steady part of the air
	if slope > 0 {
		pull := transfer + airSlope
		follow = transfer / pull
		coldPart := airSlope / pull * air.temperature
		decay := 0.0
		if middle := slope - airSlope/2; gasBefore > 1e-9 && middle > 0 {
			decay = math.Exp(-pull / middle)
		}
		steer, follow, steady = decay, follow*(1-decay), coldPart*(1-decay)
	}

	// Wall side.
	wallSlope, wallPull, edgeResistance := s.wallContactOf(w, l, low, high, massFlow/area)

	row, share := tableRow(l.temperature)
	base, rise := s.table.solidEnthalpy(&l.n, row)
	capacity := rise / shaftTableStep
	if !(capacity > 0) {
		capacity = 1e-9
	}
	solid := base + share*rise
	gasOut := 0.0
	if slope > 0 {
		gasOut = heatAtInlet + slope*(g.temperature*steer+follow*l.temperature+steady-reference)
	}
	excess := solid - l.enthalpy + dt*(gasOut-heatIn+wallSlope*l.temperature-wallPull)
	const farthest = 400.0 // K in a step; only a furnace that makes no sense gets there
	change := math.Max(-farthest, math.Min(farthest, -excess/(capacity+dt*(slope*follow+wallSlope))))
	newT := math.Max(shaftTableLow, l.temperature+change)
	if slope > 0 {
		g.temperature = math.Max(shaftTableLow, math.Min(shaftTableHigh, g.temperature*steer+follow*newT+steady))
		g.heat, _ = s.table.gasEnthalpy(&g.n, g.temperature)
	} else {
		g.heat = 0
	}
	toWall := s.giveWall(w, low, high, wallSlope, newT)
	l.enthalpy += dt * (heatIn - g.heat - toWall)
	reached := l.temperature + (l.enthalpy-solid)/capacity
	w.capacity[i] = capacity
	l.warming = (reached - l.temperature) / dt
	l.temperature = reached
	l.edge = reached - edgeResistance*toWall
	l.gasT, l.gas = g.temperature, g.n

	inside := overlap(low, high, 0, math.Min(s.params.RacewayHeight, w.bottom[s.count]))
	if thick > 0 {
		inside *= math.Min(s.params.RacewayHeight, w.bottom[s.count]) / thick
	}
	w.mixing[i] = s.bedConductivity(l) * (1 + (s.params.FurnaceMixing-1)*inside)
}

// wakaoNusselt gives the Nusselt number (and, alike, the Sherwood number) of a packed bed from the 0.6th power of the
// Reynolds number on lump size and empty-tube speed, at Pr = 0.7: Wakao & Kaguei 1982, for 15 < Re < 8500.
func wakaoNusselt(reynoldsPower float64) float64 {
	const prandtlRoot = 0.8879040017426007 // 0.7^(1/3)
	return 2 + 1.1*prandtlRoot*reynoldsPower
}

// bedConductivity of resting charcoal in W/m/K: contact and radiation from lump to lump.
func (s *Shaft) bedConductivity(l *layer) float64 {
	t := l.temperature
	return 0.3 + 4*s.params.RadiationShare*stefanBoltzmann*l.lump*t*t*t
}

// lookAhead gives how far the temperature at which a layer reacts during a step lies from where the step begins.
func lookAhead(l *layer, dt float64) float64 {
	return math.Max(-20, math.Min(20, l.warming*dt/2))
}
