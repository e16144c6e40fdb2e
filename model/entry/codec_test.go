package entry

import (
	"encoding/json"
	"errors"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
)

var at = Wall(time.Date(2026, 5, 9, 14, 32, 5, 120e6, time.FixedZone("", 2*3600)))

// full holds an entry of every kind, as a person would key some of them and with
// every field set.
func full(t testing.TB) []Entry {
	parts := Parts{
		{What: Charcoal, Measure: "bucket", Count: Some(Count(1)), Mass: Some(Kilogram(1.92))},
		{What: Ore, Lot: "pond", Measure: "scoop", Count: Some(Count(2.5))},
		{What: Flux},
	}
	events := []Event{
		Light{UID: "a1", Furnace: Furnace{Name: "Reed Hollow", Bore: Some(Centimetre(25)), OreUnder: true, Practice: SlagBowl,
			Blower: []Blast{{Gate: "8", Volume: Some(LitrePerMinute(610))}}},
			Measures: []Measure{{Name: "bucket", What: Charcoal, Mass: Some(Kilogram(1.9)), Guessed: true}},
			Lots:     []Lot{{Name: "pond", What: Ore, Iron: Some(Share(0.51))}}, Recipe: parts, Source: []string{"a log"}},
		PhaseSet{Phase: Preheat}, Recipe{Next: parts, Ramp: []RecipeStep{{Charges: 5, Parts: parts}}}, Fill{Parts: parts},
		Charge{Parts: parts}, Level{Charge: Ref{Seq: 4}, Remark: Heaped}, Dip{BelowRim: Some(Centimetre(12))}, Poke{},
		Blast{State: BlastOff, Volume: Some(LitrePerMinute(0)), Gate: "8", Strokes: Some(PerMinute(63)), Tuyeres: Some(Count(4)), Pressure: Some(Pascal(900)), Meter: "vane",
			Stroke: Some(Litre(9)), Read: AirReading{With: OrificePlate, Pipe: Some(Millimetre(52)), Hole: Some(Millimetre(30)), Pressure: Some(Pascal(240)), Speed: Some(MetrePerSecond(5))}},
		Rod{}, Tuyere{Angle: Some(Degree(22.5)), Swapped: "copper"}, Tap{Mass: Some(Kilogram(2))}, Arch{Open: true}, Look{At: AtPeep, Sees: "white"},
		Temperature{Degrees: -3, Where: "row A", AboveTuyere: Some(Centimetre(10))}, Weigh{What: WeighMeasure, Name: "bucket", Mass: 1.85, FromNow: true, Why: Wetter},
		Sample{Of: "slag"}, OreHeld{Again: true}, LastOre{}, BurnDown{}, Extract{From: "top", None: true}, Pause{Why: "rain"}, Resume{}, HandOver{To: "MK"},
		ForgeHeat{Number: 1, Before: Some(Kilogram(5))}, Note{Text: "a < b & c"}, Acknowledge{Rule: "late", OnsetMs: 7}, CautionShown{Caution: "co"},
		Setting{Name: "theme", Value: "light"}, ClockJump{ByMs: -5, ShiftMs: 5, Boot: "b", Right: time.Date(2026, 5, 9, 14, 28, 7, 0, time.UTC)}, Testimony{Rule: "late", State: "raised"}, Strike{Target: Ref{Seq: 3}},
		Amend{Target: Ref{Seq: 4}, Event: Charge{Parts: parts}, Happened: at, Uncertain: time.Minute},
		Keys{Pressed: []Press{{Key: "down", AfterMs: 3, Held: true}}},
		FurnaceBuilt{Furnace: Furnace{Name: "x"}}, LotStored{Lot: Lot{Name: "l", What: Ore}}, MeasureNamed{Measure: Measure{Name: "m", What: Ore}}, Plan{Name: "p"},
	}
	for _, row := range table {
		events = append(events, filled(t, row))
	}
	es := make([]Entry, len(events))
	for i, ev := range events {
		es[i] = Entry{Version: Version, Stream: "s", Seq: uint64(i + 1), Prev: "ff", Happened: at, Uncertain: 1500 * time.Millisecond, Kept: at,
			Boot: "b", Mono: 99 * time.Millisecond, By: "MK", Screen: "fire", Key: "c", Group: "g", Local: "l", Sure: "heavy", From: Origin{Book: "b1", Seq: 9}, Event: ev}
	}
	return append(es, Entry{Version: Version, Stream: "s", Seq: 99, Happened: at})
}

func TestEveryKindComesBackAsItWas(t *testing.T) {
	seen := map[Kind]bool{}
	for _, e := range full(t) {
		b, err := Encode(e)
		if err != nil {
			t.Fatal(err)
		}
		if strings.Contains(string(b), "\n") {
			t.Errorf("%s: more than one line", e.Kind())
		}
		back, err := Decode(b)
		if err != nil {
			t.Fatalf("%s: %v in %s", e.Kind(), err, b)
		}
		if d := cmp.Diff(e, back); d != "" {
			t.Errorf("%s:\n%s", e.Kind(), d)
		}
		seen[e.Kind()] = true
	}
	for _, k := range Kinds() {
		if !seen[k] {
			t.Errorf("no entry of kind %s was tried", k)
		}
	}
}

func TestNothingIsNotTheSameAsNotRecorded(t *testing.T) {
	zero, _ := json.Marshal(Part{What: Ore, Mass: Some(Kilogram(0))})
	blank, _ := json.Marshal(Part{What: Ore})
	if string(zero) != `{"what":"ore","mass_kg":0}` || string(blank) != `{"what":"ore"}` {
		t.Errorf("got %s and %s", zero, blank)
	}
	if !(Part{What: Ore, Mass: Some(Kilogram(0))}).None() || (Part{What: Ore}).None() {
		t.Error("a recorded nought is none, a blank is not")
	}
}

func TestKindOfANewerVersionIsKeptRaw(t *testing.T) {
	line := `{"v":1,"stream":"s","seq":1,"happened":"2026-05-09T14:32:05.120+02:00","kind":"moon","event":{"phase":[1,2]}}`
	e, err := Decode([]byte(line))
	if err != nil {
		t.Fatal(err)
	}
	u, ok := e.Event.(Unknown)
	if !ok || u.Name != "moon" || string(u.Raw) != `{"phase":[1,2]}` {
		t.Fatalf("got %#v", e.Event)
	}
	if b, _ := Encode(e); string(b) != line {
		t.Errorf("written again as %s", b)
	}
}

func TestLinesThatAreNoEntries(t *testing.T) {
	if _, err := Decode([]byte(`{"v":2,"stream":"s","seq":1,"happened":"2026-05-09T14:32:05Z"}`)); !errors.Is(err, ErrNewer) {
		t.Errorf("a newer frame gives %v", err)
	}
	for _, line := range []string{
		``, `{}`, `[]`, `{"v":1,"stream":"s"}`, `{"v":1,"stream":"","seq":1,"happened":"2026-05-09T14:32:05Z"}`,
		`{"v":1,"stream":"s","seq":1,"happened":"noon"}`, `{"v":1,"stream":"s","seq":1}`,
		`{"v":1,"stream":"s","seq":1,"happened":"2026-05-09T14:32:05Z","kind":"dip","event":{"below_rim_cm":"12"}}`,
	} {
		if e, err := Decode([]byte(line)); err == nil {
			t.Errorf("%q was read as %+v", line, e)
		}
	}
}

func TestResolveTurnsALocalNameIntoASequence(t *testing.T) {
	e := Entry{Event: Strike{Target: Ref{Local: "k7"}}}
	got, missing := e.Resolve(func(l string) (uint64, bool) { return 12, l == "k7" })
	if missing != "" || got.Event != (Strike{Target: Ref{Seq: 12}}) {
		t.Errorf("got %+v, missing %q", got.Event, missing)
	}
	if _, missing = e.Resolve(func(string) (uint64, bool) { return 0, false }); missing != "k7" {
		t.Errorf("missing %q", missing)
	}
}

func FuzzDecode(f *testing.F) {
	for _, e := range full(f) {
		b, _ := Encode(e)
		f.Add(b)
	}
	f.Fuzz(func(t *testing.T, line []byte) {
		e, err := Decode(line)
		if err != nil {
			return
		}
		b, err := Encode(e)
		if err != nil {
			t.Fatalf("read but not written: %v", err)
		}
		again, err := Decode(b)
		if err != nil {
			t.Fatalf("written but not read: %v: %s", err, b)
		}
		if b2, _ := Encode(again); string(b) != string(b2) {
			t.Fatalf("%s became %s", b, b2)
		}
	})
}
