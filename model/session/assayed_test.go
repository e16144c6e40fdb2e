package session_test

import (
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/model/ore"
	"chargehand/model/session"
	"chargehand/model/solve"
)

// What an assay says is known from when it was written down: the smelt as it is known now has it, and
// a moment of the past as it was seen has it from then on.
func TestAnAssayIsKnownFromWhenItWasWrittenDown(t *testing.T) {
	lit := time.Date(2026, 5, 9, 8, 0, 0, 0, time.UTC)
	var es []entry.Entry
	key := func(at time.Duration, ev entry.Event) {
		es = append(es, entry.Entry{Version: 1, Stream: "s", Seq: uint64(len(es) + 1), Boot: "b", Mono: at, Happened: lit.Add(at), Kept: lit.Add(at), Event: ev})
	}
	const pond = entry.UID("aa00000000000001")
	kg := func(w entry.What, kg float64, lot string) entry.Part {
		return entry.Part{What: w, Mass: entry.Some(entry.Kilogram(kg)), Lot: lot}
	}
	key(0, entry.Light{Furnace: entry.Furnace{Bore: entry.Some(entry.Centimetre(25)), Stack: entry.Some(entry.Centimetre(50)), TuyereBase: entry.Some(entry.Centimetre(25))}, Lots: []entry.Lot{{UID: pond, Name: "pond", What: entry.Ore}}})
	key(time.Minute, entry.Fill{Parts: entry.Parts{kg(entry.Charcoal, 6, "")}})
	key(2*time.Minute, entry.Blast{Volume: entry.Some(entry.LitrePerMinute(600))})
	for i := range 12 {
		key(time.Duration(20+10*i)*time.Minute, entry.Charge{Parts: entry.Parts{kg(entry.Charcoal, 1.8, ""), kg(entry.Ore, 1, string(pond))}})
	}
	s := session.Open("s", es)
	j, _ := s.Job()
	s = s.Solved(j.Run(new(solve.Solver)))
	if !s.IsSolved() {
		t.Fatal("not solved")
	}
	usual := s.Reading()
	came := lit.Add(75 * time.Minute) // between the charges at 70 and 80 min
	s = s.Assayed([]ore.Assayed{{At: lit.Add(time.Hour), Lot: pond, Iron: 0.5}, {At: came, Lot: pond, Iron: 0.3}})
	if s.IsSolved() {
		t.Error("nothing is to be solved anew after an assay")
	}
	v := new(solve.Solver)
	j, _ = s.Job()
	r := j.Run(v)
	s = s.Solved(r)
	if !s.IsSolved() || r.Solution.UsualOre || usual.Known != s.Reading().Known {
		t.Errorf("solved %v with usual ore %v", s.IsSolved(), r.Solution.UsualOre)
	}
	if s = s.Assayed([]ore.Assayed{{At: lit.Add(time.Hour), Lot: pond, Iron: 0.5}, {At: came, Lot: pond, Iron: 0.3}}); !s.IsSolved() {
		t.Error("the same assays have it solved anew")
	}
	for _, c := range []struct {
		at    time.Duration
		known uint64
		want  entry.Share
	}{
		{130 * time.Minute, fold.All, 0.3}, {30 * time.Minute, fold.All, 0.3},
		{30 * time.Minute, s.KnownAt(30 * time.Minute), 0}, {74 * time.Minute, s.KnownAt(74 * time.Minute), 0.5}, {76 * time.Minute, s.KnownAt(76 * time.Minute), 0.3},
		{130 * time.Minute, s.KnownAt(30 * time.Minute), 0}, {130 * time.Minute, s.KnownAt(74 * time.Minute), 0.3},
	} {
		if got := s.AsOf(c.known, c.at).Irons()[pond]; got != c.want {
			t.Errorf("at %v, known %d: %v, want %v", c.at, c.known, got, c.want)
		}
	}
}
