package entry

import (
	"math"
	"testing"
	"time"
)

// The bytes of kept lines stay what they are: these were written by the first
// version.
func TestTheBytesOfTheFirstVersion(t *testing.T) {
	parts := Parts{{What: Charcoal, Lot: "wood < 5", Measure: "Kübel 🪣", Count: Some(Count(2.5))}, {What: "a & b\u2028", Mass: Some(Kilogram(1e-7))}}
	for _, c := range []struct {
		e    Entry
		want string
	}{
		{Entry{Stream: "s", Seq: 7, Prev: "ff", Happened: at, Uncertain: 1500 * time.Millisecond, Kept: at, Boot: "b", Mono: 99 * time.Millisecond,
			By: "<MK>", Screen: "fire", Key: "c", Group: "g", Local: "l", Event: Charge{Parts: parts}},
			`{"v":1,"stream":"s","seq":7,"prev":"ff","happened":"2026-05-09T14:32:05.120+02:00","uncertain_s":1.5,"kept":"2026-05-09T14:32:05.120+02:00",` +
				`"boot":"b","mono_ms":99,"by":"<MK>","screen":"fire","key":"c","group":"g","local":"l","kind":"charge","event":{"parts":[` +
				`{"what":"charcoal","lot":"wood < 5","measure":"Kübel 🪣","count":2.5},{"what":"a & b\u2028","mass_kg":1e-7}]}}`},
		{Entry{Stream: "s", Seq: 1, Happened: at, Event: Poke{}}, `{"v":1,"stream":"s","seq":1,"happened":"2026-05-09T14:32:05.120+02:00","kind":"poke"}`},
		{Entry{Stream: "s", Seq: 1, Happened: at, Event: Charge{Parts: Parts{}}}, `{"v":1,"stream":"s","seq":1,"happened":"2026-05-09T14:32:05.120+02:00","kind":"charge"}`},
		{Entry{Stream: "s", Seq: 1, Happened: at}, `{"v":1,"stream":"s","seq":1,"happened":"2026-05-09T14:32:05.120+02:00"}`},
		{Entry{Stream: "s", Seq: 1, Happened: at, Event: Amend{Target: Ref{Seq: 4}, Event: Note{Text: "a < b"}, Happened: at, Uncertain: time.Minute}},
			`{"v":1,"stream":"s","seq":1,"happened":"2026-05-09T14:32:05.120+02:00","kind":"amend","event":{"target":{"seq":4},` +
				`"happened":"2026-05-09T14:32:05.120+02:00","uncertain_s":60,"kind":"note","event":{"text":"a < b"}}}`},
		{Entry{Stream: "s", Seq: 1, Happened: at, Event: Amend{Target: Ref{Seq: 4}, Event: Poke{}}},
			`{"v":1,"stream":"s","seq":1,"happened":"2026-05-09T14:32:05.120+02:00","kind":"amend","event":{"target":{"seq":4},"kind":"poke"}}`},
		{Entry{Stream: "s", Seq: 1, Happened: at, Event: Weigh{What: WeighBloom, Mass: 4}},
			`{"v":1,"stream":"s","seq":1,"happened":"2026-05-09T14:32:05.120+02:00","kind":"weigh","event":{"what":"bloom","mass_kg":4}}`},
		{Entry{Stream: "s", Seq: 1, Happened: at, Event: LotStored{Lot: Lot{Name: "l", What: Ore}}},
			`{"v":1,"stream":"s","seq":1,"happened":"2026-05-09T14:32:05.120+02:00","kind":"lot","event":{"lot":{"name":"l","what":"ore"}}}`},
		{Entry{Stream: "s", Seq: 1, Happened: at, Event: Plan{Name: "p", Ramp: []RecipeStep{{Charges: 2}}}},
			`{"v":1,"stream":"s","seq":1,"happened":"2026-05-09T14:32:05.120+02:00","kind":"plan","event":{"name":"p","ramp":[{"charges":2,"parts":null}]}}`},
	} {
		got, err := Encode(c.e)
		if err != nil || string(got) != c.want {
			t.Errorf("wrote\n%s\nwant\n%s (%v)", got, c.want, err)
		}
	}
}

func TestWhatIsNoNumberIsNotWritten(t *testing.T) {
	for _, v := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		for _, ev := range []Event{Charge{Parts: Parts{{What: Ore, Mass: Some(Kilogram(v))}}}, Dip{BelowRim: Some(Centimetre(v))},
			Amend{Event: Charge{Parts: Parts{{What: Ore, Count: Some(Count(v))}}}}} {
			if b, err := Encode(Entry{Stream: "s", Seq: 1, Event: ev}); err == nil {
				t.Errorf("%v was written: %s", v, b)
			}
		}
	}
}
