package main

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/fold"
	"chargehand/model/session"
	"chargehand/persist/logcsv"
)

// What the course of 30 Nov 2016 weighed by (Markewitz, data sheet: log 03):
// buckets of 1.92 kg, the ore in kilograms; its tuyere stood 22.5 cm above the floor (testdata/smelts). The scoop is the author's nominal
// one of other days (log 01).
const (
	bucketKg = 1.92
	scoopKg  = 0.25
)

// Log 03 keyed in by hand, key by key, gives the state that importing it gives.
func TestLogKeyedInIsTheLogImported(t *testing.T) {
	path := filepath.Join(t.TempDir(), "book.db")
	d := sit(t, path, entry.Stamp{Wall: clock03(t, "09:30"), Boot: "first", Mono: time.Hour})
	keyIn03(d)
	keyed := d.smelt()
	d.leave()

	light := keyed[0].Event.(entry.Light)
	want := []entry.Measure{
		{Name: "bucket", What: entry.Charcoal, Mass: entry.Some(entry.Kilogram(bucketKg))},
		{Name: "scoop", What: entry.Ore, Mass: entry.Some(entry.Kilogram(scoopKg))},
	}
	if f := light.Furnace; f.Bore != entry.Some(entry.Centimetre(25)) || f.Stack != entry.Some(entry.Centimetre(50)) || !cmp.Equal(want, light.Measures) {
		t.Errorf("lit with %+v", light)
	}
	imported := import03(t, light)
	if diff := cmp.Diff(happenings(imported), happenings(keyed)); diff != "" {
		t.Errorf("events (- imported, + keyed):\n%s", diff)
	}
	sameTotals(t, imported, keyed)
	sameFigures(t, weighedAsKeyed(imported), keyed)

	again := sit(t, path, entry.Stamp{Wall: clock03(t, "23:00"), Boot: "third"})
	if diff := cmp.Diff(keyed, again.smelt()); diff != "" {
		t.Errorf("after closing and opening the book:\n%s", diff)
	}
}

// clock03 is a time on the day of log 03.
func clock03(t testing.TB, hhmm string) time.Time {
	t.Helper()
	at, err := time.ParseInLocation("2006-01-02 15:04", "2016-11-30 "+hhmm, time.UTC)
	if err != nil {
		t.Fatal(err)
	}
	return at
}

// keyIn03 keys in log 03. The clock stands while a row is keyed, since the log
// is kept to the minute. The fill, whose time the log gives as reckoned back,
// is entered late; at 15:30 the machine goes off and the program comes back.
func keyIn03(d *desk) {
	at := func(hhmm string) { d.wait(clock03(d.t, hhmm)) }
	note := func(text string) { d.press("n"); d.write(text); d.press("enter") }
	blast := func(lMin string) { d.press("b"); d.write(lMin); d.press("enter") }
	late := func(hhmm string, what string) { d.press("o", "e"); d.write(hhmm); d.press("enter", what) }
	d.press("r")
	for _, text := range []string{"", "Course", "25.0", "50.0", "50.0", "22.5", "bucket", "1.92", "", "scoop", "0.250", "0", "", "", "DM", ""} {
		if text != "" {
			d.write(text)
		}
		d.press("down")
	}
	d.press("enter", "o", "p")
	note("wood splits; source gives end about 14:30 on a different clock (E = estimated), 2:30 long; times before 12:00 here are back-calculated")

	at("12:00")
	late("11:20", "f")
	d.press("k")
	d.write("5.76")
	d.press("enter")
	late("11:20", "n")
	d.write("3 buckets ungraded charcoal, 40 min long; back-calculated time")
	d.press("enter")
	blast("400,8")
	note("main sequence starts, blower gate at mark 8; meter reads 6.68 m/s")

	for _, c := range charges03 {
		at(c.at)
		if c.at == "15:40" {
			d.reboot("second")
			d.press("g") // goes on with the smelt
		}
		d.press(c.before...)
		d.press(c.key)
		if c.byWeight != nil {
			for _, kg := range c.byWeight {
				d.write(kg)
				d.press("enter")
			}
		}
		if c.air != "" {
			blast(c.air)
		}
		note(c.note)
	}
	d.press("o", "b")
	note("burn-down starts; own time not recorded")
	d.wait(clock03(d.t, "19:05").Add(-time.Second)) // the same key twice at once is a glove
	d.press("o")
	at("19:05")
	d.press("o", "r")
	note("extraction starts")
	d.wait(clock03(d.t, "19:06")) // the last keys are written down
}

// charges03 are the charges of log 03 and the keys for them: c as shown, after
// the arrows that change what is shown, f charcoal alone, o r w a weighed one.
var charges03 = []struct {
	at       string
	before   []string
	key      string
	byWeight []string
	air      string
	note     string
}{
	{at: "12:30", key: "c", note: "changed to graded charcoal; bucket 4"},
	{at: "12:43", key: "c", air: "399", note: "bucket 5"},
	{at: "13:02", key: "0", note: "bucket 6"},
	{at: "13:19", key: "c", air: "446.4", note: "bucket 7; gate to mark 9, air up"},
	{at: "13:34", key: "c", air: "441", note: "bucket 8; gate to mark 10"},
	{at: "13:46", key: "f", air: "459", note: "bucket 9; gate to mark 11"},
	{at: "14:03", before: []string{"up", "up", "up", "up"}, key: "c", note: "bucket 10; first ore called at 13:50, limonite"},
	{at: "14:16", key: "c", note: "bucket 11"},
	{at: "14:30", key: "c", air: "465", note: "bucket 12"},
	{at: "14:43", key: "c", note: "bucket 13"},
	{at: "14:55", key: "c", note: "bucket 14"},
	{at: "15:10", before: []string{"up", "up"}, key: "c", note: "bucket 15; last of limonite"},
	{at: "15:25", key: "c", air: "465", note: "bucket 16; changed to bog ore analogue"},
	{at: "15:40", key: "c", note: "bucket 17"},
	{at: "15:53", key: "c", note: "bucket 18"},
	{at: "16:07", before: []string{"up", "up"}, key: "c", note: "bucket 19"},
	{at: "16:24", key: "c", note: "bucket 20"},
	{at: "16:38", key: "c", note: "bucket 21"},
	{at: "16:54", key: "c", note: "bucket 22"},
	{at: "17:08", key: "c", note: "bucket 23"},
	{at: "17:23", key: "c", note: "bucket 24"},
	{at: "17:37", key: "c", note: "bucket 25"},
	{at: "17:51", key: "c", note: "bucket 26"},
	{at: "18:05", key: "c", note: "bucket 27"},
	{at: "18:21", before: []string{"o", "r"}, key: "w", byWeight: []string{"1.92", "2.7"}, note: "bucket 28; last ore"},
	{at: "18:33", key: "f", note: "bucket 29; graded charcoal to cover"},
}

// import03 reads the log with the furnace and the measures that were keyed.
func import03(t *testing.T, keyed entry.Light) []entry.Entry {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(root, "testdata", "logs", "03-norse-course-2016-11-30.csv"))
	if err != nil {
		t.Fatal(err)
	}
	entries, err := logcsv.Read(bytes.NewReader(text), logcsv.Options{
		Date: clock03(t, "00:00"), Stream: "imported", UID: "imported",
		Furnace: keyed.Furnace, Measures: keyed.Measures, Location: time.UTC,
	})
	if err != nil {
		t.Fatal(err)
	}
	return entries
}

// happening is what an entry in force says, as far as a log can say it.
type happening struct {
	At    time.Duration
	Event entry.Event
	Parts string // of a fill or charge, as they weigh
}

// happenings are the entries in force that a log has a place for. What it has
// no place for are the keys, what the program showed, the recipe and which way the bloom came out; a
// part of nothing is as good as none; masses are compared, not how they were
// come by.
func happenings(entries []entry.Entry) []happening {
	var hs []happening
	for _, l := range fold.InForce(entries, fold.All) {
		h := happening{l.At, l.Event, ""}
		switch ev := l.Event.(type) {
		case entry.Keys, entry.CautionShown, entry.Testimony, entry.Recipe:
			continue
		case entry.Light:
			h.Event = entry.Light{Furnace: ev.Furnace, Measures: ev.Measures}
		case entry.Extract:
			h.Event = entry.Extract{}
		case entry.Fill:
			h.Event, h.Parts = entry.Fill{}, weighed(ev.Parts)
		case entry.Charge:
			h.Event, h.Parts = entry.Charge{}, weighed(ev.Parts)
		}
		hs = append(hs, h)
	}
	return hs
}

// weighed is what parts weigh, in grams.
func weighed(ps entry.Parts) string {
	s := ""
	for _, p := range ps {
		kg := float64(p.Mass.Value)
		if !p.Mass.Known {
			kg = float64(p.Count.Value) * map[string]float64{"bucket": bucketKg, "scoop": scoopKg}[p.Measure]
		}
		if kg != 0 {
			s += fmt.Sprintf("%s %.0f g ", p.What, kg*1000)
		}
	}
	return s
}

// weighedAsKeyed books the masses of the log as they were keyed: by the measure
// where they were counted, by weight at 18:21. The weights stay what they are;
// the spreads differ, since every bucket of a kind errs by the same scales.
func weighedAsKeyed(entries []entry.Entry) []entry.Entry {
	out := slices.Clone(entries)
	for i, e := range out {
		ev, ok := e.Event.(entry.Charge)
		if !ok {
			continue
		}
		parts := slices.Clone(ev.Parts)
		for j, p := range parts {
			byWeight := e.Happened.Format("15:04") == "18:21"
			switch {
			case byWeight:
				parts[j].Measure, parts[j].Count = "", entry.None[entry.Count]()
			case p.What == entry.Charcoal:
				parts[j].Mass = entry.None[entry.Kilogram]()
			case p.What == entry.Ore:
				parts[j] = entry.Part{What: entry.Ore, Measure: "scoop", Count: entry.Some(entry.Count(p.Mass.Value / scoopKg))}
			}
		}
		out[i].Event = entry.Charge{Parts: parts}
	}
	return out
}

// moments03 are moments to look at: in the preheat, the fill, at and between
// charges, in the burn-down and at the end.
var moments03 = []string{"09:45", "11:20", "11:59", "12:30", "13:50", "14:03", "15:33", "16:20", "18:22", "18:50", "19:05"}

// sameTotals compares what rests on masses and times alone with the log as it
// is, by the middle values.
func sameTotals(t *testing.T, imported, keyed []entry.Entry) {
	t.Helper()
	for _, hhmm := range moments03 {
		at := clock03(t, hhmm).Sub(clock03(t, "09:30"))
		want, got := readAt(imported, fold.All, at), readAt(keyed, fold.All, at)
		for _, n := range []figure.Name{
			figure.Elapsed, figure.SinceCharge, figure.NextCharge, figure.CharcoalCharged, figure.CharcoalDry, figure.OreCharged, figure.OreDry,
			figure.RatioLast, figure.RatioFive, figure.RatioSmelt, figure.BurnRate, figure.BurnMost, figure.BurnLeast, figure.Air, figure.AirPerArea,
		} {
			w, g := want.Figure(n), got.Figure(n)
			if w.Known() != g.Known() || math.Abs(w.P50-g.P50) > 1e-9*math.Max(1, math.Abs(w.P50)) {
				t.Errorf("%s, %s: keyed %v, imported %v", hhmm, n.Key(), g, w)
			}
		}
		if want.Phase != got.Phase || len(want.Charges) != len(got.Charges) {
			t.Errorf("%s: keyed %s with %d charges, imported %s with %d", hhmm, got.Phase, len(got.Charges), want.Phase, len(want.Charges))
		}
	}
}

// sameFigures compares everything that state shows, with its spreads and layers.
func sameFigures(t *testing.T, imported, keyed []entry.Entry) {
	t.Helper()
	for _, hhmm := range moments03 {
		at := clock03(t, hhmm).Sub(clock03(t, "09:30"))
		want, got := stateOf(readAt(imported, fold.All, at), nil, nil), stateOf(readAt(keyed, fold.All, at), nil, nil)
		want.Smelt, want.Known = got.Smelt, got.Known
		if diff := cmp.Diff(want, got, cmpopts.EquateApprox(1e-12, 1e-12)); diff != "" {
			t.Errorf("%s (- imported, + keyed):\n%s", hhmm, diff)
		}
	}
}

// readAt is what is known of a smelt at a moment, from its first entry on.
func readAt(entries []entry.Entry, known uint64, at time.Duration) *figure.Reading {
	return session.Open("s", entries).AsOf(known, at).Reading()
}
