package shaft

import (
	"math"

	"chargehand/physics"
)

// Clay: heat stored per volume, J/m3/K (fired clay and sand 1.4-1.8 MJ, from memory, unverified), and the outside loss,
// W/m2/K (natural draught 5-8 and radiation 9.7 at 150 C, and some wind: assumed).
//
// The share of the heat that walls take is soft: published guesses of 15 to 25 % rest on models, no bloomery's loss has been
// measured, and the heat they divide by was itself restated from 32 to 30 kW gross. wall_k carries that doubt.
const (
	wallCapacity = 1.5e6
	outerLoss    = 20.0
	// liningMelts is where the clay of the wall runs, K: what comes in beyond that leaves with it as slag. It is what keeps
	// these furnaces from getting hotter than their lining: one with bellows went past 1500 C and its lining melted and
	// blocked the tuyeres (copper-smelting.com 2018/08/07). Assumed: clays without flux soften and run at 1200 to 1400 C.
	liningMelts = physics.ZeroCelsius + 1250
	// bareExchange couples the inside of the wall above the burden to the gas there, W/m2/K (free convection, round figure).
	bareExchange = 10.0
	// groundBeyond is how far below the last node the ground has the temperature of the air, m.
	groundBeyond = 0.1
	// hearthPacking is the heat the fines below the tuyere take up, J/m2/K: packingDepth of them at 1 MJ/m3/K (guess).
	hearthPacking = 1e6 * packingDepth
	packingDepth  = 0.05 // m
)

// wallModel is the geometry of the wall worked out: rings with their cells. It never changes once made.
type wallModel struct {
	rings int
	ring  [wallRings]wallRing
	area  [wallRings + 1]float64 // m2 of bore at the lower edge of each ring
	below side
}

// side is the wall round the hearth, from the tuyere down to the floor, by the m of depth: how much heat it lets out of the
// packing within it and how much it takes up with that. It is as thick as at the tuyere. What stands in earth loses less.
type side struct {
	floor float64 // m below the tuyere
	leads float64 // W/m/K from the mean of the packing to the air outside
	takes float64 // J/m/K of clay that warms with it: a third of it, as in a steady flow of heat
}

func newSide(g Geometry, p Params) side {
	in := g.Bore.Diameter(0) / 2
	out := in + g.WallBottom
	resistance := 1/(8*math.Pi*p.HearthConductivity) + math.Log(out/in)/(2*math.Pi*p.WallConductivity) + 1/(outerLoss*2*math.Pi*out)
	return side{floor: g.floor(), leads: 1 / resistance, takes: wallCapacity * math.Pi * (out*out - in*in) / 3}
}

// along gives how much of the way between two depths below the tuyere has the wall beside it, m.
func (w side) along(from, to float64) float64 { return max(0, min(to, w.floor)-from) }

func (w side) holds(from, to float64) float64 { return w.takes * w.along(from, to) }

// holdsAt and losesAt are of a node of the ground, the deepest first.
func (w side) holdsAt(k int) float64 { return w.takes * w.along(depthOf(k), depthOf(k)+groundDepth) }

func (w side) losesAt(k int) float64 { return w.leads * w.along(depthOf(k), depthOf(k)+groundDepth) }

// depthOf is how far below the tuyere a node of the ground begins, m.
func depthOf(k int) float64 { return packingDepth + groundDepth*float64(groundNodes-1-k) }

// groundHolds is what a node of the ground takes up, J/K.
func (m *wallModel) groundHolds(k int) float64 {
	return wallCapacity*groundDepth*m.areaAt(0) + m.below.holdsAt(k)
}

// areaAt gives the cross-section of the bore in m2 at a height, straight between ring edges.
func (m *wallModel) areaAt(z float64) float64 {
	x := max(0, z) / ringHeight
	i := min(int(x), wallRings-1)
	return m.area[i] + min(1, x-float64(i))*(m.area[i+1]-m.area[i])
}

type wallRing struct {
	innerArea float64            // m2
	outerArea float64            // m2
	radius    float64            // m, inside
	halfCell  float64            // m2K/W from the face to the middle of the first cell
	capacity  [wallNodes]float64 // J/K
	link      [wallNodes]float64 // W/K outwards from each cell; the last to the open air
}

func newWallModel(g Geometry, p Params) *wallModel {
	conductivity := p.WallConductivity
	m := &wallModel{below: newSide(g, p), rings: min(wallRings, max(1, int(math.Ceil(max(g.Bore.Height, g.Stack)/ringHeight-1e-9))))}
	for i := range m.area {
		m.area[i] = g.Bore.Area(float64(i) * ringHeight)
	}
	for i := range m.rings {
		z := (float64(i) + 0.5) * ringHeight
		r := &m.ring[i]
		r.radius = g.Bore.Diameter(z) / 2
		thickness := g.WallBottom + (g.WallTop-g.WallBottom)*min(1, z/g.Bore.Height)
		cell := thickness / wallNodes
		r.innerArea = 2 * math.Pi * r.radius * ringHeight
		r.outerArea = 2 * math.Pi * (r.radius + thickness) * ringHeight
		r.halfCell = r.radius * math.Log((r.radius+cell/2)/r.radius) / conductivity
		for k := range wallNodes {
			in, out := r.radius+cell*float64(k), r.radius+cell*float64(k+1)
			r.capacity[k] = wallCapacity * math.Pi * (out*out - in*in) * ringHeight
			middle := (in + out) / 2
			if k < wallNodes-1 {
				r.link[k] = 2 * math.Pi * conductivity * ringHeight / math.Log((middle+cell)/middle)
			} else {
				skin := math.Log(out/middle) / (2 * math.Pi * conductivity * ringHeight)
				r.link[k] = 1 / (skin + 1/(outerLoss*r.outerArea))
			}
		}
	}
	return m
}

// ringsOf gives the rings a layer touches.
func (m *wallModel) ringsOf(low, high float64) (first, last int) {
	first = min(m.rings-1, int(low/ringHeight))
	last = min(m.rings-1, max(first, int(high/ringHeight-1e-12)))
	return first, last
}

// wallContactOf gives a layer's exchange with the wall: heat = slope Tlayer - pull, in W, and by how much a watt of it pulls
// the layer's edge below its mean.
//
// The bed's own resistance towards its edge counts: with an even sink the profile across is a parabola, its mean a quarter
// radius above the edge (R/4k). Across the bed gas mixing adds to conduction (Peclet number 9, from memory).
func (s *Shaft) wallContactOf(w *work, l *layer, low, high, massFlux float64) (slope, pull, edge float64) {
	if !(high > low) {
		return 0, 0, 0
	}
	t := l.temperature
	across := s.bedConductivity(l) + massFlux*1200*l.lump/9 // 1200 J/kg/K: furnace gas
	contact := wallContact + 4*wallRadiation*stefanBoltzmann*t*t*t
	first, last := s.wall.ringsOf(low, high)
	area := 0.0
	for i := first; i <= last; i++ {
		r := &s.wall.ring[i]
		part := r.innerArea * ringShare(i, low, high)
		conductance := part / (r.radius/(4*across) + 1/contact + r.halfCell)
		slope += conductance
		pull += conductance * s.wallT[i][0]
		area += part
	}
	if !(area > 0) {
		return 0, 0, 0
	}
	return slope, pull, s.wall.ring[first].radius / (4 * across * area)
}

// ringShare gives how many ring heights of ring i a layer covers. What is heaped above the last ring touches no wall.
func ringShare(i int, low, high float64) float64 {
	from, to := max(low, float64(i)*ringHeight), min(high, float64(i+1)*ringHeight)
	return max(0, to-from) / ringHeight
}

// giveWall books the heat of a layer at a temperature on the rings beside it, and gives the sum in W.
func (s *Shaft) giveWall(w *work, low, high, slope, kelvin float64) (watts float64) {
	if !(slope > 0) {
		return 0
	}
	first, last := s.wall.ringsOf(low, high)
	for i := first; i <= last; i++ {
		// The rings share the layer's conductance by the length of each; they are alike enough for that.
		q := slope * ringShare(i, low, high) * ringHeight / (high - low) * (kelvin - s.wallT[i][0])
		w.wallHeat[i] += q
		watts += q
	}
	return watts
}

// stepWall conducts the heat outwards, ring by ring, implicitly.
func (s *Shaft) stepWall(w *work, dt float64) {
	air := s.ambient.Temperature
	above := s.topGas.temperature
	if s.topGas.moles() < 1e-9 {
		above = air
	}
	burden, perSecond := w.height, 1/dt
	for i := range s.wall.rings {
		r := &s.wall.ring[i]
		t := &s.wallT[i]
		bare := 0.0
		if z := float64(i) * ringHeight; z+ringHeight > burden {
			bare = bareExchange * r.innerArea * min(1, (z+ringHeight-burden)/ringHeight)
		}
		// Tridiagonal, eliminated from the inside out, with one division a node.
		var inverse, right [wallNodes]float64
		inverse[0] = 1 / (r.capacity[0]*perSecond + r.link[0] + bare)
		right[0] = r.capacity[0]*perSecond*t[0] + w.wallHeat[i] + bare*above
		for k := 1; k < wallNodes; k++ {
			stored := r.capacity[k] * perSecond
			factor := r.link[k-1] * inverse[k-1]
			inverse[k] = 1 / (stored + r.link[k] + r.link[k-1] - factor*r.link[k-1])
			right[k] = stored*t[k] + factor*right[k-1]
			if k == wallNodes-1 {
				right[k] += r.link[k] * air
			}
		}
		t[wallNodes-1] = right[wallNodes-1] * inverse[wallNodes-1]
		for k := wallNodes - 2; k >= 0; k-- {
			t[k] = (right[k] + r.link[k]*t[k+1]) * inverse[k]
		}
		s.ledger.WallLoss += dt * (r.link[wallNodes-1]*(t[wallNodes-1]-air) - bare*(above-t[0]))
		if t[0] > liningMelts {
			s.ledger.LiningLoss += r.capacity[0] * (t[0] - liningMelts)
			t[0] = liningMelts
		}
	}
}
