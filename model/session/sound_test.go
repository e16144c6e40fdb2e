package session

import (
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

// readAt is what is known of a smelt at a moment, from its first entry on.
func readAt(entries []entry.Entry, known uint64, at time.Duration) *figure.Reading {
	return Open("s", entries).AsOf(known, at).Reading()
}

// solvedAt is that with the shaft solver's figures.
func solvedAt(entries []entry.Entry, at time.Duration) *figure.Reading {
	s := Open("s", entries).AsOf(fold.All, at)
	if j, ok := s.Job(); ok {
		s = s.Solved(j.Run(new(solve.Solver)))
	}
	return s.Reading()
}

// A reading depends on the entries up to the known one alone: whether later
// ones are there or not, however often it is taken, and over the wire and back.
func TestAReadingDependsOnTheEntriesAlone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		entries := randomDay(t)
		known := uint64(rapid.IntRange(1, len(entries)).Draw(t, "known"))
		at := time.Duration(rapid.IntRange(0, 15*3600).Draw(t, "at")) * time.Second
		whole := readAt(entries, known, at)
		same(t, "known then, and as it grew", whole, readAt(entries[:known], fold.All, at))
		same(t, "taken twice", whole, readAt(entries, known, at))
		same(t, "over the wire", whole, readAt(again(t, entries), known, at))
	})
}

// No random day gives a figure that is not a number or percentiles out of order.
func TestAReadingIsAlwaysSound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		entries := randomDay(t)
		r := readAt(entries, fold.All, time.Duration(rapid.IntRange(0, 20*3600).Draw(t, "at"))*time.Second)
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
		read := readAt(entries, fold.All, at)
		if read.Solver != figure.Unsolved || read.Figure(figure.HearthTemperature).Known() {
			t.Fatal("a reading is solved though nobody asked")
		}
		r := solvedAt(entries, at)
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

func same(t *rapid.T, how string, a, b *figure.Reading) {
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
