package shaft

import "math"

const stefanBoltzmann = 5.670374419e-8 // W/m2/K4, CODATA 2018

// Exchange with the wall: a contact coefficient and the radiation of glowing charcoal against clay.
const (
	wallContact   = 20.0 // W/m2/K (assumed: slow gas along a wall)
	wallRadiation = 0.35 // exchange factor, so 4 x 0.35 sigma T^3 (assumed: lumps see half wall, half each other)
)

// airReach is how far up the by-pass air gets, as a share of the charging mark: assumed, 34 cm of 50.
const airReach = 0.68

// sweep takes the gas from the hearth to the top through every layer, with reactions and the exchange of heat.
func (s *Shaft) sweep(w *work, dt float64) {
	height := w.bottom[s.count]
	raceway := min(s.raceway(), height)
	w.raceway = raceway
	reach := min(max(airReach*s.geometry.Stack, raceway+0.02), height)
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

// raceway gives the height in m over which the blast spreads into the bed. The jet reaches the farther, the more is blown
// through the bore: as the root of it, from the blast at which the parameter holds.
func (s *Shaft) raceway() float64 {
	flux := s.params.AirFactor * s.blast.Flow.Moles() / s.wall.areaAt(0)
	return s.params.RacewayHeight * max(racewayLeast, min(racewayMost, math.Sqrt(flux/racewayFlux)))
}

const (
	racewayFlux               = 8.5 // mol/m2/s: 1.2 l/min per cm2, where the raceway is that of the parameter
	racewayLeast, racewayMost = 0.6, 2.0
)

// overlap gives the share of a zone that a layer covers.
func overlap(low, high, zoneLow, zoneHigh float64) float64 {
	if zoneHigh <= zoneLow {
		return 0
	}
	return max(0, min(high, zoneHigh)-max(low, zoneLow)) / (zoneHigh - zoneLow)
}

// passLayer is one layer's turn: it lets go of water and volatiles, reacts, and trades heat with gas and wall. Its enthalpy
// becomes what it was, plus all that came in, less all that went out, so that an estimate on the way costs accuracy and
// never energy.
func (s *Shaft) passLayer(w *work, i int, l *layer, g *gasStream, air *airShare, airSlope, dt float64) {
	low, high := w.bottom[i], w.bottom[i+1]
	thick := high - low
	area := w.section[i]
	heatIn := g.heat + air.heat

	fromBelow := s.table.flowCapacity(g)
	s.release(l, g, dt)
	transport := s.table.transportAt((l.temperature + g.temperature) / 2)
	massFlow := 0.0
	for j := range g.n {
		massFlow += (g.n[j] + air.n[j]/2) * gasMolarMass[j]
	}
	// Wakao & Kaguei 1982: Nu = 2 + 1.1 Pr^(1/3) Re^0.6, with Pr = Sc = 0.7.
	w.nusselt = wakaoNusselt(powerSix(massFlow/area*l.lump) * transport.viscosityPower)
	s.react(w, l, g, air, thick, dt)

	surface := 6 * (1 - charcoalVoid) / l.lump * l.volume() * s.params.ContactFactor
	transfer := w.nusselt * transport.conductivity / l.lump * surface // W/K
	follow, fixed := s.table.exchangeAlong(g, air, transfer, fromBelow, airSlope)
	wallSlope, wallPull, edgeResistance := s.wallContactOf(w, l, low, high, massFlow/area)

	// The layer's temperature at the end of the step, by Newton from where its warming points; once is enough but for a fresh
	// charge or a layer almost burned away.
	kelvin := l.temperature + max(-50, min(50, l.warming*dt))
	capacity, gasHeat := 0.0, 0.0
	for range 4 {
		gasT := fixed + follow*kelvin
		heat, slope := s.table.gasEnthalpy(&g.n, gasT)
		row, share := tableRow(kelvin)
		base, rise := s.table.solidEnthalpy(&l.n, row)
		w.chord[i] = enthalpyChord{base, rise, row}
		capacity = max(1e-9, rise/tableStep)
		excess := base + share*rise - l.enthalpy + dt*(heat-heatIn+wallSlope*kelvin-wallPull)
		change := -excess / (capacity + dt*(slope*follow+wallSlope))
		change = max(tableLow-kelvin, min(tableHigh-kelvin, change))
		kelvin += change
		gasHeat = heat + slope*follow*change
		if math.Abs(change) < 2 {
			break
		}
	}
	toWall := s.giveWall(w, low, high, wallSlope, kelvin)
	l.enthalpy += dt * (heatIn - gasHeat - toWall)
	g.heat, g.temperature = gasHeat, fixed+follow*kelvin
	w.capacity[i] = capacity
	l.warming = (kelvin - l.temperature) / dt
	l.temperature = kelvin
	l.edge = kelvin - edgeResistance*toWall
	l.gasT, l.gas = g.temperature, g.n

	inside := overlap(low, high, 0, w.raceway)
	if thick > 0 {
		inside *= w.raceway / thick
	}
	w.mixing[i] = s.bedConductivity(l) * (1 + (s.params.FurnaceMixing-1)*inside)
}

// flowCapacity gives the heat that a gas carries per kelvin, W/K.
func (t *propertyTable) flowCapacity(g *gasStream) (sum float64) {
	row, _ := tableRow(g.temperature)
	for i, n := range g.n {
		sum += (t.gas[row+1][i] - t.gas[row][i]) * n
	}
	return sum / tableStep
}

// exchangeAlong gives the temperature of the gas leaving a layer as fixed + follow x that of the solid. The gas draws towards
// the solid while cold air is mixed into it evenly along the way. fromBelow and airSlope are what gas and air carry, in W/K:
// with air growing the stream from W to W + A, what it came with stays in it by the factor (1 + A/W)^(-pull/A). That is
// nothing without gas from below, and exp(-pull) over the stream half way up where the air is little.
func (t *propertyTable) exchangeAlong(g *gasStream, air *airShare, transfer, fromBelow, airSlope float64) (follow, fixed float64) {
	pull := transfer + airSlope
	if !(pull > 0) {
		return 0, g.temperature
	}
	stays := 0.0
	switch {
	case !(fromBelow > 0):
	case airSlope > fromBelow/4:
		stays = decay(pull / airSlope * math.Log1p(airSlope/fromBelow))
	default:
		row, _ := tableRow(g.temperature)
		through := 0.0
		for i := range g.n {
			through += (t.gas[row+1][i] - t.gas[row][i]) * (g.n[i] - air.n[i]/2)
		}
		stays = decay(pull * tableStep / through)
	}
	return transfer / pull * (1 - stays), g.temperature*stays + airSlope/pull*air.temperature*(1-stays)
}

// wakaoNusselt gives the Nusselt number (and, alike, the Sherwood number) of a packed bed from the 0.6th power of the
// Reynolds number on lump size and empty-tube speed, at Pr = 0.7: Wakao & Kaguei 1982, for 15 < Re < 8500.
func wakaoNusselt(reynoldsPower float64) float64 {
	const prandtlRoot = 0.8879040017426007 // 0.7^(1/3)
	return 2 + 1.1*prandtlRoot*reynoldsPower
}

// bedConductivity of a layer's charcoal, resting, in W/m/K.
func (s *Shaft) bedConductivity(l *layer) float64 { return s.conductivityOf(l.lump, l.temperature) }

// conductivityOf resting lumps in W/m/K: contact and radiation from lump to lump.
func (s *Shaft) conductivityOf(lump, t float64) float64 {
	return 0.3 + 4*s.params.RadiationShare*stefanBoltzmann*lump*t*t*t
}

// lookAhead gives how far the temperature at which a layer reacts during a step lies from where the step begins.
func lookAhead(l *layer, dt float64) float64 {
	return max(-20, min(20, l.warming*dt/2))
}
