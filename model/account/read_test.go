package account

import (
	"testing"
	"time"

	"pgregory.net/rapid"

	"chargehand/model/entry"
	"chargehand/model/ore"
	"chargehand/persist/logcsv"
	"chargehand/persist/logcsv/logcsvtest"
	"chargehand/physics"
)

// day makes a smelt's entries, one every ten minutes from light.
func day(stream string, events ...entry.Event) []entry.Entry {
	lit := time.Date(2026, 5, 9, 9, 0, 0, 0, time.UTC)
	var es []entry.Entry
	for i, ev := range events {
		at := lit.Add(time.Duration(i) * 10 * time.Minute)
		es = append(es, entry.Entry{Version: entry.Version, Stream: stream, Seq: uint64(i + 1), Happened: at, Kept: at, Event: ev})
	}
	return es
}

// lit is an invented light with a lot of ore.
func lit(lots ...entry.Lot) entry.Light {
	return entry.Light{UID: "a", Invented: true, Furnace: entry.Furnace{Name: "invented"}, Lots: lots}
}

func part(w entry.What, lot string, kg entry.Kilogram) entry.Part {
	return entry.Part{What: w, Lot: lot, Mass: entry.Some(kg)}
}

func weigh(w entry.Weighed, kg entry.Kilogram) entry.Weigh { return entry.Weigh{What: w, Mass: kg} }

// usualOre is the iron of roasted ore that nobody assayed.
var usualOre = between(ore.Roasted.P10, ore.Roasted.P50, ore.Roasted.P90)

// find is the row of a place.
func find(t *testing.T, a Account, p Place) Row {
	t.Helper()
	for _, r := range append(append([]Row(nil), a.In...), a.Out...) {
		if r.Place == p {
			return r
		}
	}
	t.Fatalf("no row %d", p)
	return Row{}
}

func has(a Account, p Place) bool {
	for _, r := range append(append([]Row(nil), a.In...), a.Out...) {
		if r.Place == p {
			return true
		}
	}
	return false
}

// The log of 30 Nov 2016 (Markewitz): 31.7 kg of ore of no assay, 55.68 kg of
// charcoal, a bloom of 7.8 kg by the log's own head, no slag weighed. One
// balance, which goes into solving for the slag: no verdict.
func TestLogOf30Nov2016(t *testing.T) {
	entries := logcsvtest.Read(t, "03", logcsv.Options{Stream: "norse"})
	last := entries[len(entries)-1]
	last.Seq++
	last.Happened, last.Event = last.Happened.Add(time.Hour), weigh(entry.WeighBloom, 7.8)
	a := account(t, Read(append(entries, last), nil))
	v := a.Verdict
	if v.Kind != NothingToCheck || v.Redundancy != 0 || len(v.Suspects)+len(v.Ifs)+len(v.Minus) != 0 {
		t.Errorf("verdict %+v", v)
	}
	ore := find(t, a, Ore)
	near(t, "ore dry", ore.Mass.Value, 31.7/1.06, 1e-6) // the usual water of ore, 6 % of the dry
	near(t, "iron of the ore", ore.Iron.Value, ore.Mass.Value*0.48, 1e-6)
	if len(v.Sought) != 1 || v.Sought[0].Place != Slag {
		t.Fatalf("sought %+v", v.Sought)
	}
	near(t, "slag", v.Sought[0].Amount.Value, (ore.Iron.Value-7.8*0.75)/slagIron.Value, 1e-6)
	near(t, "bloom of the ore dry", yieldOf(t, a, BloomMass, OreDry).Value, 7.8/ore.Mass.Value, 1e-9)
	near(t, "charcoal", a.Carbon.In.Value, 55.68/1.06*0.85, 1e-6)
	if *v.Firm != (Part{Slag, "", MassOf}) {
		t.Errorf("what would firm it up is %+v, want the slag's mass", *v.Firm)
	}
}

// Everything that was charged with iron in it counts as iron in, and what lies
// in several tubs is added up.
func TestChargedIronCounts(t *testing.T) {
	a := account(t, Read(day("a",
		lit(entry.Lot{Name: "pond", What: entry.Ore, Iron: entry.Some(entry.Share(0.5)), Moisture: entry.Some(entry.Share(0))}),
		entry.Charge{Parts: entry.Parts{part(entry.SeedSlag, "", 3), part(entry.Fragments, "", 2), part(entry.Charcoal, "", 2)}},
		entry.Charge{Parts: entry.Parts{part(entry.Ore, "pond", 20), part(entry.Charcoal, "", 2)}},
		entry.Charge{Parts: entry.Parts{part(entry.ReturnedSlag, "", 1), part(entry.Charcoal, "", 2)}},
		entry.Extract{},
		weigh(entry.WeighBloom, 4), weigh(entry.WeighSlag, 6), weigh(entry.WeighSlag, 8), weigh(entry.WeighFragments, 1),
	), nil))
	near(t, "iron in", a.Iron.In.Value, 20*0.5+3*seedIron.Value+2*fragmentShare.Value+1*slagIron.Value, 1e-9)
	near(t, "iron out", a.Iron.Out.Value, 4*0.75+14*slagIron.Value+fragmentShare.Value, 1e-9)
	near(t, "all iron", yieldOf(t, a, BloomIron, AllIron).Value, 3/a.Iron.In.Value, 1e-9)
	if a.Verdict.Redundancy != 1 {
		t.Errorf("%d checks", a.Verdict.Redundancy)
	}
	// The same slag assay, assumed once, stands behind returned slag and slag out:
	// 13 kg of it net.
	want := sqrt(pow2(20*assaySD) + pow2(0.5*20*0.02) + pow2(3*seedIron.SD) + pow2(seedIron.Value*3*0.02) +
		pow2(2*fragmentShare.SD) + pow2(fragmentShare.Value*2*0.02) + pow2(13*slagIron.SD) + pow2(slagIron.Value*0.02) +
		pow2(4*metalShare.SD) + pow2(0.75*4*0.02) + pow2(slagIron.Value*0.02)*(36+64) + pow2(fragmentShare.SD) + pow2(fragmentShare.Value*0.02))
	near(t, "spread of what is open", a.Iron.Open.SD, want, 0.06) // moisture read, one measure to the next
}

func pow2(v float64) float64 { return v * v }

// Which slag was weighed where.
func TestSlagByPlace(t *testing.T) {
	tap, furnace := entry.Weigh{What: entry.WeighSlag, Where: entry.SlagOfTap, Mass: 5}, entry.Weigh{What: entry.WeighSlag, Where: entry.SlagOfFurnace, Mass: 7}
	ore := entry.Charge{Parts: entry.Parts{part(entry.Ore, "", 20), part(entry.Charcoal, "", 2)}}
	tapped := entry.Tap{Mass: entry.Some(entry.Kilogram(2))}
	closed := furnace
	closed.Mass, closed.Closed = 0, true
	for name, c := range map[string]struct {
		events []entry.Event
		want   map[Place]float64 // kg; -1 for not weighed
	}{
		"none":                        {nil, map[Place]float64{Slag: -1}},
		"all":                         {[]entry.Event{weigh(entry.WeighSlag, 9)}, map[Place]float64{Slag: 9}},
		"both":                        {[]entry.Event{tap, furnace}, map[Place]float64{TapSlag: 5, FurnaceSlag: 7}},
		"tap alone":                   {[]entry.Event{tap}, map[Place]float64{TapSlag: 5, FurnaceSlag: -1}},
		"furnace alone, no tap":       {[]entry.Event{furnace}, map[Place]float64{FurnaceSlag: 7}},
		"tapped, furnace alone":       {[]entry.Event{entry.Tap{}, furnace}, map[Place]float64{TapSlag: -1, FurnaceSlag: 7}},
		"tapped with mass, rest":      {[]entry.Event{tapped, tapped, weigh(entry.WeighSlag, 9)}, map[Place]float64{TapSlag: 4, FurnaceSlag: 9}},
		"tapped untold, all":          {[]entry.Event{entry.Tap{}, tapped, weigh(entry.WeighSlag, 9)}, map[Place]float64{Slag: 9}},
		"tapped untold, furnace, all": {[]entry.Event{entry.Tap{}, furnace, weigh(entry.WeighSlag, 9)}, map[Place]float64{TapSlag: 2, FurnaceSlag: 7}},
		"furnace, less of all":        {[]entry.Event{furnace, weigh(entry.WeighSlag, 3)}, map[Place]float64{Slag: 3, FurnaceSlag: 7}},
		"both, and all":               {[]entry.Event{tap, furnace, weigh(entry.WeighSlag, 12)}, map[Place]float64{TapSlag: 5, FurnaceSlag: 7}},
		"furnace never to be known":   {[]entry.Event{tap, closed}, map[Place]float64{TapSlag: 5, FurnaceSlag: -1}},
	} {
		events := append([]entry.Event{lit(), ore}, c.events...)
		s := Read(day("a", events...), nil)
		got := map[Place]float64{}
		for _, st := range s.Out {
			if st.Place == Bloom {
				continue
			}
			if got[st.Place] = st.Mass.Value; !st.Mass.Known() {
				got[st.Place] = -1
			}
		}
		if len(got) != len(c.want) {
			t.Errorf("%s: %v, want %v", name, got, c.want)
		}
		for p, want := range c.want {
			near(t, name, got[p], want, 1e-9)
		}
	}
}

// A bloom counts cold, and none at all is none, not unknown.
func TestBloomByState(t *testing.T) {
	ore := entry.Charge{Parts: entry.Parts{part(entry.Ore, "", 20), part(entry.Charcoal, "", 2)}}
	in := func(s entry.PieceState, kg entry.Kilogram) entry.Weigh {
		return entry.Weigh{What: entry.WeighBloom, State: s, Mass: kg}
	}
	bloom := func(events ...entry.Event) Amount {
		return find(t, account(t, Read(day("a", append([]entry.Event{lit(), ore, entry.Extract{}}, events...)...), nil)), Bloom).Mass
	}
	near(t, "cold", bloom(in(entry.Hot, 6), in(entry.Cold, 5), in(entry.Compacted, 3.5)).Value, 5, 1e-9)
	near(t, "weighed again", bloom(in(entry.Cold, 5), in(entry.Cold, 4.9)).Value, 4.9, 1e-9)
	if bloom().Known() {
		t.Error("a bloom nobody weighed is known")
	}
	none := account(t, Read(day("a", lit(), ore, entry.Extract{None: true}, weigh(entry.WeighSlag, 14)), nil))
	if b := find(t, none, Bloom).Mass; b != Weighed(0, 0) || none.Verdict.Redundancy != 1 {
		t.Errorf("no bloom is %+v, %d checks", b, none.Verdict.Redundancy)
	}
	two := entry.Weigh{What: entry.WeighBloom, Mass: 2, Piece: "00000000000000aa"}
	near(t, "in two pieces", bloom(weigh(entry.WeighBloom, 3), two).Value, 5, 1e-9)
	wet := in(entry.Cold, 5)
	wet.InWater = entry.Some(entry.Kilogram(4))
	share := find(t, account(t, Read(day("a", lit(), ore, wet), nil)), Bloom).Share
	if want := MetalByDensity(5, 4, false); share != want {
		t.Errorf("metal by density %+v, want %+v", share, want)
	}
}

// The lab's answers come months later, to the house, by the label of a sample
// or by lot. With silica of ore and slag the wall is solved for.
func TestAssaysFromTheHouse(t *testing.T) {
	pond := entry.Lot{Name: "pond", UID: "00000000000000a1", What: entry.Ore, Moisture: entry.Some(entry.Share(0))}
	smelt := day("a", lit(pond),
		entry.Charge{Parts: entry.Parts{part(entry.Ore, "pond", 20), part(entry.Charcoal, "", 2)}},
		entry.Sample{Of: "slag", Label: "7-S3"}, entry.Sample{Of: "tap slag", Label: "7-S4"}, entry.Sample{Of: "slag", Label: "7-S5"},
		weigh(entry.WeighBloom, 4), weigh(entry.WeighSlag, 13))
	oxides := func(basis entry.AssayBasis, of map[string]float64) entry.Assay {
		a := entry.Assay{Basis: basis, Parts: map[string]entry.Assayed{}}
		for o, pct := range of {
			a.Parts[o] = entry.Assayed{Percent: entry.Percent(pct), PlusMinus: entry.Some(entry.Percent(1))}
		}
		return a
	}
	ore := oxides(entry.AsIgnited, map[string]float64{"Fe2O3": 80, "SiO2": 14})
	ore.Lot, ore.Loss = pond.UID, entry.Some(entry.Percent(10))
	house := day(entry.House, ore,
		entry.SampleResult{Sample: "7-s3", Assay: oxides(entry.Normalised, map[string]float64{"FeO": 60, "SiO2": 24})},
		entry.SampleResult{Sample: "7 - S5", Assay: oxides(entry.Normalised, map[string]float64{"FeO": 62, "SiO2": 28})})
	a := account(t, Read(smelt, house))
	o := find(t, a, Ore)
	near(t, "iron of the ore", o.Share.Value, 0.8*physics.Hematite.IronShare()*0.9, 1e-9)
	near(t, "its spread", o.Share.SD, 0.01/physics.Z90*physics.Hematite.IronShare()*0.9, 1e-9)
	near(t, "iron of the slag", find(t, a, Slag).Share.Value, 0.61*physics.Wustite.IronShare(), 1e-9)
	if o.Share.Standing != Measured || find(t, a, Slag).Share.Standing != Measured {
		t.Error("an assay does not count as measured")
	}
	if a.Verdict.Redundancy != 1 || !a.Silica.Tested || !has(a, WallAndAsh) {
		t.Errorf("verdict %+v", a.Verdict)
	}
	wall := find(t, a, WallAndAsh).Silica.Value
	// By the figures as they stand 1.12 kg; the iron balance moves the slag a little.
	near(t, "wall", wall, (13+4*0.25)*0.26-20*0.14*0.9, 0.15)

	// A wall weighed makes silica a second check.
	more := append(smelt[:len(smelt):len(smelt)], entry.Entry{Version: entry.Version, Stream: "a", Seq: 8, Happened: smelt[6].Happened, Kept: smelt[6].Kept, Event: weigh(entry.WeighWall, 2)})
	if v := account(t, Read(more, house)).Verdict; v.Redundancy != 2 {
		t.Errorf("with the wall weighed: %+v", v)
	}
	if before := account(t, Read(smelt, nil)); before.Silica.Tested || find(t, before, Ore).Share != usualOre {
		t.Error("assayed before the lab answered")
	}
}

// Normalised with the loss unknown carries its band: 58 % is 50 % at 14 % loss.
func TestNormalisedAssay(t *testing.T) {
	a := entry.Assay{Basis: entry.Normalised, Parts: map[string]entry.Assayed{"Fe": {Percent: 58, PlusMinus: entry.Some(entry.Percent(0.01))}}}
	b := dried(a, entry.None[entry.Share](), false).Iron.Band()
	near(t, "at 14.5 % loss", b.P10, 0.58*0.855, 1e-3)
	near(t, "at none", b.P90, 0.58, 2e-3)
	near(t, "slag loses nothing", dried(a, entry.None[entry.Share](), true).Iron.Value, 0.58, 1e-9)
	a.Basis = entry.AsDug
	near(t, "as dug, 20 % water on the dry", dried(a, entry.Some(entry.Share(0.2)), false).Iron.Value, 0.58*1.2, 1e-9)
	a.Parts["Fe"] = entry.Assayed{Percent: 58, Basis: entry.BasisEstimated}
	if dried(a, entry.None[entry.Share](), false).Iron.Standing != Assumed {
		t.Error("an estimated assay counts as measured")
	}
}

// Whatever is weighed and assayed, the account is made of numbers, the balances
// close where they were solved, redundancy is never more than there are
// balances, and with one check nobody is named.
func TestAnySmelt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		amount := func(name string, most float64) Amount {
			v := float64(rapid.IntRange(0, int(100*most)).Draw(t, name)) / 100
			sd := rapid.SampledFrom([]float64{0.01, 0.02, 0.1, 0.3}).Draw(t, name+" spread") * v
			switch rapid.IntRange(0, 3).Draw(t, name+" stands") {
			case 0:
				return Amount{}
			case 1:
				return Taken(v, sd)
			}
			return Weighed(v, sd)
		}
		share := func(name string, prior Amount) Amount {
			if a := amount(name, 0.9); a.Known() {
				return a
			}
			return prior
		}
		s := Smelt{OwnSlag: -1, Charcoal: amount("charcoal", 60), AshShare: ashShare, CarbonShare: carbonShare, Wall: amount("wall", 5)}
		s.OwnSlag = s.assay(Assay{share("slag Fe", slagIron), share("slag Si", slagSilica)})
		for range rapid.IntRange(0, 3).Draw(t, "ores") {
			s.In = append(s.In, Stream{Place: Ore, Mass: amount("ore", 40), Of: s.assay(Assay{share("ore Fe", usualOre), share("ore Si", Amount{})})})
		}
		if rapid.Bool().Draw(t, "seed") {
			s.In = append(s.In, Stream{Place: SeedSlag, Mass: amount("seed slag", 5), Of: s.assay(Assay{seedIron, slagSilica})})
		}
		s.Out = append(s.Out, Stream{Place: Bloom, Mass: amount("bloom", 12), Of: s.assay(Assay{Iron: share("metal", metalShare)})})
		s.Out = append(s.Out, Stream{Place: Slag, Mass: amount("slag", 40), Of: s.OwnSlag})
		a, err := Of(s)
		if err != nil {
			t.Fatal(err)
		}
		for _, r := range append(append([]Row(nil), a.In...), a.Out...) {
			for _, x := range []Amount{r.Mass, r.Iron, r.Fitted, r.Silica} {
				if !finite(x.Value) || !finite(x.SD) || x.SD < 0 {
					t.Fatalf("%+v in %+v", x, r)
				}
			}
		}
		v := a.Verdict
		if v.Redundancy > 2 || v.Redundancy < 2 && len(v.Suspects) > 0 || v.Redundancy != 1 && len(v.Ifs) > 0 {
			t.Fatalf("%+v", v)
		}
		if len(s.In) == 0 {
			return
		}
		b := balance(s)
		so, err := b.problem.Solve()
		if err != nil {
			if !v.Rough {
				t.Fatal(err)
			}
			return
		}
		for i, bal := range b.problem.Balances {
			blind := false
			for _, term := range bal.Terms {
				for _, j := range term.Of {
					blind = blind || so.Blind[j]
				}
			}
			if off := bal.Off(so.Value); !blind && !(off < 1e-4 && off > -1e-4) {
				t.Fatalf("balance %d is off by %g", i, off)
			}
		}
		for j, q := range b.problem.Quantities {
			if !q.unknown() && so.Value[j] < -1e-6 {
				t.Fatalf("quantity %d is %g", j, so.Value[j])
			}
		}
	})
}

// Ore that nobody assayed has one iron, in the account as in the stores: raw ore 25 to 50 % with
// a middle of 37, roasted 35 to 60 with one of 48, moved by its signs (the usual of the trade).
// What the stores do not know counts as roasted.
func TestUnassayedOreIsTakenAsTheStoresTakeIt(t *testing.T) {
	pond := entry.Lot{Name: "pond", UID: "00000000000000a1", What: entry.Ore, Material: entry.LotOre, Moisture: entry.Some(entry.Share(0))}
	signs := pond
	signs.Signs = []entry.OreSign{entry.SignDarkRed, entry.SignHeavy}
	smelt := day("a", lit(pond), entry.Charge{Parts: entry.Parts{part(entry.Ore, string(pond.UID), 20), part(entry.Charcoal, "", 2)}}, weigh(entry.WeighBloom, 4))
	given := func(l entry.Lot, does entry.Does) []entry.Entry {
		return day(entry.House, entry.LotStored{Lot: l}, entry.Deed{Does: does, Out: []entry.Amount{{Lot: l.UID, Mass: entry.Some(entry.Kilogram(20))}}})
	}
	for _, c := range []struct {
		name   string
		stores []entry.Entry
		want   physics.Band
	}{
		{"dug", given(pond, entry.Dug), physics.Band{P10: 0.25, P50: 0.37, P90: 0.50}},
		{"roasted", given(pond, entry.Roasted), physics.Band{P10: 0.35, P50: 0.48, P90: 0.60}},
		{"not in the stores", nil, physics.Band{P10: 0.35, P50: 0.48, P90: 0.60}},
		{"dug, of good signs", given(signs, entry.Dug), ore.Iron(false, signs.Signs)},
	} {
		o := find(t, account(t, Read(smelt, c.stores)), Ore)
		near(t, c.name, o.Share.Value, c.want.P50, 1e-9)
		near(t, c.name+", its spread", o.Share.SD, (c.want.P90-c.want.P10)/(2*physics.Z90), 1e-9)
		if o.Share.Standing != Assumed {
			t.Errorf("%s: the iron is %v", c.name, o.Share)
		}
	}
}
