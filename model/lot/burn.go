package lot

import (
	"chargehand/model/entry"
	"chargehand/model/house"
	"chargehand/physics"
)

// Burn is a charcoal burn as it was weighed: charcoal less its fines for each kg of wood.
type Burn struct {
	Wood, Charcoal float64 // kg, as weighed
	Brands, Fines  float64 // kg that came out with it: pieces not burnt through, and what crumbled
	OnWet, OnDry   float64 // charcoal a kg of wood, as it lay and dry
	Dry            bool    // the second is known
}

// BurnOf is what a deed says of a charcoal burn that was weighed.
func BurnOf(h house.State, d entry.Deed) (b Burn, ok bool) {
	dry := 0.0
	b.Dry = true
	for _, a := range d.In {
		from, _ := h.Lot(string(a.Lot))
		if from.Of() != entry.LotWood || !a.Mass.Known {
			return Burn{}, false
		}
		m := from.Moisture
		if a.Moisture.Known {
			m = a.Moisture
		}
		b.Dry = b.Dry && m.Known
		b.Wood += float64(a.Mass.Value)
		dry += float64(a.Mass.Value) * (1 - physics.OfWeight(float64(m.Value)))
	}
	for _, a := range d.Out {
		if !a.Mass.Known {
			return Burn{}, false
		}
		switch to, _ := h.Lot(string(a.Lot)); {
		case to.Of() == entry.LotWood:
			b.Brands += float64(a.Mass.Value)
		case to.Fines():
			b.Fines += float64(a.Mass.Value)
		default:
			b.Charcoal += float64(a.Mass.Value)
		}
	}
	if d.Does != entry.Burnt || b.Wood <= 0 || b.Charcoal <= 0 {
		return Burn{}, false
	}
	b.OnWet, b.OnDry = b.Charcoal/b.Wood, b.Charcoal/max(dry, 1e-9)
	return b, true
}
