package model

import (
	"fmt"
	"math"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/fold"
	"chargehand/model/solve"
)

// day keys a random smelt the way a person and a machine do: in order, on a
// wall clock that may be stepped, over restarts of a machine, with late
// entries, strikes and amendments of earlier ones.
type day struct {
	t       *rapid.T
	entries []entry.Entry
	passed  time.Duration // true time since light
	drift   time.Duration // how wrong the wall clock is
	boot    int
	booted  time.Duration // true time at which this start began
}

var start = entry.Wall(time.Date(2026, 5, 9, 22, 40, 0, 0, time.FixedZone("", 7200)))

func randomDay(t *rapid.T) []entry.Entry {
	d := &day{t: t, booted: -time.Hour}
	f := entry.Furnace{Name: "invented", OreUnder: rapid.Bool().Draw(t, "ore under")}
	if rapid.Bool().Draw(t, "measured") {
		f.Bore, f.Stack, f.Rim = entry.Some(entry.Centimetre(25)), entry.Some(entry.Centimetre(50)), entry.Some(entry.Centimetre(55))
	}
	d.key(entry.Light{UID: "u", Furnace: f, Measures: []entry.Measure{
		{Name: "bucket", What: entry.Charcoal, Mass: entry.Some(entry.Kilogram(1.8)), Guessed: true}, {Name: "scoop", What: entry.Ore}}})
	for range rapid.IntRange(0, 60).Draw(t, "acts") {
		d.passed += time.Duration(rapid.IntRange(1, 1200).Draw(t, "seconds")) * time.Second
		switch rapid.IntRange(0, 19).Draw(t, "turn") {
		case 0:
			d.drift += time.Duration(rapid.IntRange(-3600, 3600).Draw(t, "step")) * time.Second
			d.key(entry.ClockJump{ByMs: d.drift.Milliseconds()})
		case 1:
			d.boot++
			d.booted = d.passed - time.Duration(rapid.IntRange(1, 300).Draw(t, "boot"))*time.Second
		case 2, 3:
			d.key(entry.Strike{Target: d.target()})
		case 4, 5:
			a := entry.Amend{Target: d.target(), Event: d.event()}
			if rapid.Bool().Draw(t, "timed") {
				a.Happened = d.wall().Add(-time.Duration(rapid.IntRange(0, 3000).Draw(t, "ago")) * time.Second)
			}
			d.key(a)
		default:
			d.key(d.event())
		}
	}
	return d.entries
}

func (d *day) wall() time.Time { return entry.Wall(start.Add(d.passed + d.drift)) }

func (d *day) target() entry.Ref {
	return entry.Ref{Seq: uint64(rapid.IntRange(1, len(d.entries)).Draw(d.t, "target"))}
}

func (d *day) key(ev entry.Event) {
	e := entry.Entry{
		Version: entry.Version, Stream: "s", Seq: uint64(len(d.entries) + 1), Kept: d.wall(), Happened: d.wall(),
		Boot: fmt.Sprint("boot ", d.boot), Mono: d.passed - d.booted, Event: ev,
	}
	if len(d.entries) > 0 && rapid.IntRange(0, 5).Draw(d.t, "late") == 0 {
		e.Happened = e.Happened.Add(-time.Duration(rapid.IntRange(1, 2400).Draw(d.t, "by")) * time.Second)
	}
	d.entries = append(d.entries, e)
}

func (d *day) event() entry.Event {
	t := d.t
	quantity := func() float64 { return float64(rapid.IntRange(0, 40).Draw(t, "amount")) / 10 }
	switch rapid.IntRange(0, 13).Draw(t, "event") {
	case 0:
		return entry.Fill{Parts: entry.Parts{{What: entry.Charcoal, Measure: "bucket", Count: entry.Some(entry.Count(3))}}}
	case 1:
		return entry.Dip{BelowRim: entry.Some(entry.Centimetre(quantity() * 10))}
	case 2:
		return entry.Poke{}
	case 3:
		return entry.Blast{Volume: entry.Some(entry.LitrePerMinute(quantity() * 300))}
	case 4:
		return entry.Weigh{What: entry.WeighMeasure, Name: rapid.SampledFrom([]string{"bucket", "scoop"}).Draw(t, "measure"), Mass: entry.Kilogram(quantity()),
			FromNow: rapid.Bool().Draw(t, "from now"), Why: rapid.SampledFrom([]entry.Reweighed{"", entry.Wetter, entry.Fuller}).Draw(t, "why")}
	case 5:
		return entry.OreHeld{Again: rapid.Bool().Draw(t, "again")}
	case 6:
		return entry.Level{Charge: d.target(), Remark: rapid.SampledFrom([]entry.LevelRemark{entry.NotToMark, entry.Heaped}).Draw(t, "remark")}
	case 7:
		return entry.Recipe{Next: entry.Parts{{What: entry.Charcoal, Measure: "bucket", Count: entry.Some(entry.Count(1))}}}
	case 8:
		return entry.Charge{Parts: entry.Parts{{What: entry.Ore, Measure: "scoop", Count: entry.Some(entry.Count(quantity()))}}}
	case 9:
		return entry.BurnDown{}
	}
	return entry.Charge{Parts: entry.Parts{
		{What: entry.Charcoal, Measure: "bucket", Count: entry.Some(entry.Count(1))},
		{What: entry.Ore, Mass: entry.Some(entry.Kilogram(quantity()))},
	}}
}

// A reading depends on the entries up to the known one alone: whether later
// ones are there or not, however often it is taken, and over the wire and back.
func TestAReadingDependsOnTheEntriesAlone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		entries := randomDay(t)
		known := uint64(rapid.IntRange(1, len(entries)).Draw(t, "known"))
		at := time.Duration(rapid.IntRange(0, 15*3600).Draw(t, "at")) * time.Second
		whole := Read(entries, known, at)
		same(t, "known then, and as it grew", whole, Read(entries[:known], fold.All, at))
		same(t, "taken twice", whole, Read(entries, known, at))
		same(t, "over the wire", whole, Read(again(t, entries), known, at))
	})
}

// No random day gives a figure that is not a number or percentiles out of order.
func TestAReadingIsAlwaysSound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		entries := randomDay(t)
		r := Read(entries, fold.All, time.Duration(rapid.IntRange(0, 20*3600).Draw(t, "at"))*time.Second)
		for n := range figure.Count {
			f := r.Figure(n)
			for _, v := range []float64{f.P10, f.P50, f.P90} {
				if math.IsNaN(v) || math.IsInf(v, 0) {
					t.Fatalf("%s is %+v", n.Key(), f)
				}
			}
			if f.P10 > f.P50 || f.P50 > f.P90 {
				t.Fatalf("%s is out of order: %+v", n.Key(), f)
			}
			if !f.Known() && f.Band != (figure.Figure{}).Band {
				t.Fatalf("%s is unknown and has a value: %+v", n.Key(), f)
			}
		}
	})
}

// Nor does one with the shaft solver's figures; it says that they are current,
// and Read itself has none.
func TestASolvedReadingIsAlwaysSound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		entries := randomDay(t)
		at := time.Duration(rapid.IntRange(0, 90*60).Draw(t, "at")) * time.Second
		read := Read(entries, fold.All, at)
		if read.Solver != figure.Unsolved || read.Figure(figure.HearthTemperature).Known() {
			t.Fatal("Read solves")
		}
		r := Solved(read, Solve(new(solve.Solver), entries, fold.All, at))
		if r.Solver != figure.Solved && r.Phase != "" {
			t.Fatalf("solver %d", r.Solver)
		}
		for n := range figure.Count {
			f := r.Figure(n)
			for _, v := range []float64{f.P10, f.P50, f.P90} {
				if math.IsNaN(v) || math.IsInf(v, 0) {
					t.Fatalf("%s is %+v", n.Key(), f)
				}
			}
			if f.P10 > f.P50 || f.P50 > f.P90 {
				t.Fatalf("%s is out of order: %+v", n.Key(), f)
			}
		}
		for _, z := range r.Zones {
			if !(z.Bottom < z.Top) || !(z.Degrees > -60 && z.Degrees < 2500) {
				t.Fatalf("zone %+v", z)
			}
		}
	})
}

// What was accepted in order stays in order, whatever the wall clock did.
func TestAcceptanceStaysInOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		before := time.Duration(math.MinInt64) // an amended light moves the origin
		for _, l := range fold.Lines(randomDay(t), fold.All) {
			if l.Accepted < before {
				t.Fatalf("entry %d was accepted at %v, after one at %v", l.Seq(), l.Accepted, before)
			}
			before = l.Accepted
		}
	})
}

func same(t *rapid.T, how string, a, b figure.Reading) {
	if d := cmp.Diff(a, b); d != "" {
		t.Fatalf("%s: %s", how, d)
	}
}

func again(t *rapid.T, entries []entry.Entry) []entry.Entry {
	back := make([]entry.Entry, len(entries))
	for i, e := range entries {
		line, err := entry.Encode(e)
		if err != nil {
			t.Fatal(err)
		}
		if back[i], err = entry.Decode(line); err != nil {
			t.Fatal(err)
		}
	}
	return back
}

// A smelt of ten hours and 500 entries, read at any moment as known by any
// entry.
func BenchmarkRead(b *testing.B) {
	entries := longDay()
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		at := time.Duration(i*37%600) * time.Minute
		Read(entries, uint64(i*101%500+1), at)
	}
}

func longDay() []entry.Entry {
	es := []entry.Entry{{Version: 1, Stream: "s", Seq: 1, Kept: start, Happened: start, Boot: "b", Event: entry.Light{
		Furnace:  entry.Furnace{Bore: entry.Some(entry.Centimetre(25)), Stack: entry.Some(entry.Centimetre(60))},
		Measures: []entry.Measure{{Name: "bucket", What: entry.Charcoal, Mass: entry.Some(entry.Kilogram(1.9))}, {Name: "scoop", What: entry.Ore, Mass: entry.Some(entry.Kilogram(0.5))}}}}}
	for i := 1; i < 500; i++ {
		var ev entry.Event = entry.Charge{Parts: entry.Parts{{What: entry.Ore, Measure: "scoop", Count: entry.Some(entry.Count(1))}}}
		switch i % 8 {
		case 0:
			ev = entry.Charge{Parts: entry.Parts{{What: entry.Charcoal, Measure: "bucket", Count: entry.Some(entry.Count(1))}}}
		case 3:
			ev = entry.Blast{Volume: entry.Some(entry.LitrePerMinute(690 + entry.LitrePerMinute(i%20)))}
		case 5:
			ev = entry.Amend{Target: entry.Ref{Seq: uint64(i)}, Event: ev}
		case 7:
			ev = entry.Note{Text: "peep white"}
		}
		t := start.Add(time.Duration(i) * 72 * time.Second)
		es = append(es, entry.Entry{Version: 1, Stream: "s", Seq: uint64(i + 1), Kept: t, Happened: t, Boot: "b", Mono: t.Sub(start), Event: ev})
	}
	return es
}
