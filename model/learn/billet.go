package learn

import (
	"chargehand/model/entry"
	"chargehand/model/house"
	"chargehand/physics"
)

// BilletOfBloom is what is left of a bloom as a billet, as a share: of 14 blooms of one
// team, forged once, 0.486 with a standard deviation of 0.144 (Lindblad, Hammarede 1998,
// forntidateknik.se).
var BilletOfBloom = physics.Band{P10: 0.30, P50: 0.486, P90: 0.67}

// PriorBillet is the billet of a smelt of which nothing is known but its ore, in kg per kg
// of ore dry: the yield of bloom and what is left of one as a billet.
var PriorBillet = PriorYield.Times(BilletOfBloom)

// Billet forecasts the billet per ore of the next smelt that gives a bloom from those of
// the house's own earlier ones on the same mix whose billets were weighed, as [Yield]
// does the bloom. It rewards no slag: two mixes with 0.42 and 0.26 of bloom gave 0.143 and
// 0.152 of billet per ore.
func Billet(own []float64) physics.Band { return forecast(PriorBillet, PriorWeight, own) }

// Billets gives the kg of billet that came of each smelt, by the smelt's uid: of those
// whose bloom was all worked, and of no bloom together with another's.
func Billets(pieces []house.Piece) map[string]float64 {
	b := bench{at: map[entry.UID]int{}, worked: map[entry.UID]bool{}, pieces: pieces, of: make([]origin, len(pieces))}
	for i, p := range pieces {
		b.at[p.UID] = i
		for _, from := range p.From {
			b.worked[from.Piece] = true
		}
	}
	kg, left := map[string]float64{}, map[string]bool{}
	for i, p := range pieces {
		o := b.origin(i)
		if len(o.smelts) != 1 {
			for _, smelt := range o.smelts { // which of them gave how much nobody knows
				left[smelt] = true
			}
			continue
		}
		smelt := o.smelts[0]
		switch p.Form {
		case entry.Billet:
			if m, ok := asMade(p); ok {
				kg[smelt] += m
			} else {
				left[smelt] = true
			}
		case entry.BloomPiece, entry.HalfPiece:
			left[smelt] = left[smelt] || !b.worked[p.UID]
		}
	}
	for smelt := range left {
		if left[smelt] {
			delete(kg, smelt)
		}
	}
	return kg
}

// asMade is what a piece weighed when it came to be: as it was first weighed, else as it
// was said.
func asMade(p house.Piece) (float64, bool) {
	if len(p.Weighed) > 0 && p.Weighed[0].Mass > 0 {
		return float64(p.Weighed[0].Mass), true
	}
	if p.Piece.Mass.Positive() {
		return float64(p.Piece.Mass.Value), true
	}
	return float64(p.Mass.Value), p.Mass.Positive()
}

// bench is where pieces come from while that is worked out.
type bench struct {
	pieces []house.Piece
	at     map[entry.UID]int
	worked map[entry.UID]bool // another piece was made of it
	of     []origin
}

// origin is of which smelts a piece is.
type origin struct {
	known  bool
	smelts []string
}

func (b *bench) origin(i int) origin {
	if b.of[i].known {
		return b.of[i]
	}
	b.of[i].known = true // what is said to come of itself comes of nothing more
	var smelts []string
	add := func(uid string) {
		for _, s := range smelts {
			if s == uid {
				return
			}
		}
		smelts = append(smelts, uid)
	}
	for _, from := range b.pieces[i].From {
		if from.Smelt != "" {
			add(from.Smelt)
		}
		if j, ok := b.at[from.Piece]; ok && from.Piece != "" {
			for _, s := range b.origin(j).smelts {
				add(s)
			}
		}
	}
	b.of[i].smelts = smelts
	return b.of[i]
}
