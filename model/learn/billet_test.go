package learn_test

import (
	"math"
	"testing"

	"chargehand/model/entry"
	"chargehand/model/house"
	"chargehand/model/learn"
	"chargehand/model/shelf"
)

func piece(uid entry.UID, form entry.PieceKind, mass float64, from ...entry.PieceFrom) house.Piece {
	return house.Piece{Piece: entry.Piece{UID: uid, Form: form, Mass: kg(mass), From: from}, Mass: kg(mass)}
}

func ofSmelt(uid string) entry.PieceFrom    { return entry.PieceFrom{Smelt: uid} }
func ofPiece(uid entry.UID) entry.PieceFrom { return entry.PieceFrom{Piece: uid} }
func weighed(p house.Piece, was float64) house.Piece {
	p.Weighed = []entry.PieceWeighed{{Mass: entry.Kilogram(was)}, {Mass: entry.Kilogram(was - 1)}}
	return p
}

// Billets go back to the smelt of their bloom through halves; what was not all worked,
// not weighed, or came of two smelts gives no figure.
func TestBilletsGoBackToTheirSmelt(t *testing.T) {
	got := learn.Billets([]house.Piece{
		piece("b1", entry.BloomPiece, 5, ofSmelt("1")), piece("h1", entry.HalfPiece, 2.5, ofPiece("b1")), piece("h2", entry.HalfPiece, 2.4, ofPiece("b1")),
		weighed(piece("i1", entry.Billet, 0.3, ofPiece("h1")), 1.3), piece("i2", entry.Billet, 1.1, ofPiece("h2")), piece("r1", entry.Bar, 0.9, ofPiece("i1")),
		piece("b2", entry.BloomPiece, 5, ofSmelt("2")), piece("h3", entry.HalfPiece, 2.5, ofPiece("b2")), piece("h4", entry.HalfPiece, 2.5, ofPiece("b2")), piece("i3", entry.Billet, 1, ofPiece("h3")),
		piece("b3", entry.BloomPiece, 5, ofSmelt("3")), piece("b4", entry.BloomPiece, 5, ofSmelt("4")), piece("i4", entry.Billet, 4, ofPiece("b3"), ofPiece("b4")),
		piece("b5", entry.BloomPiece, 5, ofSmelt("5")), {Piece: entry.Piece{UID: "i5", Form: entry.Billet, From: []entry.PieceFrom{ofPiece("b5")}}},
		piece("i6", entry.Billet, 2, ofSmelt("6")), piece("x", entry.Bar, 1, ofPiece("x")),
		// One half went to a bar that nobody weighed as a billet; one half was never keyed.
		piece("b7", entry.BloomPiece, 5, ofSmelt("7")), piece("h5", entry.HalfPiece, 2.5, ofPiece("b7")), piece("h6", entry.HalfPiece, 2.5, ofPiece("b7")),
		piece("i7", entry.Billet, 1.2, ofPiece("h5")), piece("r2", entry.Bar, 1.1, ofPiece("h6")),
		piece("b8", entry.BloomPiece, 5, ofSmelt("8")), piece("h7", entry.HalfPiece, 2.5, ofPiece("b8")), piece("i8", entry.Billet, 1.2, ofPiece("h7")),
		// A billet cut in two is still one billet's worth; crop ends are none.
		piece("b9", entry.BloomPiece, 5, ofSmelt("9")), piece("c9", entry.CropEnd, 0.2, ofPiece("b9")), piece("i9", entry.Billet, 2, ofPiece("b9")),
		piece("i10", entry.Billet, 1, ofPiece("i9")), piece("i11", entry.Billet, 1, ofPiece("i9")),
	})
	if len(got) != 3 || math.Abs(got["1"]-2.4) > 1e-9 || got["6"] != 2 || got["9"] != 2 {
		t.Errorf("%v, want 2.4 kg of smelt 1, 2 of 6 and 2 of 9", got)
	}
}

// The billet per ore is learnt on the mix as the yield is: two mixes that give very unlike
// blooms may give as much billet (0.42 and 0.26 of bloom, 0.143 and 0.152 of billet).
func TestBilletPerOreIsLearnt(t *testing.T) {
	h := learn.HistoryOf([]shelf.Summary{over(1, "slaggy", 8.4), over(2, "dense", 5.2), over(3, "dense", 5)},
		piece("i1", entry.Billet, 2.86, ofSmelt("1")), piece("i2", entry.Billet, 3.04, ofSmelt("2")))
	for mix, want := range map[string]float64{"slaggy": 0.143, "dense": 0.152} {
		l := h.About("9", day(9), mix)
		if len(l.Billets) != 1 || math.Abs(l.Billets[0]-want) > 1e-9 {
			t.Errorf("%s: %v, want %v", mix, l.Billets, want)
		}
	}
	if told := h.Told(); len(told[1].Billets) != 1 || len(told[1].Yields) != 2 || told[1].NextBillet != learn.Billet([]float64{0.152}) {
		t.Errorf("told %+v", told[1])
	}
	if b := learn.Billet(nil); b != learn.PriorBillet || math.Abs(b.P50-0.0972) > 1e-9 {
		t.Errorf("without own ones %+v", b)
	}
	if b, p := learn.Billet([]float64{0.15, 0.15, 0.15, 0.15, 0.15, 0.15}), learn.PriorBillet; b.P50 <= p.P50 || b.P50 >= 0.15 || b.P90-b.P10 >= p.P90-p.P10 {
		t.Errorf("of six at 0.15: %+v", b)
	}
}
