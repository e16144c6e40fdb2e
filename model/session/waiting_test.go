package session

import (
	"strconv"
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/model/solve"
)

var noon = entry.Wall(time.Date(2026, 5, 9, 12, 0, 0, 0, time.FixedZone("", 2*3600)))

// keyed is an entry taken down at a minute, as it is handed to the book.
func keyed(minute float64, local string, ev entry.Event) entry.Entry {
	at := time.Duration(minute * float64(time.Minute))
	return entry.Entry{Version: entry.Version, Stream: "s", Happened: noon.Add(at), Kept: noon.Add(at), Boot: "b", Mono: time.Hour + at, Local: local, Event: ev}
}

func bucket(n float64) entry.Charge {
	return entry.Charge{Parts: entry.Parts{{What: entry.Charcoal, Measure: "bucket", Count: entry.Some(entry.Count(n))}}}
}

// numbered is an entry as the book kept it.
func numbered(e entry.Entry, seq uint64) entry.Entry {
	e.Seq = seq
	return e
}

// Kept entries take the place of those that waited for them; what speaks of one
// that waits follows it to its number.
func TestEntriesAreKeptInTheirPlace(t *testing.T) {
	s := Open("s", nil)
	light, charge := keyed(0, "l", entry.Light{}), keyed(10, "c", bucket(1))
	s, light = s.Add(light)
	s, charge = s.Add(charge)
	s, _ = s.Add(keyed(11, "x", entry.Strike{Target: s.Ref(charge.Seq)}))
	s = s.MoveTo(20 * time.Minute)
	if n := len(s.Reading().Charges); n != 0 || s.Len() != 3 || s.Kept() != 0 || !s.Waits(1) {
		t.Fatalf("%d charges, %d entries, %d kept", n, s.Len(), s.Kept())
	}
	// Another entry came first.
	s = s.Keep(numbered(light, 1)).Keep(numbered(keyed(9, "other", entry.Rod{}), 2))
	if l, _ := s.Line(3); s.Kept() != 2 || l.Entry.Local != "c" || !l.Struck() || s.Waits(2) || !s.Waits(3) {
		t.Errorf("%d kept, third is %+v", s.Kept(), l)
	}
	if s = s.Drop("x"); len(s.Reading().Charges) != 1 || s.Len() != 3 {
		t.Errorf("the refused crossing-out holds: %d entries", s.Len())
	}
}

// An entry that stands in the book already when its acknowledgement comes, as
// after the smelt was read anew in between, counts once.
func TestAnEntryIsKeptOnce(t *testing.T) {
	light, charge := numbered(keyed(0, "l", entry.Light{}), 1), numbered(keyed(10, "c", bucket(1)), 2)
	s := Open("s", []entry.Entry{light, charge}).Keep(charge).MoveTo(20 * time.Minute)
	if n := len(s.Reading().Charges); n != 1 || s.Len() != 2 {
		t.Errorf("%d charges of %d entries", n, s.Len())
	}
	s, _ = s.Add(charge) // and handed over anew meanwhile
	if s = s.Keep(charge); s.Len() != 2 {
		t.Errorf("%d entries", s.Len())
	}
}

// A job that breaks the solver is told, and the next one is solved.
func TestABrokenJobStopsNoOther(t *testing.T) {
	s := Open("s", []entry.Entry{numbered(keyed(0, "l", entry.Light{}), 1)})
	j, ok := s.Job()
	if !ok {
		t.Fatal("nothing to solve")
	}
	r := j.Run(nil) // no solver: it panics
	if r.Err == nil {
		t.Fatal("a panic was not told")
	}
	s = s.Solved(r)
	if _, again := s.Job(); again || s.SolverErr() == nil {
		t.Errorf("tried again: %v, %v", again, s.SolverErr())
	}
	s, _ = s.Add(keyed(1, "c", bucket(1)))
	j, ok = s.Job()
	if !ok || s.SolverErr() != nil {
		t.Fatal("not tried again after an entry")
	}
	if s = s.Solved(j.Run(new(solve.Solver))); !s.IsSolved() || s.SolverErr() != nil {
		t.Error("not solved")
	}
}

// What runs ahead leaves the smelt as it was.
func TestAheadIsACopy(t *testing.T) {
	s := Open("s", []entry.Entry{numbered(keyed(0, "l", entry.Light{}), 1), numbered(keyed(10, "c", bucket(1)), 2)}).MoveTo(11 * time.Minute)
	might := s.Ahead(10*time.Minute, keyed(20, "", bucket(1)))
	if r := might.Reading(); len(r.Charges) != 2 || r.At != 21*time.Minute || !might.Past() {
		t.Errorf("%d charges at %v", len(r.Charges), r.At)
	}
	if r := s.Reading(); len(r.Charges) != 1 || r.At != 11*time.Minute || s.Len() != 2 {
		t.Errorf("it changed: %d charges at %v", len(r.Charges), r.At)
	}
}

// Of a smelt shown again only what was known then counts.
func TestAsOfKnowsNoMore(t *testing.T) {
	var kept []entry.Entry
	for i := range 5 {
		ev := entry.Event(bucket(1))
		if i == 0 {
			ev = entry.Light{}
		}
		kept = append(kept, numbered(keyed(float64(10*i), strconv.Itoa(i), ev), uint64(i+1)))
	}
	s := Open("s", kept)
	if k := s.KnownAt(25 * time.Minute); k != 3 {
		t.Errorf("entry %d was known", k)
	}
	if n := len(s.AsOf(3, time.Hour).Reading().Charges); n != 2 {
		t.Errorf("%d charges", n)
	}
	if n := len(s.AsOf(fold.All, time.Hour).Reading().Charges); n != 4 {
		t.Errorf("%d charges", n)
	}
}

// Where there is no smelt nothing is said, whatever is asked.
func TestNoSmeltSaysNothing(t *testing.T) {
	var none Session
	for _, s := range []Session{none, none.Tick(entry.Stamp{Wall: noon}), none.AsOf(3, time.Hour), none.Overview().Whole, none.MoveTo(time.Minute)} {
		if s.Is() || s.Running() || s.Len() != 0 || len(s.Warnings()) != 0 || len(s.Cautions()) != 0 || s.Reading().Phase != "" {
			t.Errorf("%+v", s.Reading())
		}
		if _, ok := s.Job(); ok || s.KnownAt(time.Hour) != 0 || s.End() != 0 {
			t.Error("it has a moment")
		}
	}
}
