package fold

import (
	"math"
	"testing"
	"time"

	"pgregory.net/rapid"

	"chargehand/model/entry"
)

// timelineDay is any smelt in a furnace with a straight bore, where the burden
// sinks evenly between two lines.
func timelineDay(t *rapid.T) *day {
	cm := func(v float64) entry.Maybe[entry.Centimetre] { return entry.Some(entry.Centimetre(v)) }
	d := lit(entry.Furnace{Bore: cm(25), Stack: cm(50), Rim: cm(55)}, bucket(1.9))
	at := 0.0
	for range rapid.IntRange(0, 60).Draw(t, "acts") {
		at += float64(rapid.IntRange(0, 1200).Draw(t, "seconds")) / 60
		amount := func() float64 { return float64(rapid.IntRange(0, 40).Draw(t, "amount")) / 10 }
		var ev entry.Event = charge(coal(1), ore(amount()))
		switch rapid.IntRange(0, 12).Draw(t, "event") {
		case 0:
			ev = entry.Fill{Parts: entry.Parts{coal(amount())}}
		case 1:
			ev = entry.Dip{BelowRim: entry.Some(entry.Centimetre(10 * amount()))}
		case 2:
			ev = entry.Poke{}
		case 3:
			ev = entry.Blast{Volume: entry.Some(entry.LitrePerMinute(300 * amount()))}
		case 4:
			ev = entry.Weigh{What: entry.WeighMeasure, Name: "bucket", Mass: entry.Kilogram(amount()), FromNow: rapid.Bool().Draw(t, "now")}
		case 5:
			ev = rapid.SampledFrom([]entry.Event{entry.OreHeld{}, entry.OreHeld{Again: true}, entry.BurnDown{}, entry.Extract{},
				entry.PhaseSet{Phase: entry.MainBurn}, entry.PhaseSet{Phase: entry.Preheat}}).Draw(t, "turn")
		case 6:
			ev = entry.Level{Charge: ref(uint64(len(d.entries))), Remark: entry.NotToMark}
		}
		d.key(at, ev)
	}
	return d
}

// At every moment on the way the timeline says what the fold to that moment says.
func TestTheTimelineAgreesWithTheFold(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := timelineDay(t)
		c := Trace(d.entries, All, minutes(1500))
		for range 5 {
			at := time.Duration(rapid.IntRange(0, 1500*60).Draw(t, "at")) * time.Second
			s := Fold(d.entries, All, at)
			l, ok := c.LevelThen(at)
			if !ok || math.Abs(l.Height-s.Level.Height) > 1e-9 || math.Abs(l.SD()-s.Level.SD()) > 1e-9 {
				t.Errorf("level at %v: %+v, folded %+v", at, l, s.Level)
			}
			phase := entry.Phase("")
			for _, turn := range c.Turns {
				if turn.At <= at {
					phase = turn.Phase
				}
			}
			if phase != s.Phase {
				t.Errorf("phase at %v: %s, folded %s", at, phase, s.Phase)
			}
		}
	})
}

func TestADipIsHeldAgainstWhatWasExpected(t *testing.T) {
	cm := func(v float64) entry.Maybe[entry.Centimetre] { return entry.Some(entry.Centimetre(v)) }
	d := lit(entry.Furnace{Bore: cm(25), Stack: cm(50), Rim: cm(55)}, bucket(1.9))
	d.key(10, charge(coal(1)))
	d.key(20, charge(coal(1)))
	usual := Trace(d.entries, All, minutes(28)).walk.level
	if believed := d.state(28).Level; usual.Height >= believed.Height {
		t.Errorf("at its usual pace the burden stands at %v; where no charge came yet it is believed no lower, at %v", usual.Height, believed.Height)
	}
	d.key(28, entry.Dip{BelowRim: cm(6)})
	dips := Trace(d.entries, All, minutes(30)).Dips
	if len(dips) != 1 || dips[0].At != minutes(28) || math.Abs(dips[0].Height-0.49) > 1e-12 || dips[0].Expected != usual {
		t.Errorf("got %+v, expected a level of %+v", dips, usual)
	}
}

func TestAWeighingIsHeldAgainstWhatWasBelieved(t *testing.T) {
	guess := bucket(1.8)
	guess.Guessed = true
	d := lit(entry.Furnace{}, guess)
	d.key(10, entry.Weigh{What: entry.WeighMeasure, Name: "bucket", Mass: 1.5})
	d.key(20, entry.Weigh{What: entry.WeighMeasure, Name: "bucket", Mass: 1.6, FromNow: true})
	d.key(30, entry.Weigh{What: entry.WeighMeasure, Name: "bowl", Mass: 1})
	ws := Trace(d.entries, All, minutes(40)).Weighings
	if len(ws) != 3 {
		t.Fatalf("%d weighings", len(ws))
	}
	if ws[0].Believed != entry.Some(entry.Kilogram(1.8)) || ws[1].Believed != entry.Some(entry.Kilogram(1.5)) || ws[2].Believed.Known {
		t.Errorf("believed %v, %v, %v", ws[0].Believed, ws[1].Believed, ws[2].Believed)
	}
	if ws[0].RelSD <= ws[1].RelSD {
		t.Errorf("a guess is no surer than a weighing: %v, %v", ws[0].RelSD, ws[1].RelSD)
	}
}

// What the program itself writes down leaves no trace in a figure, not even in
// how the sums are rounded.
func TestTheProgramsOwnLinesLeaveNoTrace(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := timelineDay(t)
		at := time.Duration(rapid.IntRange(0, 1500*60).Draw(t, "at")) * time.Second
		before := Fold(d.entries, All, at)
		last := d.entries[len(d.entries)-1]
		lastMinute := last.Kept.Sub(noon).Minutes()
		for range 5 {
			d.late(lastMinute, rapid.Float64Range(0, lastMinute).Draw(t, "minute"), rapid.SampledFrom([]entry.Event{
				entry.Testimony{Rule: "blast lost", State: "raised"}, entry.CautionShown{Caution: "glare"}, entry.Keys{},
			}).Draw(t, "event"))
		}
		if after := Fold(d.entries, All, at); after.Level != before.Level {
			t.Errorf("level at %v: %+v, without them %+v", at, after.Level, before.Level)
		}
	})
}
