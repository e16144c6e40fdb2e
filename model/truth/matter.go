package truth

import (
	"math"
	"sync"

	"chargehand/physics"
)

// Heats of formation at 298 K in J/mol, and mean heat capacities from there to working heat in J/mol/K, of materials given
// by mass in J/kg/K (any handbook, rounded). Constant ones, so that the account of heat closes by itself; a flame of them is
// some tens of kelvin off one of true ones, far less than the furnace is drawn apart.
const (
	reference = 298.15

	heatCO, heatCO2       = -110.53e3, -393.51e3
	heatWater, heatSteam  = -285.83e3, -241.83e3
	heatFeO, heatHematite = -272.0e3, -412.1e3 // for each iron; hematite holds 1.5 oxygen

	capC, capFe, capO           = 20.0, 35.0, 22.0
	capWater, capMineral        = 75.0, 1100.0
	capVolatile                 = 1500.0
	capN2, capO2, capCO, capCO2 = 32.0, 34.0, 32.5, 52.0
	capSteam                    = 41.0
)

// oxideHeat is the heat of formation of iron with so much oxygen, J for each mol of iron: straight between metal, wustite
// and hematite.
func oxideHeat(perIron float64) float64 {
	if perIron <= 1 {
		return heatFeO * perIron
	}
	return heatFeO + (heatHematite-heatFeO)*(perIron-1)/0.5
}

// slice is a piece of one side of the burden: all charcoal and ore at one height and one temperature.
type slice struct {
	carbon   float64 // mol
	water    float64 // mol
	iron     float64 // mol
	oxygen   float64 // mol, on the iron
	volatile float64 // kg
	mineral  float64 // kg of gangue and ash
	silica   float64 // kg of that
	kelvin   float64

	laid float64 // mol of carbon when it was laid
	fuel float64 // m3 that its charcoal took up then
	ore  float64 // m3 that its ore adds
}

func (s *slice) volume() float64 {
	if s.laid <= 0 {
		return s.ore
	}
	return s.fuel*s.carbon/s.laid + s.ore
}

// capacity is J/K.
func (s *slice) capacity() float64 {
	return capC*s.carbon + capWater*s.water + capFe*s.iron + capO*s.oxygen + capVolatile*s.volatile + capMineral*s.mineral
}

// bound is the heat bound in it at 298 K, J.
func (s *slice) bound() float64 {
	h := heatWater * s.water
	if s.iron > 0 {
		h += s.iron * oxideHeat(s.oxygen/s.iron)
	}
	return h
}

// heat is all of it, J.
func (s *slice) heat() float64 { return (s.kelvin-reference)*s.capacity() + s.bound() }

// warm sets the temperature by the heat.
func (s *slice) warm(heat float64) {
	if c := s.capacity(); c > 0 {
		s.kelvin = reference + (heat-s.bound())/c
	}
}

// take joins another slice to this one.
func (s *slice) take(o *slice) {
	heat := s.heat() + o.heat()
	s.carbon, s.water, s.iron, s.oxygen = s.carbon+o.carbon, s.water+o.water, s.iron+o.iron, s.oxygen+o.oxygen
	s.volatile, s.mineral, s.silica = s.volatile+o.volatile, s.mineral+o.mineral, s.silica+o.silica
	s.laid, s.fuel, s.ore = s.laid+o.laid, s.fuel+o.fuel, s.ore+o.ore
	s.warm(heat)
}

// part is a share of it, which stays in it.
func (s slice) part(share float64) slice {
	p := s
	for _, v := range []*float64{&p.carbon, &p.water, &p.iron, &p.oxygen, &p.volatile, &p.mineral, &p.silica, &p.laid, &p.fuel, &p.ore} {
		*v *= share
	}
	return p
}

// stream is the gas on its way up, mol/s but for the volatiles, kg/s.
type stream struct {
	n2, o2, co, co2, steam, volatile, kelvin float64
}

func (g *stream) capacity() float64 {
	return capN2*g.n2 + capO2*g.o2 + capCO*g.co + capCO2*g.co2 + capSteam*g.steam + capVolatile*g.volatile
}

func (g *stream) heat() float64 {
	return (g.kelvin-reference)*g.capacity() + heatCO*g.co + heatCO2*g.co2 + heatSteam*g.steam
}

// monoxide is the share of CO in the carbon gases.
func (g *stream) monoxide() float64 {
	if all := g.co + g.co2; all > 0 {
		return g.co / all
	}
	return 0
}

// tableStep and tableMost are in K.
const tableStep, tableMost = 5.0, 2600.0

// balances are the equilibria by temperature: CO in the carbon gases over carbon, and where magnetite and wustite lose
// their oxygen.
type balances struct{ carbon, magnetite, wustite []float64 }

// equilibria are read from the tables of thermodynamics, the one thing that this furnace and the solver have in common.
var equilibria = sync.OnceValue(func() balances {
	var b balances
	const gases = 0.35 // bar of carbon gases in what air makes of carbon
	for t := 0.0; t <= tableMost; t += tableStep {
		kelvin := math.Max(t, 400)
		k := physics.BoudouardConstant(kelvin)
		// x^2 gases / (1-x) = k
		x := (-k + math.Sqrt(k*k+4*k*gases)) / (2 * gases)
		b.carbon = append(b.carbon, math.Min(1, x))
		b.magnetite = append(b.magnetite, physics.MagnetiteWustite.CO(kelvin))
		b.wustite = append(b.wustite, math.Max(physics.WustiteIron.CO(kelvin), physics.MagnetiteIron.CO(kelvin)))
	}
	return b
})

func at(table []float64, kelvin float64) float64 {
	i := int(kelvin / tableStep)
	return table[max(0, min(len(table)-1, i))]
}
