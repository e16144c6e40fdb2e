package session

import (
	"math/rand/v2"
	"reflect"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/fold"
	"chargehand/model/rule"
	"chargehand/model/solve"
	"chargehand/physics"
)

// scratch is what a smelt says at a moment, worked out from its first entry on with
// nothing kept from before.
func scratch(entries []entry.Entry, known uint64, at time.Duration, seen []solve.Sample) (*figure.Reading, []rule.Warning) {
	c := fold.Trace(entries, known, at)
	r := figure.From(c.State)
	if len(entries) > 0 {
		r.Smelt = entries[0].Stream
	}
	return r, rule.WalkSolved(c, seen)
}

// agrees holds a Session against that.
func agrees(t interface{ Fatalf(string, ...any) }, s Session, how string) {
	v := s.view()
	r, ws := scratch(s.Entries(), s.known, v.read.At, s.solver.history.seen)
	if s.past || s.Running() {
		if !reflect.DeepEqual(v.read, r) {
			t.Fatalf("%s, at %v as known by %d: %s", how, v.read.At, v.read.Known, cmp.Diff(r, v.read))
		}
		if !s.solver.told && !reflect.DeepEqual(s.Reading(), r) {
			t.Fatalf("%s: the reading is another one", how)
		}
	}
	if len(ws)+len(s.Warnings()) > 0 && !reflect.DeepEqual(s.Warnings(), ws) {
		t.Fatalf("%s, at %v as known by %d: warnings %s", how, v.read.At, v.read.Known, cmp.Diff(ws, s.Warnings()))
	}
}

// However a smelt came to be as it is (keyed and kept in any order of arrival, with
// late entries, strikes, amendments, re-weighings, stepped clocks and restarts, looked
// back at and gone on with), it says what it says when it is read from scratch, bit
// for bit.
func TestASessionIsWhatItIsFromScratch(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		entries := randomDay(t)
		s := Open("s", nil)
		samples := someSamples(t)
		waiting := 0
		for i, e := range entries {
			e.Seq, e.Local = 0, string(rune('a'+i))
			s, _ = s.Add(e)
			waiting++
			for waiting > 0 && rapid.IntRange(0, 2).Draw(t, "kept") > 0 {
				kept := entries[s.Kept()]
				kept.Local = string(rune('a' + s.Kept()))
				if rapid.Bool().Draw(t, "a breath later") && kept.Boot != "" {
					ms := time.Duration(rapid.IntRange(1, 3).Draw(t, "ms")) * time.Millisecond
					kept.Mono, kept.Kept = kept.Mono+ms, kept.Kept.Add(ms)
				}
				s, waiting = s.Keep(kept), waiting-1
			}
			at := s.Clock(entry.Stamp{Wall: e.Kept, Boot: e.Boot, Mono: e.Mono})
			switch rapid.IntRange(0, 5).Draw(t, "look") {
			case 0:
				agrees(t, s.MoveTo(at), "as keyed")
			case 1:
				at += time.Duration(rapid.IntRange(0, 900).Draw(t, "later")) * time.Second
				s = s.MoveTo(at)
				agrees(t, s, "later")
			case 2:
				s.solver.history, s.solver.told = s.checkpoints.historyOf(samples[:rapid.IntRange(0, len(samples)).Draw(t, "seen")]), false
				s = s.anew()
			case 3:
				known := uint64(rapid.IntRange(1, i+1).Draw(t, "known"))
				back := time.Duration(rapid.IntRange(0, int(max(at, 0)/time.Second)).Draw(t, "back")) * time.Second
				p := s.AsOf(known, back)
				agrees(t, p, "looked back at")
			}
		}
		agrees(t, s, "at last")
		agrees(t, Open("s", s.Entries()).After(s), "opened anew")
	})
}

func someSamples(t *rapid.T) []solve.Sample {
	var gs []solve.Sample
	at := time.Duration(rapid.IntRange(1, 60).Draw(t, "first")) * time.Minute
	for range rapid.IntRange(0, 200).Draw(t, "samples") {
		at += time.Minute
		gs = append(gs, solve.Sample{At: at, Hearth: physics.Exact(rapid.Float64Range(1300, 1800).Draw(t, "hearth")), Top: physics.Exact(rapid.Float64Range(500, 1300).Draw(t, "top")),
			Slag: 2, Ore: true, Holds: 400})
	}
	return gs
}

// A long day, held against a fresh one at every fiftieth step.
func TestALongDayIsWhatItIsFromScratch(t *testing.T) {
	if testing.Short() {
		t.Skip("not with -short: a day of 5,000 entries")
	}
	random := rand.New(rand.NewPCG(7, 9))
	all := longDay(5000)
	s := Open("s", all[:4000]).MoveTo(all[3999].Mono)
	steps := 0
	for i := 4000; i < len(all); i++ {
		e := all[i]
		e.Local = "x"
		switch random.IntN(40) {
		case 0:
			e.Happened = e.Happened.Add(-time.Duration(random.IntN(1800)) * time.Second)
		case 1:
			e.Event = entry.Strike{Target: entry.Ref{Seq: uint64(1 + random.IntN(i-1))}}
		case 2:
			e.Event = entry.Amend{Target: entry.Ref{Seq: uint64(2 + random.IntN(i-2))}, Happened: e.Happened.Add(-time.Hour)}
		case 3:
			e.Event = entry.Weigh{What: entry.WeighMeasure, Name: "bucket", Mass: entry.Kilogram(1.5 + random.Float64())}
		}
		s, e = s.Add(e)
		s = s.MoveTo(s.Clock(entry.Stamp{Wall: e.Kept, Boot: e.Boot, Mono: e.Mono}))
		s.Reading()
		e.Kept, e.Mono = e.Kept.Add(time.Millisecond), e.Mono+time.Millisecond
		s = s.Keep(e)
		s.Warnings()
		if steps++; steps%50 != 0 {
			continue
		}
		fresh := Open("s", s.Entries()).MoveTo(s.at)
		if !reflect.DeepEqual(fresh.Reading(), s.Reading()) || !reflect.DeepEqual(fresh.Warnings(), s.Warnings()) {
			t.Fatalf("step %d: %s%s", steps, cmp.Diff(fresh.Reading(), s.Reading()), cmp.Diff(fresh.Warnings(), s.Warnings()))
		}
		known, at := uint64(1+random.IntN(i)), time.Duration(random.Int64N(int64(s.at)))
		if f, p := fresh.AsOf(known, at), s.AsOf(known, at); !reflect.DeepEqual(f.Reading(), p.Reading()) || !reflect.DeepEqual(f.Warnings(), p.Warnings()) {
			t.Fatalf("step %d, looked back at: %s", steps, cmp.Diff(f.Reading(), p.Reading()))
		}
	}
}
