package shaft

// conduction is the linear system of the heat along the shaft: ground, hearth and layers from below.
type conduction struct {
	link, capacity, start, diagonal, right [groundNodes + 1 + maxLayers]float64
}

// conduct moves heat along the shaft, from the ground through the hearth to the top layer, and out of the open top. The
// linear system gives temperatures at the end of the step; the flows between them are then booked in enthalpy, so that what
// one layer loses another gains to the last bit.
func (s *Shaft) conduct(w *work, dt float64) {
	const first = groundNodes + 1 // index of the lowest layer in the chain
	link, capacity, start, diagonal, right := &w.chain.link, &w.chain.capacity, &w.chain.start, &w.chain.diagonal, &w.chain.right
	chain := first + s.count
	link[chain-1] = 0 // nothing above the top
	h := &s.hearth
	area := s.wall.areaAt(0)
	for k := range groundNodes { // the deepest first
		capacity[k] = s.wall.groundHolds(k)
		start[k] = h.ground[k]
		link[k] = s.params.HearthConductivity * area / groundDepth
	}
	// Between the top ground node and the bath lies half a node.
	link[groundNodes-1] *= 2
	row, _ := tableRow(h.bath.temperature)
	_, rise := s.table.solidEnthalpy(&h.bath.n, row)
	capacity[groundNodes] = h.packing + rise/tableStep
	start[groundNodes] = h.bath.temperature
	for i := range s.count {
		j := first + i
		capacity[j] = w.capacity[i]
		start[j] = s.layers[i].temperature
		half := (w.bottom[i+1] - w.bottom[i]) / (2 * w.mixing[i])
		if i == 0 {
			// The bath lies under the floor of the raceway: half the packing, without the whirl, between it and the lowest layer. When
			// lumps as large as a charge's, the whirl's nearness and no wall round it were taken, 870 C came out a hand's breadth
			// under a tuyere where 328 was read (DARC, 9 Oct 2011).
			link[groundNodes] = area / (half + packingDepth/2/s.conductivityOf(s.params.HearthLump, s.layers[0].temperature))
		}
		if i+1 < s.count {
			next := (w.bottom[i+2] - w.bottom[i+1]) / (2 * w.mixing[i+1])
			link[j] = s.wall.areaAt(w.bottom[i+1]) / (half + next)
		}
	}
	beyond := s.params.HearthConductivity * area / (groundBeyond + groundDepth/2)
	air := s.ambient.Temperature
	// Out through the wall round the hearth.
	var out [groundNodes + 1]float64
	for k := range groundNodes {
		out[k] = s.wall.below.losesAt(k)
	}
	out[groundNodes] = s.wall.below.leads * s.wall.below.along(0, packingDepth)

	// Elimination from the ground up.
	for j := range chain {
		diagonal[j] = capacity[j]/dt + link[j]
		right[j] = capacity[j] / dt * start[j]
		if j <= groundNodes {
			diagonal[j] += out[j]
			right[j] += out[j] * air
		}
		if j == 0 {
			diagonal[0] += beyond
			right[0] += beyond * air
		} else {
			diagonal[j] += link[j-1]
		}
	}
	if s.count == 0 {
		diagonal[chain-1] -= link[chain-1]
		link[chain-1] = 0
		// An empty hearth looks at the sky.
		t := h.bath.temperature
		open := area * s.params.TopEmissivity * 4 * stefanBoltzmann * t * t * t
		diagonal[chain-1] += open
		right[chain-1] += open * air
	}
	for j := 1; j < chain; j++ {
		factor := link[j-1] / diagonal[j-1]
		diagonal[j] -= factor * link[j-1]
		right[j] += factor * right[j-1]
	}
	right[chain-1] /= diagonal[chain-1]
	for j := chain - 2; j >= 0; j-- {
		right[j] = (right[j] + link[j]*right[j+1]) / diagonal[j]
	}
	end := right

	loss := beyond * (end[0] - air) * dt
	s.ledger.GroundLoss += loss
	below := -loss
	for k := range groundNodes {
		up := link[k] * (end[k] - end[k+1]) * dt
		aside := out[k] * (end[k] - air) * dt
		s.ledger.GroundLoss += aside
		h.ground[k] += (below - up - aside) / capacity[k]
		below = up
	}
	up := 0.0
	if s.count > 0 {
		up = link[groundNodes] * (end[groundNodes] - end[first]) * dt
	} else {
		t := h.bath.temperature
		up = area * s.params.TopEmissivity * 4 * stefanBoltzmann * t * t * t * (end[groundNodes] - air) * dt
		s.ledger.TopLoss += up
	}
	aside := out[groundNodes] * (end[groundNodes] - air) * dt
	s.ledger.GroundLoss += aside
	h.bath.enthalpy += below - up - aside
	h.bath.temperature = s.table.solidTemperature(&h.bath.n, h.packing, h.bath.enthalpy, end[groundNodes])
	below = up
	for i := range s.count {
		l := &s.layers[i]
		j := first + i
		if i+1 < s.count {
			up = link[j] * (end[j] - end[j+1]) * dt
		} else {
			up = s.topRadiation(l.temperature, capacity[j], w.bottom[s.count], dt)
			s.ledger.TopLoss += up
		}
		l.enthalpy += below - up
		kelvin, within := w.chord[i].at(l.enthalpy)
		if !within {
			kelvin = s.table.solidTemperature(&l.n, 0, l.enthalpy, l.temperature)
		}
		l.temperature = kelvin
		below = up
	}
}

// The open top: glowing charcoal radiates at bareEmissivity, the flame over it gives back what a bed at flameKelvin loses but
// for the net emissivity of the parameters. The colder bed is then as that says; a bed that burns low and hot shines through
// its flame, which is thin (carbon dioxide and steam over a quarter of a metre: a tenth of a black body at most). That was
// chosen for the default of 0.2, where a hot bed comes to bareEmissivity; nothing was held against other values: below it goes
// straight to none, above a bare bed is the most, so that no calibration makes a top brighter than a black one.
const (
	bareEmissivity = 0.9
	flameKelvin    = 1050.0
	shinesThrough  = 3.5 // of the net emissivity, so that a top that gives nothing stays so
)

// topRadiation gives the J that the top of the burden at a height radiates in a step, no more than would bring it near the
// air. Of what shines through the flame the wall above returns the more, the deeper the burden lies.
func (s *Shaft) topRadiation(kelvin, capacity, height, dt float64) float64 {
	air, net := s.ambient.Temperature, min(s.params.TopEmissivity, bareEmissivity)
	black := func(k float64) float64 { return stefanBoltzmann * k * k * k * k }
	flow, slope := net*(black(kelvin)-black(air)), 4*net*black(kelvin)/kelvin
	if kelvin > flameKelvin {
		deep := max(0, s.geometry.Bore.Height-height) / s.geometry.Bore.Diameter(height)
		through := max(0, min(bareEmissivity-net, shinesThrough*net)) / (1 + deep)
		flow += through * (black(kelvin) - black(flameKelvin))
		slope += 4 * through * black(kelvin) / kelvin
	}
	area := s.wall.areaAt(height)
	return flow * area * dt / (1 + slope*area*dt/capacity)
}
