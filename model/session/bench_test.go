package session

import (
	"fmt"
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/model/fold"
)

// benchDay is ten hours with 500 entries: charges and scoops, the blast, changes of
// entries, notes.
func benchDay() []entry.Entry {
	start := noon
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

// longDay is the same with readings of the temperature in the peep among them, evenly
// over the ten hours, up to so many entries. The rules read each of them.
func longDay(n int) []entry.Entry {
	day := benchDay()
	if n <= len(day) {
		return day
	}
	places := map[uint64]uint64{} // the new sequence of an old one
	all := make([]entry.Entry, 0, n)
	more := n - len(day)
	for i, e := range day {
		places[e.Seq] = uint64(len(all) + 1)
		if a, ok := e.Event.(entry.Amend); ok {
			a.Target.Seq = places[a.Target.Seq]
			e.Event = a
		}
		e.Seq = uint64(len(all) + 1)
		all = append(all, e)
		for k := range more*(i+1)/len(day) - more*i/len(day) {
			at := e.Mono + time.Duration(k+1)*71*time.Second/time.Duration(more/len(day)+2)
			all = append(all, entry.Entry{Version: 1, Stream: "s", Seq: uint64(len(all) + 1), Kept: noon.Add(at), Happened: noon.Add(at), Boot: "b",
				Mono: at, Event: entry.Temperature{Degrees: entry.Celsius(1250 + k%7), Where: entry.WherePeep}})
		}
	}
	return all
}

// BenchmarkSession is what the model costs by the size of the day. Each iteration asks
// for the reading and the warnings.
func BenchmarkSession(b *testing.B) {
	for _, n := range []int{500, 5000, 50000} {
		entries := longDay(n)
		last := entries[len(entries)-1]
		open := func(b *testing.B) Session {
			b.ReportAllocs()
			s := Open("s", entries)
			s = s.MoveTo(last.Mono + 5*time.Second)
			s.Reading()
			s.Warnings()
			b.ResetTimer()
			return s
		}
		asked := func(b *testing.B, s Session) {
			if r := s.Reading(); len(r.Charges) == 0 {
				b.Fatal("no charges")
			}
			_ = s.Warnings()
		}
		next := func(k int) entry.Entry {
			at := last.Mono + 6*time.Second
			e := entry.Entry{Version: 1, Stream: "s", Kept: noon.Add(at), Happened: noon.Add(at), Boot: "b", Mono: at, Local: fmt.Sprint("k", k),
				Event: entry.Charge{Parts: entry.Parts{{What: entry.Ore, Measure: "scoop", Count: entry.Some(entry.Count(1))}}}}
			if k%2 == 0 {
				e.Event = entry.Charge{Parts: entry.Parts{{What: entry.Charcoal, Measure: "bucket", Count: entry.Some(entry.Count(1))}}}
			}
			return e
		}
		// A charge is keyed.
		b.Run(fmt.Sprint("key/", n), func(b *testing.B) {
			s := open(b)
			for k := 0; b.Loop(); k++ {
				keyed, _ := s.Add(next(k))
				asked(b, keyed.MoveTo(last.Mono+6*time.Second))
			}
		})
		// It is kept, two milliseconds later by the writer's clocks.
		b.Run(fmt.Sprint("ack/", n), func(b *testing.B) {
			s := open(b)
			s, e := s.Add(next(0))
			s = s.MoveTo(last.Mono + 6*time.Second)
			asked(b, s)
			e.Kept, e.Mono = e.Kept.Add(2*time.Millisecond), e.Mono+2*time.Millisecond
			b.ResetTimer()
			for b.Loop() {
				asked(b, s.Keep(e))
			}
		})
		// A second passes; every tenth time a point of the rules' grid.
		b.Run(fmt.Sprint("tick/", n), func(b *testing.B) {
			s := open(b)
			at := last.Mono + 5*time.Second
			for b.Loop() {
				if at += time.Second; at > last.Mono+time.Hour { // the same hour again
					at = last.Mono + 5*time.Second
				}
				s = s.MoveTo(at)
				asked(b, s)
			}
		})
		// The day is looked back at, an entry at a time, as it was seen.
		b.Run(fmt.Sprint("back/", n), func(b *testing.B) {
			s := open(b)
			i := len(entries)
			for b.Loop() {
				if i--; i < len(entries)/2 {
					i = len(entries) - 1
				}
				at := entries[i].Mono
				p := s.AsOf(s.KnownAt(at), at)
				asked(b, p)
			}
		})
		// Anywhere, at once.
		b.Run(fmt.Sprint("jump/", n), func(b *testing.B) {
			s := open(b)
			for k := 0; b.Loop(); k++ {
				at := time.Duration(k*7919%36000) * time.Second
				known := fold.All
				if k%2 == 0 {
					known = s.KnownAt(at)
				}
				p := s.AsOf(known, at)
				_, _ = p.Reading(), p.Warnings()
			}
		})
		// A bucket weighed anew, which holds for all of the day.
		b.Run(fmt.Sprint("weigh/", n), func(b *testing.B) {
			s := open(b)
			for k := 0; b.Loop(); k++ {
				e := next(k)
				e.Event = entry.Weigh{What: entry.WeighMeasure, Name: "bucket", Mass: 1.9 + entry.Kilogram(k%100)/1000}
				keyed, _ := s.Add(e)
				asked(b, keyed.MoveTo(last.Mono+6*time.Second))
			}
		})
	}
}
