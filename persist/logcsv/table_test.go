package logcsv

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"
	"time"
	_ "time/tzdata" // the zone of the test, also where the machine has none

	"github.com/google/go-cmp/cmp"

	"chargehand/model/entry"
)

func happened(es []entry.Entry) []string {
	var ts []string
	for _, e := range es[1:] {
		ts = append(ts, e.Happened.Format(time.RFC3339))
	}
	return ts
}

func TestDaysOfTheRows(t *testing.T) {
	berlin, err := time.LoadLocation("Europe/Berlin")
	if err != nil {
		t.Fatal(err)
	}
	may9 := time.Date(2026, 5, 9, 0, 0, 0, 0, time.UTC)
	for _, c := range []struct {
		name, text string
		opt        Options
		undated    bool
		want       []string
	}{
		{"midnight", "clock,event\n23:50,tap\n00:10,tap\n", Options{}, true,
			[]string{"1970-01-01T23:50:00Z", "1970-01-02T00:10:00Z"}},
		{"midnight of a known day", "clock,event\n23:50:30,tap\n0:10,tap\n", Options{Date: may9, Location: berlin}, false,
			[]string{"2026-05-09T23:50:30+02:00", "2026-05-10T00:10:00+02:00"}},
		{"the date of the file holds", "clock,event,date\n12:00,tap,2126-01-05\n13:00,tap,\n", Options{Date: may9}, false,
			[]string{"2126-01-05T12:00:00Z", "2126-01-05T13:00:00Z"}},
		{"a date in the second row", "clock,event,date\n23:00,tap,\n01:00,tap,2020-01-05\n", Options{}, false,
			[]string{"2020-01-04T23:00:00Z", "2020-01-05T01:00:00Z"}},
		{"a date over a short step back", "clock,event,date\n20:00,tap,\n11:00,tap,2020-01-05\n", Options{}, false,
			[]string{"2020-01-04T20:00:00Z", "2020-01-05T11:00:00Z"}},
		{"a day's pause", "clock,event,date\n20:00,tap,day 1\n21:00,tap,day 3\n", Options{}, true,
			[]string{"1970-01-01T20:00:00Z", "1970-01-03T21:00:00Z"}},
		{"days of a known day", "clock,event,date\n20:00,tap,\n21:00,tap,day 3\n", Options{Date: may9}, false,
			[]string{"2026-05-09T20:00:00Z", "2026-05-11T21:00:00Z"}},
		// The smelt keeps the offset of its first row; clocks were put back
		// at 03:00 on 25 October 2026 (EU directive 2000/84/EC: last Sunday).
		{"the night summer time ends", "clock,event\n23:00,tap\n04:00,tap\n", Options{Date: time.Date(2026, 10, 24, 0, 0, 0, 0, time.UTC), Location: berlin}, false,
			[]string{"2026-10-24T23:00:00+02:00", "2026-10-25T04:00:00+02:00"}},
		{"a place of half hours", "clock,event\n00:00,tap\n", Options{Date: may9, Location: time.FixedZone("", 5*3600+1800)}, false,
			[]string{"2026-05-09T00:00:00+05:30"}},
		{"a place of old time, whose seconds no offset can say", "clock,event\n00:00,tap\n", Options{Date: may9, Location: time.FixedZone("", 3208)}, false,
			[]string{"2026-05-09T00:00:00+00:53"}},
		{"the place of an undated log means nothing", "clock,event\n00:00,tap\n", Options{Location: berlin}, true,
			[]string{"1970-01-01T00:00:00Z"}},
	} {
		es := read(t, c.text, c.opt)
		if d := cmp.Diff(c.want, happened(es)); d != "" {
			t.Errorf("%s:\n%s", c.name, d)
		}
		if l := es[0].Event.(entry.Light); l.Undated != c.undated {
			t.Errorf("%s: undated %v", c.name, l.Undated)
		}
		if _, off := es[0].Happened.Zone(); off%60 != 0 {
			t.Errorf("%s: an offset of %d s, which the journal cannot write", c.name, off)
		}
		if es[0].Happened.IsZero() || !es[0].Happened.Equal(es[1].Happened) {
			t.Errorf("%s: lit at %v", c.name, es[0].Happened)
		}
		text, _ := write(t, es)
		if d := sameButHash(es, read(t, text, c.opt)); d != "" {
			t.Errorf("%s comes back otherwise:\n%s\n%s", c.name, d, text)
		}
	}
}

func TestFilesOfOtherProgramsAndPlaces(t *testing.T) {
	want := read(t, "# a log\nclock,event,charcoal_kg,ore_kg,temp_c,note\n09:05,charge,1.9,0.5,,first\n9:20,tap,,,,\"a, b; \"\"c\"\"\"\n", Options{})
	for name, text := range map[string]string{
		"line ends of two bytes":   "# a log\r\nclock,event,charcoal_kg,ore_kg,temp_c,note\r\n09:05,charge,1.9,0.5,,first\r\n09:20,tap,,,,\"a, b; \"\"c\"\"\"\r\n",
		"mark before UTF-8":        "\ufeff# a log\nclock,event,charcoal_kg,ore_kg,temp_c,note\n09:05,charge,1.9,0.5,,first\n09:20,tap,,,,\"a, b; \"\"c\"\"\"\n",
		"semicolon, decimal comma": "# a log\nclock;event;charcoal_kg;ore_kg;temp_c;note\n09:05;charge;1,9;0,5;;first\n09:20;tap;;;;\"a, b; \"\"c\"\"\"\n",
		"semicolon, point":         "# a log\nclock;event;charcoal_kg;ore_kg;temp_c;note\n09:05;charge;1.9;0.5;;first\n09:20;tap;;;;\"a, b; \"\"c\"\"\"\n",
		"columns in another order": "# a log\nnote,ore_kg,event,clock,temp_c,charcoal_kg\nfirst,0.5,charge,09:05,,1.9\n\"a, b; \"\"c\"\"\",,tap,09:20,,\n",
		"blank rows and blanks":    "#a log  \n\nClock, Event ,charcoal_kg,ore_kg,temp_c,note\n,,,,,\n 09:05 , Charge ,1.90, +.5,, first \n  \n09:20,tap,,,, \"a, b; \"\"c\"\"\"",
		"noughts on a tap":         "# a log\nclock,event,charcoal_kg,ore_kg,temp_c,note\n09:05,charge,1.9,0.5,,first\n09:20,tap,0,0,,\"a, b; \"\"c\"\"\"\n",
	} {
		if d := sameButHash(want, read(t, text, Options{})); d != "" {
			t.Errorf("%s:\n%s", name, d)
		}
	}
}

func TestMeasuresOfALog(t *testing.T) {
	bucket := entry.Measure{Name: "bucket", Mass: entry.Some(entry.Kilogram(1.9))}
	scoop := entry.Measure{Name: "scoop", Mass: entry.Some(entry.Kilogram(0.25))}
	bag := entry.Measure{Name: "bag", What: entry.Charcoal, Mass: entry.Some(entry.Kilogram(18))}
	mug := entry.Measure{Name: "mug", What: entry.Ore}
	of := func(m entry.Measure, w entry.What) entry.Measure { m.What = w; return m }
	counted := "clock,event,measures,scoops\n12:00,charge,1,2\n"
	for _, c := range []struct {
		text          string
		given, want   []entry.Measure
		charcoal, ore string
	}{
		{"clock,event\n12:00,charge\n", nil, nil, "", ""},
		{counted, nil, []entry.Measure{{Name: "measure", What: entry.Charcoal}, {Name: "scoop", What: entry.Ore}}, "measure", "scoop"},
		{counted, []entry.Measure{scoop, bucket, bag}, []entry.Measure{of(scoop, entry.Ore), of(bucket, entry.Charcoal), bag}, "bucket", "scoop"},
		{counted, []entry.Measure{mug}, []entry.Measure{mug, {Name: "measure", What: entry.Charcoal}}, "measure", "mug"},
	} {
		given := slices.Clone(c.given)
		es := read(t, c.text, Options{Measures: c.given})
		if d := cmp.Diff(c.want, es[0].Event.(entry.Light).Measures); d != "" {
			t.Error(d)
		}
		ps := es[1].Event.(entry.Charge).Parts
		if ps[0].Measure != c.charcoal || ps[1].Measure != c.ore {
			t.Errorf("counted in %q and %q, want %q and %q", ps[0].Measure, ps[1].Measure, c.charcoal, c.ore)
		}
		if d := cmp.Diff(given, c.given); d != "" {
			t.Errorf("the caller's measures were written into:\n%s", d)
		}
	}
}

// What the table cannot say is counted, and what it can say is not.
func TestWhatIsLostOnTheWayOut(t *testing.T) {
	at := time.Date(2026, 5, 9, 10, 0, 0, 0, time.FixedZone("", 7200))
	bucket := func(n float64) entry.Part {
		return entry.Part{What: entry.Charcoal, Measure: "bucket", Count: entry.Some(entry.Count(n))}
	}
	ore := func(lot string, kg float64) entry.Part {
		return entry.Part{What: entry.Ore, Lot: lot, Mass: entry.Some(entry.Kilogram(kg))}
	}
	light := entry.Light{Measures: []entry.Measure{{Name: "bucket", What: entry.Charcoal}, {Name: "bag", What: entry.Charcoal}}}
	for _, c := range []struct {
		name string
		ev   entry.Event
		rows string // all that stands after the row of the light
		lost Lost
	}{
		{"nothing of a charge with a count and a mass", entry.Charge{Parts: entry.Parts{bucket(1), ore("", 0.5)}}, "10:01,charge,,1,0.5,,,,2026-05-09\n", Lost{}},
		{"nothing of charcoal alone", entry.Charge{Parts: entry.Parts{bucket(0.5)}}, "10:01,charge,,0.5,0,,,,2026-05-09\n", Lost{}},
		{"nothing of some beside none", entry.Charge{Parts: entry.Parts{{What: entry.Charcoal, Mass: entry.Some(entry.Kilogram(0))}, bucket(1), ore("", 2)}}, "10:01,charge,,1,2,,,,2026-05-09\n", Lost{}},
		{"nothing of ore alone", entry.Charge{Parts: entry.Parts{ore("", 2)}}, "10:01,charge,0,,2,,,,2026-05-09\n", Lost{}},
		{"nothing of a charge of which nothing is known", entry.Charge{}, "10:01,charge,,,,,,,2026-05-09\n", Lost{}},
		{"nothing of a fill of unknown mass", entry.Fill{}, "10:01,fill,,,,,,,2026-05-09\n", Lost{}},
		{"nothing of a blast off", entry.Blast{State: entry.BlastOff}, "10:01,air,,,,0,,,2026-05-09\n", Lost{}},
		{"lots", entry.Charge{Parts: entry.Parts{bucket(1), ore("pond", 0.2), ore("hill", 0.4)}}, "10:01,charge,,1,0.6,,,,2026-05-09\n", Lost{Partly: 1}},
		{"that it is one charge", entry.Charge{Parts: entry.Parts{bucket(1), {What: entry.Charcoal, Mass: entry.Some(entry.Kilogram(2))}, ore("", 1)}},
			"10:01,charge,,1,1,,,,2026-05-09\n10:01,charge,2,,0,,,,2026-05-09\n", Lost{Partly: 1}},
		{"a count in bags", entry.Fill{Parts: entry.Parts{{What: entry.Charcoal, Measure: "bag", Count: entry.Some(entry.Count(2))}}}, "10:01,fill,,,,,,,2026-05-09\n", Lost{Partly: 1}},
		{"flux beside ore", entry.Charge{Parts: entry.Parts{ore("", 1), {What: entry.Flux}}}, "10:01,charge,0,,1,,,,2026-05-09\n", Lost{Partly: 1}},
		{"flux alone", entry.Charge{Parts: entry.Parts{{What: entry.Flux}}}, "", Lost{Entries: 1}},
		{"a gate", entry.Blast{Gate: "8"}, "10:01,air,,,,,,,2026-05-09\n", Lost{Partly: 1}},
		{"a gate beside a volume", entry.Blast{Gate: "8", Volume: entry.Some(entry.LitrePerMinute(400))}, "10:01,air,,,,400,,,2026-05-09\n", Lost{Partly: 1}},
		{"the place of a temperature", entry.Temperature{Degrees: 1200, Where: "peep"}, "10:01,note,,,,,1200,,2026-05-09\n", Lost{Partly: 1}},
		{"the mass tapped", entry.Tap{Mass: entry.Some(entry.Kilogram(2))}, "10:01,tap,,,,,,,2026-05-09\n", Lost{Partly: 1}},
		{"how it was extracted", entry.Extract{None: true}, "10:01,extract,,,,,,,2026-05-09\n", Lost{Partly: 1}},
		{"a dip below the rim", entry.Dip{BelowRim: entry.Some(entry.Centimetre(9))}, "", Lost{Entries: 1}},
		{"a line end in a note", entry.Note{Text: "a\nb"}, "10:01,note,,,,,,a b,2026-05-09\n", Lost{Partly: 1}},
		{"a poke", entry.Poke{}, "", Lost{Entries: 1}},
		{"a phase that no row begins", entry.PhaseSet{Phase: entry.Closed}, "", Lost{Entries: 1}},
		{"a kind of a newer version", entry.Unknown{Name: "sung"}, "", Lost{Entries: 1}},
		{"a number no row may hold", entry.Temperature{Degrees: 1e9}, "", Lost{Entries: 1}},
		{"nothing by a key", entry.Keys{}, "", Lost{}},
	} {
		text, lost := write(t, []entry.Entry{{Happened: at, Event: light}, {Happened: at.Add(time.Minute), Event: c.ev}})
		want := "clock,event,charcoal_kg,measures,ore_kg,air_l_min,temp_c,note,date\n10:00,note,,,,,,,2026-05-09\n" + c.rows
		if d := cmp.Diff(want, text); d != "" {
			t.Errorf("%s:\n%s", c.name, d)
		}
		if lost != c.lost {
			t.Errorf("%s: lost %+v, want %+v", c.name, lost, c.lost)
		}
	}
}

// A smelt whose light names no measure counts in the one it counted in first.
func TestCountsInAMeasureThatTheLightDoesNotName(t *testing.T) {
	mug := func(n float64) entry.Event {
		return entry.Charge{Parts: entry.Parts{{What: entry.Ore, Measure: "mug", Count: entry.Some(entry.Count(n))}}}
	}
	text, lost := write(t, []entry.Entry{{Happened: Undated, Event: entry.Light{Undated: true}}, {Happened: Undated, Event: mug(1.5)}})
	if want := "clock,event,charcoal_kg,ore_kg,scoops,air_l_min,temp_c,note\n00:00,charge,0,,1.5,,,\n"; text != want || lost != (Lost{}) {
		t.Errorf("%+v\n%s", lost, text)
	}
}

func TestAnUncertainTimeIsCountedAsLost(t *testing.T) {
	_, lost := write(t, []entry.Entry{{Happened: Undated, Uncertain: time.Minute, Event: entry.Tap{}}})
	if lost != (Lost{Partly: 1}) {
		t.Errorf("got %+v", lost)
	}
}

// A group stands in one row only while its entries have one time and no two
// of them want the same cell.
func TestRowsOfAGroup(t *testing.T) {
	at := Undated.Add(10 * time.Hour)
	e := func(group string, min int, ev entry.Event) entry.Entry {
		return entry.Entry{Group: group, Happened: at.Add(time.Duration(min) * time.Minute), Event: ev}
	}
	air := func(v float64) entry.Event { return entry.Blast{Volume: entry.Some(entry.LitrePerMinute(v))} }
	es := []entry.Entry{
		e("", 0, entry.Light{Undated: true}),
		e("a", 1, entry.Tap{}), e("b", 1, entry.Note{Text: "of b"}), e("a", 1, air(400)), e("a", 1, entry.Note{Text: "of a"}),
		e("a", 2, entry.Temperature{Degrees: 1100}),                                           // amended to another minute
		e("c", 3, air(400)), e("c", 3, air(500)), e("c", 3, entry.Temperature{Degrees: 1200}), // two meters
		e("d", 4, air(400)), e("d", 4, entry.Blast{}), e("", 4, entry.Tap{}), e("", 4, air(90)), // no group: a row each
		e("f", 5, entry.Note{Text: "one"}), e("f", 5, entry.Note{Text: "two"}),
	}
	text, lost := write(t, es)
	want := `clock,event,charcoal_kg,ore_kg,air_l_min,temp_c,note
10:00,note,,,,,
10:01,tap,,,400,,of a
10:01,note,,,,,of b
10:02,note,,,,1100,
10:03,air,,,400,,
10:03,air,,,500,1200,
10:04,air,,,400,,
10:04,air,,,,,
10:04,tap,,,,,
10:04,air,,,90,,
10:05,note,,,,,one
10:05,note,,,,,two
`
	if d := cmp.Diff(want, text); d != "" || lost != (Lost{}) {
		t.Errorf("%+v\n%s", lost, d)
	}
}

func TestEntriesBeforeTheLight(t *testing.T) {
	// Amended to a minute before the midnight from which the days are counted.
	text, _ := write(t, []entry.Entry{{Happened: Undated, Event: entry.Light{Undated: true}}, {Happened: Undated.Add(-time.Minute), Event: entry.Tap{}}})
	if want := "clock,event,charcoal_kg,ore_kg,air_l_min,temp_c,note\n23:59,tap,,,,,\n"; text != want {
		t.Errorf("got\n%s", text)
	}
	text, _ = write(t, []entry.Entry{{Happened: Undated, Event: entry.Light{Undated: true}}, {Happened: Undated.Add(-time.Minute), Event: entry.Tap{}},
		{Happened: Undated.Add(72 * time.Hour), Event: entry.Extract{}}})
	es := read(t, text, Options{})
	if pause := es[2].Happened.Sub(es[1].Happened); pause != 72*time.Hour+time.Minute {
		t.Errorf("%v apart in\n%s", pause, text)
	}
}

func TestBoundsThemselvesAreTaken(t *testing.T) {
	for c := range column(columns) {
		if !c.numeric() {
			continue
		}
		for _, v := range []float64{specs[c].least, specs[c].most} {
			text := fmt.Sprintf("clock,event,%s\n12:00,charge,%g\n", c, v)
			again, _ := write(t, read(t, text, Options{}))
			if !strings.Contains(again, ","+format(number{Value: v, Known: true})+",") {
				t.Errorf("%s became\n%s", text, again)
			}
		}
	}
}

func TestMinusNoughtIsNought(t *testing.T) {
	es := read(t, "clock,event,temp_c\n12:00,note,-0\n", Options{})
	if v := float64(es[1].Event.(entry.Temperature).Degrees); math.Signbit(v) {
		t.Error("minus nought")
	}
}

func TestRowsAreWrittenInOrderOfTime(t *testing.T) {
	at := Undated.Add(10 * time.Hour)
	text, _ := write(t, []entry.Entry{
		{Happened: at.Add(time.Hour), Event: entry.Extract{}}, {Happened: at, Event: entry.Light{Undated: true}}, {Happened: at, Event: entry.Tap{}},
	})
	if !strings.HasSuffix(text, "\n10:00,tap,,,,,\n11:00,extract,,,,,\n") {
		t.Error(text)
	}
}
