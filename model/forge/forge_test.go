package forge_test

import (
	"math"
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/model/forge"
	"chargehand/model/house"
	"chargehand/model/shelf"
	"chargehand/model/words"
)

func near(t *testing.T, what string, got, want float64) {
	t.Helper()
	if math.Abs(got-want) > 1e-9 {
		t.Errorf("%s: %v, want %v", what, got, want)
	}
}

func of(us ...entry.UID) (from []entry.PieceFrom) {
	for _, u := range us {
		from = append(from, entry.PieceFrom{Piece: u})
	}
	return from
}

const bloom7, left, right, crop, billet, bloom6, drawknife entry.UID = "00000000000000a1", "00000000000000a2", "00000000000000a3", "00000000000000a4", "00000000000000a5", "00000000000000a6", "00000000000000a7"

// way is a bloom compacted, cut in two, one half made a billet, and that welded to the
// bloom of another smelt.
func way() []entry.Event {
	charcoal := func(v float64) entry.ForgeFuel { return entry.ForgeFuel{What: "charcoal", Kg: kg(v)} }
	return []entry.Event{
		entry.Piece{UID: bloom7, Form: entry.BloomPiece, From: []entry.PieceFrom{{Smelt: "7"}}, Mass: kg(4.6)},
		entry.ForgeSession{Pieces: []entry.UID{bloom7}, Did: []entry.Forged{entry.Consolidated}, Heats: entry.Some(entry.Count(5)), Hours: entry.Some(entry.Hour(3)), Fuel: charcoal(9), After: []entry.PieceMass{{Piece: bloom7, Mass: 3.1}}},
		entry.Piece{UID: left, Form: entry.HalfPiece, Name: "left", From: of(bloom7), Mass: kg(1.85)},
		entry.Piece{UID: right, Form: entry.HalfPiece, Name: "right", From: of(bloom7), Mass: kg(1.2)},
		entry.Piece{UID: crop, Form: entry.CropEnd, From: of(bloom7), Mass: kg(0.05)},
		entry.ForgeSession{Pieces: []entry.UID{left}, Did: []entry.Forged{entry.Folded, entry.Welded}, Heats: entry.Some(entry.Count(4)), Fuel: charcoal(6)},
		entry.Piece{UID: billet, Form: entry.Billet, Name: "billet 2", From: of(left), Mass: kg(1.4)},
	}
}

var smelts = []shelf.Summary{{UID: "7", Furnace: "Reed Hollow", Lit: day, OreDry: kg(24)}, {UID: "6", Furnace: "Reed Hollow", Lit: day.AddDate(0, -1, 0), OreDry: kg(22)}}

// The chain is that of the worked picture: 24 kg of ore, a bloom of 4.6, compacted to 3.1,
// a half of 1.85, a billet of 1.4: 19, 67, 76 % and, if the rest goes alike, 10 % of the ore.
func TestTheChainNamesItsBases(t *testing.T) {
	b := forge.Of(keyed(way()...), smelts)
	at := b.Find(billet)
	steps := b.Chain(at)
	if len(steps) != 5 {
		t.Fatalf("%+v", steps)
	}
	near(t, "bloom of the ore", steps[1].Share, 4.6/24)
	near(t, "compacted of the bloom", steps[2].Share, 3.1/4.6)
	near(t, "the halves of the compacted bloom", steps[3].Share, 3.05/3.1)
	near(t, "billet of its half", steps[4].Share, 1.4/1.85)
	share, alike, known := b.OfOre(at)
	near(t, "of the ore", share, 4.6/24*3.1/4.6*3.05/3.1*1.4/1.85)
	if !alike || !known || !steps[3].Cut {
		t.Errorf("alike %v, known %v", alike, known)
	}
	var said string
	for n := range steps {
		name, of := words.ChainStep(b, steps, n)
		said += name + ": " + of + "\n"
	}
	if want := "ore, dry: \nbloom: 19 % of ore\ncompacted: 67 % of bloom\nhalf: 98 % of compacted, cut\nbillet: 76 % of half\n"; said != want {
		t.Errorf("%s want\n%s", said, want)
	}
}

// What was done to the bloom is parted by mass among its halves, crop ends bearing none;
// what was done to a half is the billet's whole.
func TestWhatTheForgeTookFlowsDown(t *testing.T) {
	b := forge.Of(keyed(way()...), smelts)
	taken := b.Taken(b.Find(billet))
	near(t, "charcoal", taken.Fuels[0].Of, 9*1.85/3.05+6)
	near(t, "hours", taken.Hours.Of, 3*1.85/3.05)
	near(t, "hours keyed in", taken.Hours.Keyed, 1.85/3.05)
	near(t, "sessions", taken.Sessions, 1+1.85/3.05)
	near(t, "the other half", b.Taken(b.Find(right)).Fuels[0].Of, 9*1.2/3.05)
	if c := b.Taken(b.Find(crop)); len(c.Fuels) != 0 {
		t.Errorf("a crop end bears %+v", c)
	}
	rows := (words.Units{}).PieceTook(b, b.Find(billet))
	if len(rows) != 3 || rows[0][1] != "8.2 kg a kg" || rows[1][2] != "1 h 49 for 1.4 kg; keyed in 38 % of the sessions" {
		t.Errorf("%q", rows)
	}
}

// A piece welded of two smelts is of both, weighs no more than they did, and is a share of
// no one ore.
func TestWeldedAcrossSmelts(t *testing.T) {
	evs := append(way(), entry.Piece{UID: bloom6, Form: entry.BloomPiece, From: []entry.PieceFrom{{Smelt: "6"}}, Mass: kg(0.9)},
		entry.Piece{UID: drawknife, Form: entry.Finished, Name: "drawknife", From: of(billet, bloom6), Mass: kg(2.1)})
	b := forge.Of(keyed(evs...), smelts)
	at := b.Find(drawknife)
	if ss := b.Smelts(at); len(ss) != 2 || !b.Welded(at) {
		t.Errorf("of %v", ss)
	}
	if _, _, known := b.OfOre(at); known {
		t.Error("a share of one ore")
	}
	near(t, "charcoal through the weld", b.Taken(at).Fuels[0].Of, 9*1.85/3.05+6)
	if rs := b.Remarks(at); len(rs) != 0 {
		t.Errorf("odd: %+v", rs)
	}
	if said := words.PieceCame(b, at); said != "welded to bloom of Reed Hollow, 9 Apr 26" {
		t.Error(said)
	}
	if said := words.PieceState(b, b.Find(bloom6)); said != "welded to billet 2" {
		t.Error(said)
	}
	// The tree last worked stands first, each piece under what it was made of.
	var depths []int
	for _, r := range b.Rows() {
		depths = append(depths, r.Depth)
	}
	if len(depths) != 8 || depths[0] != 0 || depths[1] != 1 || depths[4] != 4 || b.Last() != at {
		t.Errorf("%v, last %d of %d", depths, b.Last(), at)
	}
	if said := words.PiecesOf(b, "7"); said != "half of a bloom" && said != "right 1.2 kg, drawknife 2.1 kg" {
		t.Error(said)
	}
}

// What cannot be is said: parts heavier than the whole, a mass that grew, a ring.
func TestWhatCannotBeIsSaid(t *testing.T) {
	b := forge.Of(keyed(
		entry.Piece{UID: bloom7, Form: entry.BloomPiece, Mass: kg(3)}, entry.PieceWeighed{Piece: bloom7, Mass: 3.4},
		entry.Piece{UID: left, Form: entry.HalfPiece, From: of(bloom7), Mass: kg(2)}, entry.Piece{UID: right, Form: entry.HalfPiece, From: of(bloom7), Mass: kg(1.9)},
		entry.Piece{UID: crop, Form: entry.Bar, From: of(billet), Mass: kg(1)}, entry.Piece{UID: billet, Form: entry.Bar, From: of(crop), Mass: kg(1)},
	), nil)
	rs := b.Remarks(b.Find(bloom7))
	if len(rs) != 2 || rs[0].Kind != forge.MassGrew || rs[1].Kind != forge.HoldsMore {
		t.Errorf("%+v", rs)
	}
	near(t, "parts", rs[1].Said, 3.9)
	if n := len(b.Rows()); n != 5 {
		t.Errorf("%d rows of 5 pieces, two of them in a ring", n)
	}
	b.Chain(b.Find(crop))
}

// A bloom weighed at its fire piece by piece did not grow; once it is at the forge it cannot.
func TestABloomOfTwoPiecesDidNotGrow(t *testing.T) {
	at := time.Date(2026, 5, 9, 18, 0, 0, 0, time.UTC)
	weighed := func(mass float64, s entry.PieceState, after time.Duration) house.OfBloom {
		return house.OfBloom{At: at.Add(after), Weighed: entry.Some(entry.Kilogram(mass)), State: s}
	}
	for _, c := range []struct {
		of   []house.OfBloom
		grew bool
	}{
		{[]house.OfBloom{weighed(2.35, entry.Hot, 0), weighed(3.45, entry.Cold, time.Hour)}, false},
		{[]house.OfBloom{weighed(2.35, entry.Compacted, 0), weighed(3.45, entry.Cold, time.Hour)}, true},
	} {
		b := forge.Of(house.Fold(nil, []house.Use{{Smelt: "s", UID: "0123456789abcdef", Bloom: c.of}}, at.AddDate(1, 0, 0)), nil)
		if rs := b.Remarks(0); (len(rs) > 0) != c.grew {
			t.Errorf("%+v: %+v", c.of, rs)
		}
	}
}

// No class comes of one test; the range is from the softest place to the hardest.
func TestTheRangeFound(t *testing.T) {
	tested := func(rs ...[2]string) house.Piece {
		var p house.Piece
		for _, r := range rs {
			p.Tested = append(p.Tested, house.Tested{At: time.Time{}, PieceTested: entry.PieceTested{Test: r[0], Result: r[1]}})
		}
		return p
	}
	for want, p := range map[string]house.Piece{
		"not tested":                       tested(),
		"1 test, no class from so few":     tested([2]string{forge.Spark, "long plain rays"}),
		"2 tests, no class from so few":    tested([2]string{forge.Spark, "long plain rays"}, [2]string{forge.Hammer, forge.CracksCold}),
		"soft, 2 tests":                    tested([2]string{forge.Spark, "long plain rays"}, [2]string{forge.File, "bites"}),
		"soft to steely, 4 tests":          tested([2]string{forge.Spark, "long plain rays"}, [2]string{forge.Bend, "to 90°, whole"}, [2]string{forge.File, "bites"}, [2]string{forge.Quench, "file skates"}),
		"soft to near cast iron, 2 tests":  tested([2]string{forge.Spark, "long plain rays"}, [2]string{forge.Spark, "short, hardly any"}),
		"soft to low in carbon, 2 tests":   tested([2]string{forge.File, "bites"}, [2]string{forge.Etch, "light"}),
		"1 test, no class from so few ...": tested([2]string{forge.Spark, "in words of their own"}),
	} {
		if got := words.MetalFound(forge.FoundIn(p)); got != want && got+" ..." != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
	if f := forge.FoundIn(tested([2]string{forge.Hammer, forge.Crumbles})); len(f.Signs) != 1 || len(words.SignCause(f.Signs[0])) < 40 {
		t.Errorf("%+v", f)
	}
	for _, r := range forge.Results {
		if r.Low > r.High {
			t.Errorf("%+v", r)
		}
	}
}
