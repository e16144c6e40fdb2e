package zones

import (
	"math"

	"chargehand/physics"
)

// The zones, from the tuyere up.
const (
	burning = iota
	reducing
	warming
	zoneCount
)

// face is how thick the hot face of the wall is, which has the heat of its zone, m (assumed).
const face = 0.01

// zone is a stretch of the shaft of one temperature, with its wall.
type zone struct {
	packets []packet // the lowest first
	height  float64  // m that it takes when it is full; the uppermost has no end
	area    float64  // m2 of its wall
	faceJK  float64  // J/K of the hot face
	wallJK  float64  // J/K of the wall behind it
	wall    float64  // K of it
	heat    float64  // J of packets and face together, formation counted
}

func (z *zone) volume() (v float64) {
	for i := range z.packets {
		v += z.packets[i].volume()
	}
	return v
}

func (z *zone) capacity() float64 {
	c := z.faceJK
	for i := range z.packets {
		c += z.packets[i].capacity()
	}
	return c
}

func (z *zone) kelvin() float64 {
	formed := 0.0
	for i := range z.packets {
		formed += z.packets[i].formed()
	}
	return cold + (z.heat-formed)/z.capacity()
}

// full is how full of burden it is, 0 to 1.
func (z *zone) full(floor float64) float64 {
	if z.height <= 0 {
		return 0
	}
	return math.Min(1, z.volume()/(floor*z.height))
}

func (z *zone) carbon() (mol float64) {
	for i := range z.packets {
		mol += z.packets[i].carbon
	}
	return mol
}

// burn takes carbon, each packet by its share.
func (z *zone) burn(mol float64) {
	all := z.carbon()
	if all <= 0 {
		return
	}
	keeps := 1 - mol/all
	for i := range z.packets {
		z.packets[i].carbon *= keeps
	}
}

// lay puts a packet on top, with its heat.
func (z *zone) lay(p packet, heat float64) {
	z.heat += heat
	if n := len(z.packets); n > 0 && z.packets[n-1].charge == p.charge {
		z.packets[n-1].join(p)
		return
	}
	z.packets = append(z.packets, p)
}

// sinkInto lets so many m3 from the bottom of this zone down into the one below, with their heat.
func (z *zone) sinkInto(below *zone, room float64) {
	kelvin := z.kelvin()
	for room > 1e-9 && len(z.packets) > 0 {
		v := z.packets[0].volume()
		var p packet
		if v <= room {
			p = z.packets[0]
			z.packets = z.packets[1:]
		} else {
			p = z.packets[0].split(room / v)
		}
		room -= v
		h := p.heat(kelvin)
		z.heat -= h
		below.lay(p, h)
	}
}

// ignites is the heat above which charcoal burns in air, K (from memory, 350 to 450 C).
const ignites = 700.0

// passes lets gas rise through the zone for dt s: what it does to the burden, and its heat. Reduces tells whether ore is reduced
// here.
func (z *zone) passes(g gas, d *Drawn, floor, dt float64, reduces bool) gas {
	kelvin, full, came := z.kelvin(), z.full(floor), g.kelvin
	z.heat += dt * g.heat()
	z.dries(&g, kelvin, dt)
	left := z.carbon() / dt
	// Oxygen burns what glows, to dioxide; a thin bed lets some of it by.
	if kelvin > ignites {
		burnt := math.Min(g.o2*(1-math.Exp(-full/0.12)), 0.9*left)
		g.o2, g.co2 = g.o2-burnt, g.co2+burnt
		left -= burnt
		z.burn(burnt * dt)
	}
	if reduces {
		z.reduce(&g, d, kelvin, dt)
	}
	// Dioxide takes up carbon by the heat of the zone.
	share := (1 - d.PassesBy) / (1 + math.Exp(-math.Log(3)*(kelvin-d.SolutionHalf)/d.SolutionWidth)) * math.Sqrt(full)
	taken := math.Min(g.co2*share, 0.9*left)
	g.co2, g.co = g.co2-taken, g.co+2*taken
	z.burn(taken * dt)
	keeps := d.GasKeeps + (0.8-d.GasKeeps)*(1-full)
	if !reduces { // before the tuyere air and charcoal are one
		keeps = 0.8 * (1 - full)
	}
	g.kelvin = kelvin + keeps*(came-kelvin)
	z.heat -= dt * g.heat()
	return g
}

// dries drives water and what else leaves charcoal off.
func (z *zone) dries(g *gas, kelvin, dt float64) {
	share := math.Min(1, math.Max(0, kelvin-373)/600*dt/120)
	chars := 0.0
	if kelvin > 650 {
		chars = math.Min(1, dt/180)
	}
	for i := range z.packets {
		p := &z.packets[i]
		w, v := p.water*share, p.vapour*chars
		p.water, p.vapour = p.water-w, p.vapour-v
		g.steam, g.vapour = g.steam+w/dt, g.vapour+v/dt
	}
}

// reduce takes oxygen off the ore by time at temperature, as far as the gas can: to metal, to wustite, or not at all.
func (z *zone) reduce(g *gas, d *Drawn, kelvin, dt float64) {
	least := 1.5
	switch co := g.monoxide(); {
	case kelvin < 800:
	case co > physics.WustiteIron.CO(kelvin):
		least = 0
	case co > physics.MagnetiteWustite.CO(kelvin):
		least = 1
	}
	if least == 1.5 || g.co <= 0 {
		return
	}
	pace := 1.5 / (60 * d.ReductionMinutes) * math.Exp2((math.Min(kelvin, 1400)-1173.15)/d.ReductionDoubles) * dt // of each mol of iron
	gives := func(p *packet) float64 { return math.Max(0, math.Min(pace*p.iron, p.oxygen-least*p.iron)) }
	all := 0.0
	for i := range z.packets {
		all += gives(&z.packets[i])
	}
	if all <= 0 {
		return
	}
	part := math.Min(1, 0.5*g.co*dt/all)
	for i := range z.packets {
		p := &z.packets[i]
		p.oxygen -= part * gives(p)
	}
	g.co, g.co2 = g.co-part*all/dt, g.co2+part*all/dt
}
