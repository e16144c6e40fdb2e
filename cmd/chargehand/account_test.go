package main

import (
	"path/filepath"
	"strings"
	"testing"
	"time"

	"chargehand/model/account"
	"chargehand/model/entry"
)

// keep keeps events of a stream, each a minute after the one before.
func (h place) keep(stream string, first time.Time, events ...entry.Event) {
	h.t.Helper()
	book, err := writer(world{clock: func() entry.Stamp { return entry.Stamp{Wall: today} }}, common{book: h.book()}, nil)
	if err != nil {
		h.t.Fatal(err)
	}
	var es []entry.Entry
	for i, ev := range events {
		es = append(es, entry.Entry{Version: entry.Version, Stream: stream, Happened: first.Add(time.Duration(i) * time.Minute), Event: ev})
	}
	book.Keep(es...)
	if err := book.Close(); err != nil {
		h.t.Fatal(err)
	}
}

// The log of 30 Nov 2016 (Markewitz) with its bloom of 7.8 kg weighed in the
// next day: one balance, the slag solved for, no verdict.
func TestAccountOfAPublishedLog(t *testing.T) {
	h := newHouse(t)
	id := h.imported(filepath.Join(root, "testdata", "logs", "03-norse-course-2016-11-30.csv"), "--date", "2016-11-30")
	h.keep(id, time.Date(2016, 12, 1, 10, 0, 0, 0, time.UTC), entry.Weigh{What: entry.WeighBloom, Mass: 7.8, State: entry.Cold})
	const want = `
2016-11-30-furnace-a: where the iron went
iron in
  ore 29.9 kg dry, 48 % iron                 14.4 kg (10.5 to 18.2)   weighed, share assumed         ==================------------
iron out
  bloom 7.8 kg, 75 % metal                   5.8 kg (4.7 to 7.0)      weighed, share assumed         ========----
  slag, not weighed, 45 % iron               8.5 kg (4.5 to 12.5)     solved for, share assumed      =======--------------
nothing to check against; slag was solved for: 19.0 kg (9.1 to 29.0)
what would firm it up most: weighing the slag
carbon: 44.6 kg (40.7 to 48.6) in with the charcoal, none weighed as left over: all went as gas (not tested)
mass without charcoal and wall: 29.9 kg in; not all that came out was weighed
oxygen that left as gas with the iron that became metal: 2.5 kg (2.0 to 3.0), were the ore hematite
yields, each with what it is counted on
  bloom: 26 % of the ore, dry (24 to 28)
  iron in the bloom: 41 % of the iron in the ore (27 to 54)
  charcoal, dry: 6.7 kg a kg of bloom
`
	if got := h.run("account", id); got != want[1:] {
		t.Errorf("got\n%s", got)
	}
	var j accountJSON
	h.decode(h.run("account", "--json", id), &j)
	if j.Verdict != account.NothingToCheck.String() || j.Redundancy != 0 || len(j.Doubtful) != 0 || j.Closure.Iron.Open != nil || j.Closure.Mass.Tested {
		t.Errorf("%+v", j)
	}
	if len(j.Sought) != 1 || j.Sought[0].What != "slag" || j.Sought[0].Amount.Basis != "estimated" {
		t.Errorf("%+v", j.Sought)
	}
}

// An invented smelt whose lab answers months later, to the house: with the wall
// measured there are two balances, and a slag sample that holds too much sand
// is found among the likeliest.
func TestAccountWithAssaysFromTheHouse(t *testing.T) {
	h := newHouse(t)
	const id = "2026-05-09-invented-a"
	kg := func(w entry.What, lot string, mass entry.Kilogram) entry.Part {
		return entry.Part{What: w, Lot: lot, Mass: entry.Some(mass)}
	}
	oxide := func(percent entry.Percent) entry.Assayed {
		return entry.Assayed{Percent: percent, PlusMinus: entry.Some(entry.Percent(1))}
	}
	h.keep(id, today,
		entry.Light{UID: "invented", Invented: true, Furnace: entry.Furnace{Name: "invented"},
			Lots: []entry.Lot{{Name: "pond", UID: "00000000000000a1", What: entry.Ore, Moisture: entry.Some(entry.Share(0))}}},
		entry.Charge{Parts: entry.Parts{kg(entry.Charcoal, "", 40), kg(entry.Ore, "pond", 22)}},
		entry.Sample{Of: "slag", Label: "1-S1"}, entry.Extract{},
		entry.Weigh{What: entry.WeighBloom, Mass: 4.8}, entry.Weigh{What: entry.WeighSlag, Mass: 17}, entry.Weigh{What: entry.WeighWall, Mass: 2.4, PlusMinus: entry.Some(entry.Kilogram(0.3))})
	ore := entry.Assay{Lot: "00000000000000a1", Basis: entry.AsRoasted, Parts: map[string]entry.Assayed{"Fe": oxide(50), "SiO2": oxide(14)}}
	h.keep(entry.House, today.AddDate(0, 3, 0), ore,
		entry.SampleResult{Sample: "1-S1", Assay: entry.Assay{Parts: map[string]entry.Assayed{"FeO": oxide(56), "SiO2": oxide(40)}}})
	var j accountJSON
	h.decode(h.run("account", "--json", id), &j)
	if j.Redundancy != 2 || j.Verdict != account.Doubtful.String() || len(j.Doubtful) == 0 || !j.Closure.Silica.Tested {
		t.Fatalf("%+v", j)
	}
	found := false
	for _, f := range j.Doubtful[0].Figures {
		found = found || f.What == "slag" && f.Of == "silica" && f.Would < 0.35
	}
	if !found || j.Doubtful[0].Odds < 0.5 {
		t.Errorf("likeliest %+v", j.Doubtful[0])
	}
	text := h.run("account", id)
	for _, want := range []string{"silica does not close by", "likeliest, ", "if just one figure is wrong: "} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in\n%s", want, text)
		}
	}
	t.Log(text)
}
