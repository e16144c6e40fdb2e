package solve

import (
	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/model/ore"
	"chargehand/physics"
	"chargehand/physics/shaft"
)

// seedSlag is slag put back into a furnace, by mass: near fayalite with some
// free iron oxide, as published early slags are (assumed).
var seedSlag = physics.Oxides{FeO: 0.65, SiO2: 0.25, Al2O3: 0.06, CaO: 0.04}

// material is one part of a fill or charge as the solver takes it.
type material struct {
	what                        entry.What
	kg                          float64 // as charged
	unknown                     bool    // some of it was not weighed
	moisture, carbon, ash, iron float64 // of charcoal and ore; see physics.Charcoal and physics.OreAssay
	bulk                        float64 // kg/m3 of dry charcoal
	lump                        float64 // m, of charcoal
	raw                         bool    // ore that was not roasted
	usual                       bool    // ore that nobody assayed
}

// materialOf takes one part: its mass by its measure, the rest by its lot. The
// moisture is that between its mass as charged and dry.
func materialOf(c *fold.Timeline, irons Irons, p entry.Part, l fold.Line) material {
	total, lot := c.PartOf(p, l.At)
	lot = irons.Of(lot)
	usual := physics.DefaultCharcoal()
	m := material{
		what: p.What, kg: total.Charged.Kg, unknown: total.Charged.Unknown, bulk: c.Bed().CharcoalBulk,
		carbon: float64(lot.Carbon.Or(entry.Share(usual.Carbon))), ash: float64(lot.Ash.Or(entry.Share(usual.Ash))),
		iron: float64(lot.Iron.Or(entry.Share(ore.Iron(!lot.Raw, lot.Signs).P50))), moisture: usual.Moisture, raw: lot.Raw,
		usual: p.What == entry.Ore && !lot.Iron.Known, lump: shaft.DefaultLump,
	}
	if lot.Lump.Positive() {
		m.lump = shaft.BedLump(float64(lot.Lump.Value) / 1000)
	}
	if total.Dry.Kg > 0 {
		m.moisture = max(0, total.Charged.Kg/total.Dry.Kg-1)
	}
	if lot.Volatiles.Known && !lot.Carbon.Known {
		m.carbon = max(0, 1-m.ash-float64(lot.Volatiles.Value))
	}
	return m
}

// bed is how the burden packs with this charcoal.
func (m material) bed() physics.Bed {
	b := physics.DefaultBed()
	if m.bulk > 0 {
		b.CharcoalBulk = m.bulk
	}
	return b
}

// lot describes the material to the solver. A lot whose label cannot be true
// (more iron than any oxide holds, carbon and ash above one) is an error.
func (m material) lot() (shaft.Lot, error) {
	switch m.what {
	case entry.Charcoal:
		// Ungraded charcoal of a fill is taken as graded too.
		return shaft.CharcoalLot(physics.Charcoal{Moisture: m.moisture, Carbon: m.carbon, Ash: m.ash}, m.bed(), m.lump)
	case entry.Ore:
		return shaft.OreLot(shaft.OreAssay{Mineral: m.mineral(), Iron: m.iron, Moisture: m.moisture}, m.bed())
	case entry.Fragments:
		return shaft.FragmentLot(m.bed())
	case entry.Flux: // taken as limestone or shell; sand would stiffen where this thins
		return shaft.OreLot(shaft.OreAssay{Mineral: physics.Hematite, Calcite: 1}, m.bed())
	default:
		return shaft.SlagLot(seedSlag, m.bed())
	}
}

// mineral is that of an ore: of a roasted one the first that can hold so much iron, of a raw one that of
// bog ore as dug, which gives off its bound water in the shaft.
func (m material) mineral() physics.Mineral {
	of := []physics.Mineral{physics.Hematite, physics.Magnetite}
	if m.raw {
		of = append([]physics.Mineral{physics.Goethite}, of...)
	}
	for _, mineral := range of {
		if physics.CheckIronShare(m.iron, mineral) == nil {
			return mineral
		}
	}
	return physics.Wustite
}

// carbonToBurn is the carbon in kg that the blast burns of it.
func (m material) carbonToBurn() float64 {
	if m.what != entry.Charcoal {
		return 0
	}
	return physics.Charcoal{Moisture: m.moisture, Carbon: m.carbon, Ash: m.ash}.CarbonMass(m.kg)
}

// room is what charcoal takes up in the shaft, in m3.
func (m material) room() float64 { return m.kg / (1 + m.moisture) / m.bed().CharcoalBulk }
