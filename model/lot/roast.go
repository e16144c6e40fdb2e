package lot

import (
	"chargehand/model/entry"
	"chargehand/model/house"
	"chargehand/physics"
)

// Roast is a roast that gave a lot, as it was weighed.
type Roast struct {
	In, Out  float64 // kg, as weighed
	Water    float64 // share of the weight that went in
	Lost     float64 // share of it that is gone
	Expected [2]float64
}

// What a full roast drives off beside the free water, as shares of the dry ore: all bound
// water of goethite (10.14 % by its formula), and up to half a per cent and one of roots
// and peat (assumed).
var bound = [2]float64{physics.Goethite.RoastLoss(), physics.Goethite.RoastLoss() + 0.015}

// RoastOf is the last roast that gave a lot and was weighed before and after, with the
// water of what went in, as said with it or as its lot stands.
func RoastOf(h house.State, lines []house.Line, id entry.UID) (Roast, bool) {
	for i := len(lines) - 1; i >= 0; i-- {
		d, ok := lines[i].Event.(entry.Deed)
		if !ok || lines[i].Struck() || d.Does != entry.Roasted {
			continue
		}
		var r Roast
		gives, water := false, 0.0
		known := true
		for _, a := range d.In {
			from, _ := h.Lot(string(a.Lot))
			m := from.Moisture
			if a.Moisture.Known {
				m = a.Moisture
			}
			known = known && a.Mass.Known && m.Known
			r.In += float64(a.Mass.Value)
			water += float64(a.Mass.Value) * physics.OfWeight(float64(m.Value))
		}
		for _, a := range d.Out {
			gives = gives || a.Lot == id
			known = known && a.Mass.Known
			r.Out += float64(a.Mass.Value)
		}
		if !gives || !known || r.In <= 0 {
			continue
		}
		r.Water = water / r.In
		r.Lost = 1 - r.Out/r.In
		for i, b := range bound {
			r.Expected[i] = r.Water + (1-r.Water)*b
		}
		return r, true
	}
	return Roast{}, false
}

// Through is how a roast came out.
type Through string

// How a roast can come out.
const (
	RoastedThrough Through = "through"
	HalfRoasted    Through = "half" // or damp still
	LostMore       Through = "more" // dust was lost, or it was wetter than said
)

// offBy is what weighing and a sample's moisture are out by (assumed).
const offBy = 0.02

// Through tells how it came out.
func (r Roast) Through() Through {
	switch {
	case r.Lost < r.Expected[0]-offBy:
		return HalfRoasted
	case r.Lost > r.Expected[1]+offBy:
		return LostMore
	}
	return RoastedThrough
}
