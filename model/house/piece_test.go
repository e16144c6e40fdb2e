package house

import (
	"testing"
	"time"

	"chargehand/model/entry"
)

// Pieces keep what they weighed on the way; heats keyed one by one count where no session
// tells of them; a crop end is taken off what goes on.
func TestPiecesOnTheWay(t *testing.T) {
	const bloom, left, right, crop entry.UID = "00000000000000d1", "00000000000000d2", "00000000000000d3", "00000000000000d4"
	of := func(u entry.UID) []entry.PieceFrom { return []entry.PieceFrom{{Piece: u}} }
	var b book
	b.key(entry.Piece{UID: bloom, Form: entry.BloomPiece, Mass: kg(4)})
	heat := b.key(entry.Heat{Pieces: []entry.UID{bloom}})
	piece := func(id entry.UID) Piece {
		t.Helper()
		p, ok := b.fold().Piece(id)
		if !ok {
			t.Fatalf("no piece %s", id)
		}
		return p
	}
	if p := piece(bloom); p.InFire != heat || p.AllHeats() != 1 {
		t.Errorf("in the fire: %+v", p)
	}
	b.key(entry.HeatOver{Heat: entry.Ref{Seq: heat}, Pieces: []entry.HeatedMass{{Piece: bloom, After: kg(3.5)}}})
	if p := piece(bloom); p.InFire != 0 || p.Mass != kg(3.5) {
		t.Errorf("out of the fire: %+v", p)
	}
	session := b.key(entry.ForgeSession{Pieces: []entry.UID{bloom}, Heats: entry.Some(entry.Count(3)), After: []entry.PieceMass{{Piece: bloom, Mass: 3}}})
	if p := piece(bloom); p.AllHeats() != 3 || len(p.Stages) != 3 || p.Sessions[0].Before != kg(3.5) || p.Sessions[0].Part != 1 {
		t.Errorf("after a session: %+v", p)
	}
	b.key(entry.Piece{UID: crop, Form: entry.CropEnd, Mass: kg(0.2), From: of(bloom)})
	if p := piece(bloom); p.Spent || p.Mass.Value < 2.79 || p.Mass.Value > 2.81 {
		t.Errorf("a crop end off: %+v", p)
	}
	b.key(entry.Piece{UID: left, Form: entry.HalfPiece, Mass: kg(1.6), From: of(bloom)})
	b.key(entry.Piece{UID: right, Form: entry.HalfPiece, Mass: kg(1.2), From: of(bloom)})
	both := b.key(entry.ForgeSession{Pieces: []entry.UID{left, right}})
	if p := piece(bloom); !p.Spent {
		t.Errorf("cut in two: %+v", p)
	}
	if p := piece(left); !near(p.Sessions[0].Part, 1.6/2.8) {
		t.Errorf("its part of a session on both: %+v", p.Sessions)
	}
	// Described again it keeps its mass; sold it is none of those at work.
	b.key(entry.ForgeSession{Pieces: []entry.UID{left}, After: []entry.PieceMass{{Piece: left, Mass: 1.1}}})
	b.key(entry.Piece{UID: left, Form: entry.HalfPiece, Mass: kg(1.6), From: of(bloom), EndsAs: entry.EndSold, To: "AL"})
	if p := piece(left); p.Mass != kg(1.1) || p.EndsAs != entry.EndSold {
		t.Errorf("sold: %+v", p)
	}
	// What was crossed out leaves nothing.
	b.key(entry.Strike{Target: entry.Ref{Seq: session}})
	b.key(entry.Strike{Target: entry.Ref{Seq: both}})
	if p := piece(right); len(p.Sessions) != 0 || piece(bloom).AllHeats() != 1 {
		t.Errorf("crossed out: %+v", p)
	}
}

// What one key keeps happened at one moment: a writer that stamps the second entry a
// little later does not set it before the first.
func TestOneKeyIsOneMoment(t *testing.T) {
	of := entry.UID("00000000000000d1")
	var b book
	b.key(entry.Piece{UID: of, Form: entry.HalfPiece, Mass: kg(2)})
	n := len(b.entries)
	b.key(entry.ForgeSession{Pieces: []entry.UID{of}})
	b.key(entry.Piece{UID: "00000000000000d2", Form: entry.Billet, Mass: kg(1), From: []entry.PieceFrom{{Piece: of}}})
	for i := range 2 {
		e := &b.entries[n+i]
		e.Group, e.Happened, e.Mono = "g", b.entries[n].Happened, b.entries[n].Mono
		e.Kept = e.Happened.Add(time.Duration(i) * time.Millisecond)
	}
	p, _ := b.fold().Piece("00000000000000d2")
	half, _ := b.fold().Piece(of)
	if p.Made.Before(half.Sessions[0].At) {
		t.Errorf("made at %v, by a session at %v", p.Made, half.Sessions[0].At)
	}
}

// A bloom weighed hot and again cold lost loose slag: that is what it weighed when it came.
// What it weighs once it was hammered is another thing.
func TestABloomWeighedAgainWasNotWorked(t *testing.T) {
	weighed := func(kg float64, s entry.PieceState) OfBloom {
		return OfBloom{At: day.Add(time.Hour), Weighed: entry.Some(entry.Kilogram(kg)), State: s}
	}
	var b book
	b.key(entry.Setting{Name: "x"})
	for _, c := range []struct {
		of    []OfBloom
		first float64
	}{
		{[]OfBloom{weighed(5.2, entry.Hot)}, 5.2},
		{[]OfBloom{weighed(5.2, entry.Hot), weighed(4.9, entry.Cold)}, 4.9},
		{[]OfBloom{weighed(5.2, entry.Hot), weighed(4.9, entry.Cold), weighed(3.3, entry.Compacted), weighed(3.2, "")}, 4.9},
	} {
		s := b.fold(Use{Smelt: "s", UID: "0123456789abcdef", Bloom: c.of})
		if len(s.Pieces) != 1 {
			t.Fatalf("%d pieces", len(s.Pieces))
		}
		if kg, known := s.Pieces[0].First(); !known || !near(kg, c.first) {
			t.Errorf("%d weighings: it came with %v kg, want %v", len(c.of), kg, c.first)
		}
	}
}
