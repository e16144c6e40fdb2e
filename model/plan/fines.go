package plan

import (
	"math"

	"chargehand/model/entry"
	"chargehand/model/house"
)

// Chargeable is what is left of a material dry, less the fines that are still in it: of
// charcoal that was never sieved as large a share as fell through own sieves so far. Where no
// sieving was weighed none is taken off. Short is by how much lots of it are below nothing,
// which does not lessen the others.
func Chargeable(h house.State, m entry.Material) (left house.Mass, short float64, any bool) {
	left, short, any = h.Left(m)
	if m != entry.LotCharcoal || !any {
		return left, short, any
	}
	share, known := FinesOf(h)
	if !known {
		return left, short, any
	}
	apart := finesApart(h)
	for _, l := range h.Lots {
		if l.Of() == m && !l.Fines() && l.Left.Kg > 0 {
			left.Kg -= share * unsieved(l, apart) * l.Left.Kg
		}
	}
	return left, short, any
}

// FinesIn is the share of a lot that is fines still to be sieved out, as far as own sieves
// tell; nought for what is no charcoal, or sieved.
func FinesIn(h house.State, l house.Lot) float64 {
	share, known := FinesOf(h)
	if !known || l.Of() != entry.LotCharcoal || l.Fines() || l.Left.Kg <= 0 {
		return 0
	}
	return share * unsieved(l, finesApart(h))
}

// FinesOf is the share of fines that own sieves found in charcoal, by mass dry, over all that
// was weighed.
func FinesOf(h house.State) (share float64, known bool) {
	took, fines := 0.0, 0.0
	for _, l := range h.Lots {
		for _, c := range l.Changes {
			switch {
			case l.Of() != entry.LotCharcoal || c.Does != entry.Sieved || !c.Dry.Known():
			case c.Took:
				took += math.Abs(c.Dry.Kg)
			case l.Fines():
				fines += c.Dry.Kg
			}
		}
	}
	if took <= 0 {
		return 0, false
	}
	return min(fines/took, 1), true
}

// finesApart are the deeds of which the fines were weighed apart.
func finesApart(h house.State) map[uint64]bool {
	seqs := map[uint64]bool{}
	for _, l := range h.Lots {
		for _, c := range l.Changes {
			if c.Seq > 0 && (c.Does == entry.Sieved || l.Fines() && !c.Took && c.Does == entry.Burnt) {
				seqs[c.Seq] = true
			}
		}
	}
	return seqs
}

// unsieved is the share of what is left of a lot that still holds its fines. What is taken
// from a heap is taken of both, but for a sieve, which takes what was not sieved yet.
func unsieved(l house.Lot, apart map[uint64]bool) float64 {
	clean, raw := 0.0, 0.0
	for _, c := range l.Changes {
		kg := math.Abs(c.Dry.Kg)
		all := clean + raw
		switch {
		case c.Count && all > 0:
			clean, raw = clean*kg/all, raw*kg/all
		case c.Count, !c.Took && !apart[c.Seq]:
			raw += kg
		case !c.Took:
			clean += kg
		case apart[c.Seq]:
			raw, clean = max(raw-kg, 0), max(clean-max(kg-raw, 0), 0)
		case all > 0:
			clean, raw = max(clean*(1-kg/all), 0), max(raw*(1-kg/all), 0)
		}
	}
	if clean+raw <= 0 {
		return 1
	}
	return raw / (clean + raw)
}
