package zones

import "chargehand/physics"

// Heats of formation at 298 K in J/mol and mean heat capacities up to working heat in J/mol/K, or J/kg/K of what is given by
// mass (any handbook, rounded). Constant ones, so that the account of heat closes by itself.
const (
	cold = 298.15 // K: where heat is counted from, and what comes in has

	formCO, formCO2, formSteam, formWater = -110.5e3, -393.5e3, -241.8e3, -285.8e3
	formOxide                             = -275e3 // of each mol of oxygen bound to iron: hematite has 275, wustite 266 to 272

	heatN2, heatO2, heatCO, heatCO2, heatSteam, heatVapour = 32.5, 34.5, 33.0, 52.0, 42.0, 2200.0
	heatC, heatFe, heatO, heatMineral, heatWater           = 21.0, 37.0, 22.0, 1100.0, 75.0

	massC, massO, massWater = 0.012011, 0.015999, 0.018015
)

// packet is what is left of one charge in one zone: carbon, water, iron and the oxygen bound to it in mol, the rest in kg.
type packet struct {
	charge        int
	carbon, water float64
	iron, oxygen  float64
	ash, vapour   float64 // what burns off charcoal beside its carbon, as it is heated
	silica, rest  float64 // of the ore
	bulk          float64 // kg of carbon that fill a cubic metre
}

// oreSolid is kg/m3 that ore adds to the room of the burden: lumps of some 3000, with their share of gaps.
const oreSolid = 2600.0

func (p *packet) volume() float64 {
	ore := p.iron*physics.MolarMassFe + p.oxygen*massO + p.silica + p.rest
	return p.carbon*massC/p.bulk + ore/oreSolid
}

// capacity is J/K.
func (p *packet) capacity() float64 {
	return p.carbon*heatC + p.water*heatWater + p.iron*heatFe + p.oxygen*heatO + heatMineral*(p.ash+p.vapour+p.silica+p.rest)
}

// formed is the heat bound in it at 298 K, J.
func (p *packet) formed() float64 { return p.water*formWater + p.oxygen*formOxide }

// heat is all of it at a temperature, J.
func (p *packet) heat(kelvin float64) float64 { return p.formed() + p.capacity()*(kelvin-cold) }

// split takes a share off it.
func (p *packet) split(share float64) packet {
	off := *p
	for _, v := range off.amounts() {
		*v *= share
	}
	for _, v := range p.amounts() {
		*v *= 1 - share
	}
	return off
}

func (p *packet) join(o packet) {
	to, from := p.amounts(), o.amounts()
	for i := range to {
		*to[i] += *from[i]
	}
}

func (p *packet) amounts() [8]*float64 {
	return [8]*float64{&p.carbon, &p.water, &p.iron, &p.oxygen, &p.ash, &p.vapour, &p.silica, &p.rest}
}

// gas on its way up: mol/s, and kg/s of what charcoal gives off; at a temperature.
type gas struct {
	n2, o2, co, co2, steam, vapour, kelvin float64
}

// heat is J/s.
func (g *gas) heat() float64 {
	return g.co*formCO + g.co2*formCO2 + g.steam*formSteam + g.capacity()*(g.kelvin-cold)
}

func (g *gas) capacity() float64 {
	return g.n2*heatN2 + g.o2*heatO2 + g.co*heatCO + g.co2*heatCO2 + g.steam*heatSteam + g.vapour*heatVapour
}

// monoxide is the share of CO in the carbon gases; 0 without any.
func (g *gas) monoxide() float64 {
	if c := g.co + g.co2; c > 0 && g.o2 < 0.05*c {
		return g.co / c
	}
	return 0
}
