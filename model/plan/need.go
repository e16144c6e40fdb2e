package plan

import (
	"chargehand/model/entry"
	"chargehand/physics"
)

// Need is something that a plan takes.
type Need string

// What a plan takes. Masses are dry.
const (
	NeedOreRoasted    Need = "ore_roasted"    // kg, crushed and ready
	NeedOreRaw        Need = "ore_raw"        // kg, as dug but dry
	NeedCharcoal      Need = "charcoal"       // kg, less fines
	NeedCharcoalForge Need = "charcoal_forge" // kg
	NeedWood          Need = "wood"           // kg dry, were all the charcoal burnt for it
	NeedClay          Need = "clay"           // kg of dry mix
	NeedHours         Need = "hours"          // of all the smelts
	NeedHands         Need = "hands"          // people at the furnace
)

// Needed is how much of it.
type Needed struct {
	Need   Need
	Band   physics.Band
	Point  bool // the middle alone: a certainty was asked for, and the band is in it
	Unsaid bool // charcoal of a forge of which nobody said what it burns
	Known  bool
	Unit   string
	Basis  entry.Basis
}

// Wide tells whether the ends of a need lie further apart than a factor of thirty: then it is
// told in words.
func (n Needed) Wide() bool {
	return n.Known && !n.Point && n.Band.P10 > 0 && n.Band.P90 > 30*n.Band.P10
}

// Short is a need that what there is does not cover.
type Short struct {
	Need Need
	Take float64 // kg dry, the middle
	Left float64 // kg dry
}

// Shares that lead from one need back to another.
var (
	// RoastedOfRaw is what roasting, washing and sorting leave: 0.6 to 0.9; pure
	// goethite leaves 0.90, one measured bog ore 0.61 (4.8 to 2.95 kg, L'Anse aux Meadows).
	RoastedOfRaw = physics.Band{P10: 0.6, P50: 0.75, P90: 0.9}
	// CharcoalOfWood is by mass on dry wood: 10 % of a measured mound to 25 % of good
	// pits (FAO Forestry Paper 41, 1983, from memory).
	CharcoalOfWood = physics.Band{P10: 0.10, P50: 0.15, P90: 0.25}
	// ForgeCharcoal is kg of charcoal for each kg of bar: no measured figure was found
	// (assumed, between a few kg of a quick hand and the 100 kg that Crew 1991 gives for
	// everything from the ore on).
	ForgeCharcoal = physics.Band{P10: 5, P50: 15, P90: 45}
	// Hands were two with a blower to some four at published smelts; one alone has done
	// it in 13 hours (common practice).
	Hands = physics.Band{P10: 2, P50: 3, P90: 5}
	// CharcoalOfOre is what whole published smelts took per kg of ore: 1.2 to 3.1, of 95
	// smelts of one team 2.0 in the mean (Markewitz). The spread of what the plan reckons
	// is taken from it.
	CharcoalOfOre = physics.Band{P10: 1.2, P50: 2.0, P90: 3.1}
)

// WoodFor is the dry wood that so much charcoal takes, kg.
func WoodFor(charcoal float64) physics.Band {
	return physics.Exact(charcoal).Over(CharcoalOfWood)
}

// needs are those of all the smelts of the offer that is taken.
func (p Plan) needs() []Needed {
	o, ok := p.Offer()
	way, _ := p.Usual()
	n := float64(o.Smelts)
	known := func(need Need, b physics.Band, unit string, basis entry.Basis) Needed {
		return Needed{Need: need, Band: b, Known: ok, Unit: unit, Basis: basis}
	}
	point := func(need Need, kg float64, basis entry.Basis) Needed {
		return Needed{Need: need, Band: physics.Exact(kg), Point: true, Known: ok, Unit: "kg", Basis: basis}
	}
	on := entry.BasisAssumed
	if len(p.Yields) > 0 {
		on = entry.BasisEstimated
	}
	ore := n * o.Ore
	charcoal := physics.LogNormal(max(n*way.Charcoal, 1e-9), CharcoalOfOre.RelSD())
	clay := known(NeedClay, p.Shaft.Clay(p.Furnace), "kg", entry.BasisGuessed)
	switch {
	case p.Built:
		clay.Band, clay.Basis = physics.Exact(0), entry.BasisMeasured
	case p.Furnace.Wall.Known && !p.Shaft.Guessed:
		clay.Basis = entry.BasisEstimated
	}
	forging, forgingOn := p.forging()
	forge := known(NeedCharcoalForge, forging, "kg", forgingOn)
	forge.Unsaid = p.Forges() && p.Forge == ""
	hours := p.Hours(way)
	return []Needed{
		point(NeedOreRoasted, ore, on),
		point(NeedOreRaw, ore/RoastedOfRaw.P50, entry.BasisAssumed),
		known(NeedCharcoal, charcoal, "kg", p.Basis),
		forge,
		known(NeedWood, charcoal.Over(CharcoalOfWood), "kg", entry.BasisAssumed),
		clay,
		known(NeedHours, physics.Band{P10: n * hours.P10, P50: n * hours.P50, P90: n * hours.P90}, "h", p.Basis),
		known(NeedHands, Hands, "", entry.BasisAssumed),
	}
}

// Forges tells whether what is wanted is forged.
func (w Want) Forges() bool { return w.What == entry.Billet || w.What == entry.Bar }

// forging is the charcoal that the forge takes; a bloom as it is takes none, nor does one
// forged over coal or gas. Where nobody said what burns there, it may be charcoal.
func (p Plan) forging() (physics.Band, entry.Basis) {
	if p.Forges() && (p.Forge == "" || p.Forge == entry.ForgeCharcoal) {
		return ForgeCharcoal.Scale(p.Kg), entry.BasisGuessed
	}
	return physics.Exact(0), entry.BasisMeasured
}

// short are the needs that what there is does not cover. What nobody keyed is not
// compared, nor is what rests on a guess. Wood is short only for the charcoal that is, and ore
// to be roasted for the roasted ore that is.
func (p Plan) short() []Short {
	var all []Short
	burn, roast := 0.0, 0.0 // kg of charcoal and of roasted ore that is not there
	for _, n := range p.Needs {
		left, counted := p.Left[n.Need]
		take := n.Band.P50
		if _, weighed := p.Left[NeedCharcoal]; n.Need == NeedWood && weighed {
			take = WoodFor(burn).P50
		}
		if _, weighed := p.Left[NeedOreRoasted]; n.Need == NeedOreRaw && weighed {
			take = roast / RoastedOfRaw.P50
		}
		if counted && n.Known && n.Basis != entry.BasisGuessed && left < take {
			all = append(all, Short{n.Need, take, left})
			switch n.Need {
			case NeedCharcoal:
				burn = take - left
			case NeedOreRoasted:
				roast = take - left
			}
		}
	}
	return all
}
