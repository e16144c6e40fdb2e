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
// whose bloom was all worked to billets that were weighed, and of no bloom together with
// another's. Crop ends are none of it. A billet cut of a billet is counted once.
func Billets(pieces []house.Piece) map[string]float64 {
	b := bench{at: map[entry.UID]int{}, kids: make([][]int, len(pieces)), pieces: pieces, of: make([]origin, len(pieces))}
	for i, p := range pieces {
		b.at[p.UID] = i
	}
	for i, p := range pieces {
		for _, from := range p.From {
			if j, ok := b.at[from.Piece]; ok && from.Piece != "" && j != i {
				b.kids[j] = append(b.kids[j], i)
			}
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
			if o.billet {
				break
			}
			if m, ok := p.First(); ok {
				kg[smelt] += m
			} else {
				left[smelt] = true
			}
		case entry.BloomPiece, entry.HalfPiece:
			left[smelt] = left[smelt] || !b.allWorked(i)
		}
	}
	for smelt := range left {
		if left[smelt] {
			delete(kg, smelt)
		}
	}
	return kg
}

// halvesLeast is how much of a bloom its halves weigh together at least, where the two
// cuts are all of it: less, and a part was not keyed (assumed).
const halvesLeast = 0.9

// allWorked tells whether all of a bloom or half went on as halves or billets.
func (b *bench) allWorked(i int) bool {
	halves, billets := 0.0, 0
	weighed := true
	for _, k := range b.kids[i] {
		switch p := b.pieces[k]; p.Form {
		case entry.CropEnd, entry.HalfPiece, entry.BloomPiece:
			m, ok := p.First()
			halves, weighed = halves+m, weighed && ok
			if p.Form != entry.CropEnd {
				billets++
			}
		case entry.Billet:
			billets++
			weighed = false // it lost slag on the way, so that it tells nothing of what it was
		default:
			return false // a bar, of which nobody weighed the billet
		}
	}
	was := float64(b.pieces[i].Mass.Value)
	return billets > 0 && !(weighed && b.pieces[i].Mass.Positive() && halves < halvesLeast*was)
}

// bench is where pieces come from while that is worked out.
type bench struct {
	pieces []house.Piece
	at     map[entry.UID]int
	kids   [][]int // what was made of a piece
	of     []origin
}

// origin is of which smelts a piece is, and whether it is of a billet.
type origin struct {
	known  bool
	smelts []string
	billet bool
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
			o := b.origin(j)
			b.of[i].billet = b.of[i].billet || o.billet || b.pieces[j].Form == entry.Billet
			for _, s := range o.smelts {
				add(s)
			}
		}
	}
	b.of[i].smelts = smelts
	return b.of[i]
}
