package house

import (
	"math"
	"testing"
	"time"

	"chargehand/model/entry"
)

var day = time.Date(2026, 5, 1, 8, 0, 0, 0, time.UTC)

// book is a house stream keyed on one machine, an event an hour.
type book struct{ entries []entry.Entry }

func (b *book) key(ev entry.Event) uint64 { return b.late(ev, 0) }

// late keys an event that happened so long before.
func (b *book) late(ev entry.Event, before time.Duration) uint64 {
	n := len(b.entries)
	kept := day.Add(time.Duration(n) * time.Hour)
	b.entries = append(b.entries, entry.Entry{
		Version: 1, Stream: entry.House, Seq: uint64(n + 1), Happened: kept.Add(-before), Kept: kept, Boot: "b", Mono: time.Duration(n) * time.Hour, Event: ev,
	})
	return uint64(n + 1)
}

func (b *book) fold(uses ...Use) State { return Fold(b.entries, uses, day.AddDate(1, 0, 0)) }

func (b *book) lot(t *testing.T, name string, uses ...Use) Lot {
	t.Helper()
	s := b.fold(uses...)
	l, ok := s.Lot(name)
	if !ok {
		t.Fatalf("no lot %s among %+v", name, s.Lots)
	}
	return l
}

func kg(v float64) entry.Maybe[entry.Kilogram] { return entry.Some(entry.Kilogram(v)) }

func share(v float64) entry.Maybe[entry.Share] { return entry.Some(entry.Share(v)) }

const pond, roast, bucket = entry.UID("00000000000000a1"), entry.UID("00000000000000a2"), entry.UID("00000000000000b1")

func near(a, b float64) bool { return math.Abs(a-b) < 1e-9 }

// dry is a lot that holds no water, so that weights are dry masses.
func dry(uid entry.UID, name string, what entry.What) entry.LotStored {
	return entry.LotStored{Lot: entry.Lot{UID: uid, Name: name, What: what, Moisture: share(0)}}
}

func TestADeedTakesAndGives(t *testing.T) {
	var b book
	b.key(dry(pond, "pond", entry.Ore))
	b.key(dry(roast, "pond roasted", entry.Ore))
	b.key(entry.Deed{Does: entry.Dug, Out: []entry.Amount{{Lot: pond, Mass: kg(50)}}})
	b.key(entry.Deed{Does: entry.Roasted, In: []entry.Amount{{Lot: pond, Mass: kg(40)}}, Out: []entry.Amount{{Lot: roast, Mass: kg(31)}},
		Fuel: []entry.Amount{{Lot: "name:wood", Some: true}}})
	if l := b.lot(t, "pond"); !near(l.Left.Kg, 10) || !near(l.Came.Kg, 50) || !near(l.Went.Kg, 40) || !l.Left.Known() || len(l.Changes) != 2 {
		t.Errorf("pond %+v", l)
	}
	if l := b.lot(t, string(roast)); !near(l.Left.Kg, 31) || l.Left.SD <= 0 {
		t.Errorf("roasted %+v", l)
	}
	if l := b.lot(t, "wood"); l.Left.Known() || !l.Left.Less {
		t.Errorf("some wood was taken: %+v", l.Left)
	}
}

// An amount in a measure has its weight as soon as the measure has one, and
// before too.
func TestALaterWeighingHoldsForWhatWasCounted(t *testing.T) {
	var b book
	b.key(dry(pond, "pond", entry.Ore))
	b.key(entry.MeasureNamed{Measure: entry.Measure{UID: bucket, Name: "bucket", What: entry.Ore}})
	b.key(entry.Deed{Does: entry.Dug, Out: []entry.Amount{{Lot: pond, Measure: "bucket", Count: entry.Some(entry.Count(3))}}})
	b.key(entry.Deed{Does: entry.Dug, Out: []entry.Amount{{Lot: pond, Mass: kg(5)}}})
	if l := b.lot(t, "pond"); l.Left.Known() || !l.Left.More || !near(l.Left.Kg, 5) {
		t.Errorf("unweighed: %+v", l.Left)
	}
	b.key(entry.MeasureNamed{Measure: entry.Measure{UID: bucket, Name: "big bucket", What: entry.Ore, Mass: kg(12)}})
	if l := b.lot(t, "pond"); !l.Left.Known() || !near(l.Left.Kg, 41) {
		t.Errorf("weighed: %+v", l.Left)
	}
	if s := b.fold(); len(s.Measures) != 1 || s.Measures[0].Name != "big bucket" {
		t.Errorf("measures %+v", s.Measures)
	}
}

func TestSomeIsSetRightByACount(t *testing.T) {
	var b book
	b.key(dry(pond, "pond", entry.Ore))
	b.key(entry.Deed{Does: entry.Dug, Out: []entry.Amount{{Lot: pond, Some: true}}})
	b.key(entry.Deed{Does: entry.Sold, In: []entry.Amount{{Lot: pond, Mass: kg(4)}}})
	if l := b.lot(t, "pond"); l.Left.Known() {
		t.Errorf("left %+v", l.Left)
	} else if _, short := l.Short(); short {
		t.Error("short of an amount that nobody knows")
	}
	b.key(entry.Deed{Does: entry.CountedAgain, Out: []entry.Amount{{Lot: pond, Mass: kg(22), PlusMinus: kg(2)}}})
	if l := b.lot(t, "pond"); !l.Left.Known() || !near(l.Left.Kg, 22) || math.Abs(l.Left.SD-2/1.2816) > 1e-9 {
		t.Errorf("counted %+v", l.Left)
	}
	b.key(entry.Deed{Does: entry.CountedAgain, Out: []entry.Amount{{Lot: pond, Mass: kg(20)}}})
	if l := b.lot(t, "pond"); !near(l.Changes[3].Off, -2) || !l.Changes[3].Count {
		t.Errorf("counted again %+v", l.Changes)
	}
}

func TestALotBelowNothingIsSaid(t *testing.T) {
	var b book
	b.key(entry.LotStored{Lot: entry.Lot{Name: "pond", What: entry.Ore, Mass: kg(10), Moisture: share(0)}})
	b.key(entry.LotStored{Lot: entry.Lot{Name: "hill", What: entry.Ore, Mass: kg(7), Moisture: share(0)}})
	b.key(entry.Deed{Does: entry.GivenAway, In: []entry.Amount{{Lot: "name:pond", Mass: kg(13)}}})
	l := b.lot(t, "pond")
	if short, is := l.Short(); !is || !near(short, 3) || !near(l.Left.Kg, -3) {
		t.Errorf("left %+v", l.Left)
	}
	s := b.fold()
	if left, short, any := s.Left(entry.LotOre); !any || !near(left.Kg, 7) || !near(short, 3) {
		t.Errorf("ore left %+v, short %v", left, short)
	}
	if _, _, any := s.Left(entry.LotClay); any {
		t.Error("clay from nowhere")
	}
}

// Late, struck and amended entries need nothing of their own.
func TestLateStruckAndAmended(t *testing.T) {
	var b book
	b.key(entry.LotStored{Lot: entry.Lot{Name: "pond", What: entry.Ore, Mass: kg(10), Moisture: share(0)}})
	b.key(entry.Setting{Name: "x", Value: "y"})
	gone := b.key(entry.Deed{Does: entry.Sold, In: []entry.Amount{{Lot: "name:pond", Mass: kg(1)}}})
	wrong := b.key(entry.Deed{Does: entry.Sold, In: []entry.Amount{{Lot: "name:pond", Mass: kg(2)}}})
	b.key(entry.Deed{Does: entry.CountedAgain, Out: []entry.Amount{{Lot: "name:pond", Mass: kg(7)}}})
	if l := b.lot(t, "pond"); !near(l.Left.Kg, 7) || !near(l.Changes[3].Off, 0) {
		t.Errorf("%+v", l)
	}
	b.late(entry.Deed{Does: entry.Spoilt, In: []entry.Amount{{Lot: "name:pond", Mass: kg(4)}}}, 3*time.Hour+30*time.Minute) // before the count
	if l := b.lot(t, "pond"); !near(l.Left.Kg, 7) || !near(l.Changes[4].Off, 4) {
		t.Errorf("a late deed before the count: %+v", l)
	}
	b.key(entry.Strike{Target: entry.Ref{Seq: gone}})
	b.key(entry.Amend{Target: entry.Ref{Seq: wrong}, Event: entry.Deed{Does: entry.Sold, In: []entry.Amount{{Lot: "name:pond", Mass: kg(5)}}}})
	if l := b.lot(t, "pond"); !near(l.Went.Kg, 9) || !near(l.Left.Kg, 7) || len(l.Changes) != 4 {
		t.Errorf("struck and amended: %+v", l)
	}
	b.key(entry.Amend{Target: entry.Ref{Seq: wrong}, Happened: day.Add(20 * time.Hour), Event: nil})
	if l := b.lot(t, "pond"); !near(l.Left.Kg, 5) { // the amendment of the time holds, and with it the first event
		t.Errorf("moved behind the count: %+v", l)
	}
	if s := Fold(b.entries, nil, day.Add(30*time.Minute)); s.Settings["x"] != "" || len(s.Lots) != 1 || !near(s.Lots[0].Left.Kg, 10) {
		t.Errorf("before it happened: %+v", s)
	}
}

// A lot that gets wet keeps its dry mass.
func TestDryAgainstDry(t *testing.T) {
	var b book
	b.key(entry.LotStored{Lot: entry.Lot{UID: pond, Name: "pond", What: entry.Ore, Mass: kg(110), Moisture: share(0.1)}})
	if l := b.lot(t, "pond"); !near(l.Left.Kg, 100) || !near(l.Weight(l.Left.Kg), 110) {
		t.Errorf("%+v", l.Left)
	}
	b.key(entry.LotStored{Lot: entry.Lot{UID: pond, Name: "pond", What: entry.Ore, Moisture: share(0.3)}})
	b.key(entry.Deed{Does: entry.Sold, In: []entry.Amount{{Lot: pond, Mass: kg(13)}}})
	b.key(entry.Deed{Does: entry.Sold, In: []entry.Amount{{Lot: pond, Mass: kg(12), Moisture: share(0.2)}}})
	if l := b.lot(t, "pond"); !near(l.Left.Kg, 80) || !near(l.Weight(l.Left.Kg), 104) {
		t.Errorf("rained on: %+v, weighs %v", l.Left, l.Weight(l.Left.Kg))
	}
}

// A lot is weighed as it was dug and a bowl of it is weighed, dried and weighed within the day:
// 1250 g became 1010 g, so that 31 kg as dug are 31 x 1010/1250 dry, and still weigh 31.
func TestAFirstSampleDriedTellsOfTheWeighing(t *testing.T) {
	water := entry.Some(entry.Share(1250.0/1010 - 1))
	wet := entry.LotStored{Lot: entry.Lot{UID: pond, Name: "pond", What: entry.Ore, Moisture: water}}
	dug := func(b *book) {
		b.key(entry.LotStored{Lot: entry.Lot{UID: pond, Name: "pond", What: entry.Ore}})
		b.key(entry.Deed{Does: entry.Dug, Out: []entry.Amount{{Lot: pond, Mass: kg(31)}}})
	}
	guess := 31 / (1 + moistureOf(entry.Lot{What: entry.Ore}))
	for _, c := range []struct {
		name string
		then func(b *book) []Use
		dry  float64
	}{
		{"at once", func(b *book) []Use { b.key(wet); return nil }, 31 * 1010.0 / 1250},
		{"and again when it was rained on", func(b *book) []Use {
			b.key(wet)
			b.key(entry.LotStored{Lot: entry.Lot{UID: pond, Name: "pond", What: entry.Ore, Moisture: share(0.5)}})
			return nil
		}, 31 * 1010.0 / 1250},
		{"after part of it was sold", func(b *book) []Use {
			b.key(entry.Deed{Does: entry.Sold, In: []entry.Amount{{Lot: pond, Mass: kg(10)}}})
			b.key(wet)
			return nil
		}, 21 * 1010.0 / 1250},
		{"two weeks later", func(b *book) []Use { b.late(wet, -14*24*time.Hour); return nil }, guess},
		{"after a smelt drew on it by the guess", func(b *book) []Use {
			b.late(wet, -10*time.Hour)
			return []Use{{Smelt: "s", Takes: []Taken{{At: day.Add(5 * time.Hour), Lot: pond, Dry: Mass{Kg: 5}}}}}
		}, guess - 5},
	} {
		var b book
		dug(&b)
		if l := b.lot(t, "pond"); !near(l.Left.Kg, guess) {
			t.Fatalf("by the usual moisture %v", l.Left.Kg)
		}
		uses := c.then(&b)
		s := b.fold(uses...)
		if l, _ := s.Lot("pond"); !near(l.Left.Kg, c.dry) {
			t.Errorf("%s: %.2f kg dry, want %.2f", c.name, l.Left.Kg, c.dry)
		}
	}
}

// What is sieved and stays in its lot did not come again.
func TestWhatIsSievedCameOnce(t *testing.T) {
	var b book
	b.key(dry(roast, "roasted", entry.Ore))
	b.key(dry(pond, "under 3 mm", entry.Ore))
	b.key(entry.Deed{Does: entry.Roasted, Out: []entry.Amount{{Lot: roast, Mass: kg(31)}}})
	b.key(entry.Deed{Does: entry.Sieved, In: []entry.Amount{{Lot: roast, Mass: kg(30.5)}}, Out: []entry.Amount{{Lot: roast, Mass: kg(28)}, {Lot: pond, Mass: kg(2.5)}}})
	if l := b.lot(t, "roasted"); !near(l.Came.Kg, 31) || !near(l.Went.Kg, 2.5) || !near(l.Left.Kg, 28.5) || len(l.Changes) != 3 {
		t.Errorf("came %v, went %v, left %v", l.Came.Kg, l.Went.Kg, l.Left.Kg)
	}
}

// A smelt that is lit takes down what is left.
func TestSnapshot(t *testing.T) {
	var b book
	b.key(entry.LotStored{Lot: entry.Lot{UID: pond, Name: "pond", What: entry.Ore, Mass: kg(110), Moisture: share(0.1)}})
	b.key(entry.Assay{Lot: pond, Parts: map[string]entry.Assayed{"Fe": {Percent: 50}}})
	b.key(entry.Deed{Does: entry.Sold, In: []entry.Amount{{Lot: pond, Mass: kg(55)}}})
	if s := b.lot(t, "pond").Snapshot(); !near(float64(s.Mass.Value), 55) || s.Assay.Parts["Fe"].Percent != 50 || s.UID != pond {
		t.Errorf("%+v", s)
	}
	b.key(entry.Deed{Does: entry.Sold, In: []entry.Amount{{Lot: pond, Some: true}}})
	if s := b.lot(t, "pond").Snapshot(); s.Mass.Known {
		t.Errorf("of some taken nobody knows what is left: %+v", s.Mass)
	}
}

func TestWhatIsKeptOfTheHouse(t *testing.T) {
	var b book
	b.key(entry.FurnaceBuilt{Furnace: entry.Furnace{Name: "Reed Hollow", Bore: entry.Some(entry.Centimetre(25))}})
	b.key(entry.FurnaceBuilt{Why: entry.Worn, Furnace: entry.Furnace{Name: "Reed Hollow", Bore: entry.Some(entry.Centimetre(27))}})
	b.key(entry.Drying{Furnace: "name:Reed Hollow", Day: entry.Some(entry.Count(2))})
	b.key(entry.Plan{UID: "00000000000000c1", Name: "bar"})
	b.key(entry.PlanTicked{Plan: "00000000000000c1", Item: "water at hand", Done: true})
	b.key(entry.Setting{Name: "background", Value: "light"})
	b.key(entry.Remind{Word: "turn the wood"})
	b.key(entry.Remind{Word: "wet the clay"})
	b.key(entry.Remind{Word: "turn the wood", Ended: true})
	b.key(entry.Draft{Screen: "stores", Typed: map[string]string{"kg": "1"}})
	b.key(entry.Draft{Screen: "plan", Typed: map[string]string{"kg": "2"}})
	b.key(entry.Draft{Screen: "stores"})
	b.key(entry.WallWords{Wall: []string{"shout when you charge"}})
	b.key(entry.Lesson{Text: "dry the ore"})
	b.key(entry.Learnt{Of: "pond", Values: map[string]entry.LearntValue{"yield": {P50: 0.2, SD: 0.1}}})
	b.key(entry.SampleResult{Sample: "7-S3", Assay: entry.Assay{Parts: map[string]entry.Assayed{"FeO": {Percent: 50}}}})
	b.key(entry.Piece{UID: "00000000000000d1", Form: entry.BloomPiece, Mass: kg(4)})
	b.key(entry.Piece{UID: "00000000000000d2", Form: entry.Bar})
	b.key(entry.ForgeSession{Pieces: []entry.UID{"00000000000000d1"}, After: []entry.PieceMass{{Piece: "00000000000000d1", Mass: 3}}})
	b.key(entry.PieceTested{Piece: "00000000000000d1", Test: "spark", Result: "soft"})
	s := b.fold()
	f, ok := s.Furnace("Reed Hollow")
	if v, built := f.At(day.Add(90 * time.Minute)); !ok || !built || len(f.Versions) != 2 || v.Furnace.Bore.Value != 27 || len(f.Dryings) != 1 {
		t.Errorf("furnace %+v", f)
	}
	if v, built := f.At(day.Add(30 * time.Minute)); !built || v.Furnace.Bore.Value != 25 {
		t.Errorf("the first version %+v", v)
	}
	if _, built := f.At(day.Add(-time.Hour)); built {
		t.Error("a furnace before it was built")
	}
	if len(s.Plans) != 1 || !s.Plans[0].Done["water at hand"] || s.Settings["background"] != "light" {
		t.Errorf("plans %+v, settings %v", s.Plans, s.Settings)
	}
	if len(s.Reminders) != 1 || s.Reminders[0].Word != "wet the clay" || len(s.Drafts) != 1 || s.Drafts["plan"].Typed["kg"] != "2" {
		t.Errorf("reminders %+v, drafts %+v", s.Reminders, s.Drafts)
	}
	if len(s.WallWords.Wall) != 1 || len(s.Lessons) != 1 || len(s.Learnt) != 1 || s.Samples["7-S3"].Parts["FeO"].Percent != 50 {
		t.Errorf("%+v", s)
	}
	if ps := s.Worked(); len(ps) != 2 || ps[0].UID != "00000000000000d1" || ps[0].Mass != kg(3) || len(ps[0].Tested) != 1 {
		t.Errorf("pieces %+v", ps)
	}
}

// A smelt draws on the lots that its charges name, or on the only one of its
// material.
func TestASmeltDrawsOnLots(t *testing.T) {
	var b book
	b.key(entry.LotStored{Lot: entry.Lot{UID: pond, Name: "pond", What: entry.Ore, Mass: kg(20), Moisture: share(0)}})
	b.key(entry.LotStored{Lot: entry.Lot{Name: "beech", What: entry.Charcoal, Mass: kg(10.6), Moisture: share(0.06)}})
	lit := day.Add(30 * time.Hour)
	smelt := func(l entry.Light, parts ...entry.Part) []entry.Entry {
		es := []entry.Entry{{Version: 1, Stream: "s", Seq: 1, Happened: lit, Event: l}}
		for i, p := range parts {
			es = append(es, entry.Entry{Version: 1, Stream: "s", Seq: uint64(i + 2), Happened: lit.Add(time.Duration(i+1) * time.Minute), Event: entry.Charge{Parts: entry.Parts{p}}})
		}
		return es
	}
	s := b.fold()
	light := entry.Light{UID: "u", Lots: []entry.Lot{s.Lots[0].Lot, s.Lots[1].Lot}, Measures: []entry.Measure{{Name: "scoop", What: entry.Ore, Mass: kg(0.5)}}}
	es := smelt(light,
		entry.Part{What: entry.Ore, Lot: string(pond), Mass: kg(2)}, entry.Part{What: entry.Ore, Lot: "pond", Measure: "scoop", Count: entry.Some(entry.Count(2))},
		entry.Part{What: entry.Charcoal, Mass: kg(2.12)}, entry.Part{What: entry.Flux, Mass: kg(1)}, entry.Part{What: entry.Ore, Mass: kg(0)})
	use := UsedBy(es)
	if l := b.lot(t, "pond", use); !near(l.Left.Kg, 17) || len(l.Changes) != 3 || l.Changes[2].Smelt != "s" {
		t.Errorf("pond %+v", l)
	}
	if l := b.lot(t, "beech", use); math.Abs(l.Left.Kg-8) > 1e-6 {
		t.Errorf("beech %+v", l.Left)
	}
	// A measure weighed later in the smelt holds for the scoops before.
	es = append(es, entry.Entry{Version: 1, Stream: "s", Seq: 9, Happened: lit.Add(time.Hour), Event: entry.Weigh{What: entry.WeighMeasure, Name: "scoop", Mass: 1}})
	if l := b.lot(t, "pond", UsedBy(es)); !near(l.Left.Kg, 16) {
		t.Errorf("scoop weighed: %+v", l.Left)
	}
	// A lot weighed in the smelt is counted.
	es = append(es, entry.Entry{Version: 1, Stream: "s", Seq: 10, Happened: lit.Add(2 * time.Hour), Event: entry.Weigh{What: entry.WeighLot, Name: "pond", Mass: 15}})
	if l := b.lot(t, "pond", UsedBy(es)); !near(l.Left.Kg, 15) || !l.Counted.Equal(lit.Add(2*time.Hour)) {
		t.Errorf("lot weighed: %+v", l)
	}
	// Of two lots nobody knows which.
	two := light
	two.Lots = append(two.Lots, entry.Lot{Name: "hill", What: entry.Ore})
	if l := b.lot(t, "pond", UsedBy(smelt(two, entry.Part{What: entry.Ore, Mass: kg(1)}))); l.Left.Known() {
		t.Errorf("one of two: %+v", l.Left)
	}
	// What is said of the bloom is said of a piece, and of the one that somebody
	// made of it.
	es = append(es, entry.Entry{Version: 1, Stream: "s", Seq: 11, Happened: lit.Add(3 * time.Hour), Event: entry.Weigh{What: entry.WeighBloom, Mass: 4}},
		entry.Entry{Version: 1, Stream: "s", Seq: 12, Happened: lit.Add(30 * time.Hour), Event: entry.ForgeHeat{Number: 1, After: kg(3)}})
	if s := b.fold(UsedBy(es)); len(s.Pieces) != 1 || s.Pieces[0].UID != "name:s" || s.Pieces[0].From[0].Smelt != "u" || s.Pieces[0].Mass != kg(3) || s.Pieces[0].Heats != 1 {
		t.Errorf("the bloom: %+v", s.Pieces)
	}
	b.key(entry.Piece{UID: "00000000000000d1", Form: entry.BloomPiece, Name: "ours", From: []entry.PieceFrom{{Smelt: "u"}}})
	if s := b.fold(UsedBy(es)); len(s.Pieces) != 1 || s.Pieces[0].Name != "ours" || s.Pieces[0].Heats != 1 || len(s.Pieces[0].Weighed) != 1 {
		t.Errorf("the bloom as a piece: %+v", s.Pieces)
	}
	// What burned nothing took nothing.
	for _, l := range []entry.Light{{Practice: true}, {Invented: true}, {Rehearsal: true}} {
		l.Lots = light.Lots
		if u := UsedBy(smelt(l, entry.Part{What: entry.Ore, Mass: kg(1)})); len(u.Takes) != 0 {
			t.Errorf("took %+v", u)
		}
	}
}

// What is sieved out of roasted ore is roasted; what any raw ore went into is not.
func TestOreThatCameOfRoastedOreIsRoasted(t *testing.T) {
	const fine, both = entry.UID("00000000000000a3"), entry.UID("00000000000000a4")
	var b book
	for _, l := range []entry.LotStored{dry(pond, "pond", entry.Ore), dry(roast, "pond roasted", entry.Ore), dry(fine, "fine", entry.Ore), dry(both, "both", entry.Ore)} {
		b.key(l)
	}
	of := func(lot entry.UID, m float64) entry.Amount { return entry.Amount{Lot: lot, Mass: kg(m)} }
	b.key(entry.Deed{Does: entry.Dug, Out: []entry.Amount{of(pond, 50)}})
	b.key(entry.Deed{Does: entry.Roasted, In: []entry.Amount{of(pond, 40)}, Out: []entry.Amount{of(roast, 31)}})
	b.key(entry.Deed{Does: entry.Sieved, In: []entry.Amount{of(roast, 20)}, Out: []entry.Amount{of(roast, 17), of(fine, 3)}})
	b.key(entry.Deed{Does: entry.Crushed, In: []entry.Amount{of(roast, 5), of(pond, 5)}, Out: []entry.Amount{of(both, 10)}})
	for name, want := range map[string]bool{"pond": false, string(roast): true, string(fine): true, string(both): false} {
		if l := b.lot(t, name); l.Roasted() != want {
			t.Errorf("%s: roasted %v", l.Name, l.Roasted())
		}
	}
}

// A plan waits until a fire is lit by it, or without it in its furnace; that in another furnace
// waits on.
func TestAPlanWaitsForItsFire(t *testing.T) {
	var b book
	one, other, early := entry.UID("00000000000000c1"), entry.UID("00000000000000c2"), entry.UID("00000000000000c3")
	b.key(entry.Plan{UID: early, Name: "bloom of 2 kg", Furnace: "00000000000000f1", Taken: "usual"})
	b.key(entry.Plan{UID: one, Name: "bloom of 3 kg", Furnace: "00000000000000f1", Taken: "usual"})
	b.key(entry.Plan{UID: other, Name: "bloom of 4 kg", Furnace: "00000000000000f2", Taken: "usual"})
	waits := func(uses ...Use) string {
		said := ""
		for _, p := range Fold(b.entries, uses, day.Add(1000*time.Hour)).Plans {
			if p.Lit == "" {
				said += p.Name + "; "
			}
		}
		return said
	}
	lit := day.Add(20 * time.Hour)
	by := Use{Smelt: "s", Lit: lit, Furnace: "00000000000000f1", Plan: one}
	without := Use{Smelt: "s", Lit: lit, Furnace: "00000000000000f2"}
	before := Use{Smelt: "s", Lit: day.Add(-time.Hour), Furnace: "00000000000000f2"}
	elsewhere := Use{Smelt: "s", Plan: other} // a smelt taken over from another book
	for _, c := range []struct {
		name string
		uses []Use
		want string
	}{
		{"no fire", nil, "bloom of 2 kg; bloom of 3 kg; bloom of 4 kg; "},
		{"lit by it", []Use{by}, "bloom of 4 kg; "},
		{"lit without it", []Use{without}, "bloom of 2 kg; bloom of 3 kg; "},
		{"lit before it was made", []Use{before}, "bloom of 2 kg; bloom of 3 kg; bloom of 4 kg; "},
		{"lit by it elsewhere", []Use{elsewhere}, "bloom of 2 kg; bloom of 3 kg; "},
	} {
		if got := waits(c.uses...); got != c.want {
			t.Errorf("%s: %q wait, want %q", c.name, got, c.want)
		}
	}
	if p, ok := Fold(b.entries, []Use{by, without}, lit.Add(-time.Minute)).Waiting(); !ok || p.Name != "bloom of 4 kg" {
		t.Errorf("before the fires %+v", p)
	}
}
