package doubt

import (
	"chargehand/model/entry"
	"chargehand/model/forge"
	"chargehand/model/house"
)

// grew: heat and hammer make no iron.
func grew(ev entry.Event, h house.State) (Doubt, bool) {
	off := func(id entry.UID, kg float64) (Doubt, bool) {
		p, _ := h.Piece(id)
		return Doubt{Said: kg, Against: float64(p.Mass.Value)}, forge.Grew(float64(p.Mass.Value), kg)
	}
	switch ev := ev.(type) {
	case entry.PieceWeighed:
		return off(ev.Piece, float64(ev.Mass))
	case entry.ForgeSession:
		for _, m := range ev.After {
			if d, found := off(m.Piece, float64(m.Mass)); found {
				return d, true
			}
		}
	case entry.HeatOver:
		for _, m := range ev.Pieces {
			if d, found := off(m.Piece, float64(m.After.Value)); found {
				return d, true
			}
		}
	}
	return Doubt{}, false
}

// holdsMore: no piece holds more than what it was made of.
func holdsMore(ev entry.Event, h house.State) (Doubt, bool) {
	p, ok := ev.(entry.Piece)
	if !ok || len(p.From) == 0 || !p.Mass.Known {
		return Doubt{}, false
	}
	if _, there := h.Piece(p.UID); there { // described again
		return Doubt{}, false
	}
	total := 0.0
	for _, from := range p.From {
		of, known := h.Piece(from.Piece)
		if !known || !of.Mass.Known {
			return Doubt{}, false
		}
		total += float64(of.Mass.Value)
	}
	return Doubt{Said: float64(p.Mass.Value), Against: total}, forge.Grew(total, float64(p.Mass.Value))
}

// denser: a bar heavier for its size than iron.
func denser(ev entry.Event, h house.State) (Doubt, bool) {
	density, known := 0.0, false
	switch ev := ev.(type) {
	case entry.Piece:
		kg := ev.Mass
		if was, there := h.Piece(ev.UID); there {
			kg = was.Mass
		}
		density, known = forge.DensityBySize(float64(kg.Value), ev.Size)
	case entry.PieceWeighed:
		density, known = forge.DensityInWater(ev)
	}
	return Doubt{Said: density, Against: forge.IronDensity}, known && forge.TooDense(density)
}

// printOff: per cent of something else, or a sum that is none.
func printOff(ev entry.Event, h house.State) (Doubt, bool) {
	p, ok := ev.(entry.Piece)
	if !ok {
		return Doubt{}, false
	}
	kg := float64(p.Mass.Value)
	if was, there := h.Piece(p.UID); there {
		kg, _ = was.First()
	}
	for _, printed := range p.Printed {
		if off, found := forge.CheckPrinted(kg, printed); found {
			return Doubt{Said: off.Said, Against: off.Is, Printed: off}, true
		}
	}
	return Doubt{}, false
}
