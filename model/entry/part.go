package entry

import "slices"

// What says which material a part of a charge, a measure or a lot is.
type What string

// The materials that go into a furnace.
const (
	Charcoal     What = "charcoal"
	Ore          What = "ore"
	SeedSlag     What = "seed_slag"     // iron-rich slag put in first to start the slag bowl
	ReturnedSlag What = "returned_slag" // slag of this smelt put back in at the top
	Fragments    What = "fragments"     // bits of iron of an earlier smelt
	Flux         What = "flux"
)

// Part is one material of a charge or a fill: "four scoops of ore", "1.9 kg of
// charcoal". A mass given here holds for good; else the mass is count times
// what the measure weighs; a part with neither is in the furnace, but of
// unknown mass.
type Part struct {
	What    What            `json:"what"`
	Lot     string          `json:"lot,omitempty"` // the lot's uid, else its name
	Measure string          `json:"measure,omitempty"`
	Count   Maybe[Count]    `json:"count,omitzero"`
	Mass    Maybe[Kilogram] `json:"mass_kg,omitzero"`
}

// None tells whether the part says in so many words that nothing of the
// material went in ("0" in a log, as against a blank).
func (p Part) None() bool {
	return (p.Mass.Known && p.Mass.Value == 0) || (!p.Mass.Known && p.Count.Known && p.Count.Value == 0)
}

// Recorded tells whether the part holds some of its material for certain: a
// mass or a count above nought. A part of unknown mass and count does not.
func (p Part) Recorded() bool { return p.Mass.Positive() || (!p.Mass.Known && p.Count.Positive()) }

// Parts is the content of one charge or fill.
type Parts []Part

// Holds tells whether any part holds some of the material for certain.
func (ps Parts) Holds(w What) bool {
	for _, p := range ps {
		if p.What == w && p.Recorded() {
			return true
		}
	}
	return false
}

// PartsIn is what an event puts into the furnace.
func PartsIn(ev Event) Parts {
	switch ev := ev.(type) {
	case Fill:
		return ev.Parts
	case Charge:
		return ev.Parts
	}
	return nil
}

// LotsIn are the lots that an event names for what goes in with it or is to go in: by
// uid, else by name.
func LotsIn(ev Event) (lots []string) {
	parts := PartsIn(ev)
	if again, ok := ev.(AgainFromHere); ok {
		ev = again.Recipe()
	}
	if r, ok := ev.(Recipe); ok {
		parts = r.Next
		for _, step := range r.Ramp {
			parts = append(parts[:len(parts):len(parts)], step.Parts...)
		}
	}
	for _, p := range parts {
		if p.Lot != "" && !slices.Contains(lots, p.Lot) {
			lots = append(lots, p.Lot)
		}
	}
	return lots
}

// Count is how many measures of a material the charge holds, over all parts
// that were counted, and whether any was.
func (ps Parts) Count(w What) (Count, bool) {
	var n Count
	var any bool
	for _, p := range ps {
		if p.What == w && p.Count.Known {
			n += p.Count.Value
			any = true
		}
	}
	return n, any
}

// Measure is a bucket, scoop, bag or bowl with a name and, once it was
// weighed, the mass of what one of it holds. Without a mass every count of it
// is of unknown mass until it is weighed.
type Measure struct {
	Name    string          `json:"name"`
	What    What            `json:"what"`
	Mass    Maybe[Kilogram] `json:"mass_kg,omitzero"`
	Guessed bool            `json:"guessed,omitempty"` // a starter's or a usual mass, never weighed here
	Volume  Maybe[Litre]    `json:"volume_l,omitzero"`
	UID     UID             `json:"uid,omitempty"`
}

// ID names the measure: its uid, or its name where it has none.
func (m Measure) ID() UID { return m.UID.or(m.Name) }

// Lot is a named store of one material with what is known of it. Shares of
// moisture are on the dry mass; shares of ash, volatiles and carbon are of the
// dry mass; iron is of the dry ore.
type Lot struct {
	Name        string             `json:"name"`
	What        What               `json:"what"`
	Mass        Maybe[Kilogram]    `json:"mass_kg,omitzero"`
	Moisture    Maybe[Share]       `json:"moisture,omitzero"`
	Ash         Maybe[Share]       `json:"ash,omitzero"`
	Volatiles   Maybe[Share]       `json:"volatiles,omitzero"`
	Carbon      Maybe[Share]       `json:"carbon,omitzero"`
	Iron        Maybe[Share]       `json:"iron,omitzero"`
	BulkDensity Maybe[KgPerCubicM] `json:"bulk_density_kg_m3,omitzero"`
	Lump        Maybe[Millimetre]  `json:"lump_mm,omitzero"` // mean size of charcoal by mass
	Note        string             `json:"note,omitempty"`
	UID         UID                `json:"uid,omitempty"`
	Mix         string             `json:"mix,omitempty"` // of an ore, by which smelts are compared; "again" of another has the other's
	Origin      string             `json:"origin,omitempty"`
	Material    Material           `json:"material,omitempty"`
	Stacked     Maybe[CubicMetre]  `json:"stacked_m3,omitzero"`
	Species     string             `json:"species,omitempty"` // of wood or charcoal
	Sizes       []SizeShare        `json:"sizes,omitempty"`
	Assay       *Assay             `json:"assay,omitempty"` // as it stood when a smelt was lit
	Signs       []OreSign          `json:"signs,omitempty"` // of ore, as seen in the field and after roasting
	Raw         bool               `json:"raw,omitempty"`   // ore that was not roasted, as it stood when a smelt was lit
}

// SizeShare is the share of a lot, by mass, that stays over a sieve.
type SizeShare struct {
	Over  Millimetre `json:"over_mm"`
	Share Share      `json:"share"`
}

// OreSign is what ore shows without a laboratory.
type OreSign string

// The signs of ore: its colour, how it feels, its weight for its size, and what a magnet does
// once it was roasted.
const (
	SignDarkRed  OreSign = "dark red"
	SignBrown    OreSign = "brown"        // with a little green
	SignBlack    OreSign = "black earthy" // and loose
	SignSticky   OreSign = "sticky"       // between the teeth, like resin
	SignGritty   OreSign = "gritty"       // sand in it
	SignHeavy    OreSign = "heavy"
	SignLight    OreSign = "light"
	SignMagnetic OreSign = "magnetic"
	SignNoMagnet OreSign = "not magnetic"
)

// ID names the lot: its uid, or its name where it has none.
func (l Lot) ID() UID { return l.UID.or(l.Name) }

// Of is the material that a lot is of; a lot of the first version says what part
// of a charge it is.
func (l Lot) Of() Material {
	switch {
	case l.Material != "":
		return l.Material
	case l.What == SeedSlag, l.What == ReturnedSlag:
		return LotIronSlag
	}
	return Material(l.What) // the words are the same
}

// Material is what a lot is of.
type Material string

// The materials of the stores.
const (
	LotOre       Material = "ore"
	LotCharcoal  Material = "charcoal"
	LotWood      Material = "wood"
	LotSand      Material = "sand"
	LotClay      Material = "clay"
	LotIronSlag  Material = "iron_slag"
	LotFragments Material = "fragments"
	LotFlux      Material = "flux"
)

// KgPerCubicM is a bulk density.
type KgPerCubicM float64
