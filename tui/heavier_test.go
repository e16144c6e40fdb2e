package tui_test

import (
	"math"
	"strings"
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/rule"
	"chargehand/tui/desk"
	"chargehand/tui/words"
)

// charged is a smelt with a bucket of 1.8 kg that was weighed, four scoops of ore on it, and
// five charges.
func charged(t *testing.T) *desk.Desk {
	d := desk.Practising(t)
	d.Press(strings.Fields("o r m b 1 . 8 enter enter up up")...)
	for range 5 {
		d.Press("c")
		d.Wait(10 * time.Minute)
	}
	return d
}

func figureOf(d *desk.Desk, n figure.Name) figure.Figure { return d.M.Running().Reading().Figure(n) }

// Three causes of the same bucket, 12 % heavier, give three answers (wings, section 15):
// the same carbon, more of it, another lot. Where nobody knows, the spread is wider.
func TestAHeavierBucketAsksWhy(t *testing.T) {
	const heavier = "o r m b 2 . 0 2 enter "
	was := charged(t)
	dry, smelt, next := figureOf(was, figure.CharcoalDry), figureOf(was, figure.RatioFive), was.M.Running().Recipe()
	after := func(keys string) *desk.Desk {
		d := charged(t)
		d.Press(strings.Fields(heavier + keys)...)
		return d
	}
	near := func(what string, got, want, within float64) {
		t.Helper()
		if math.Abs(got/want-1) > within {
			t.Errorf("%s: %.4f, want %.4f", what, got, want)
		}
	}

	wet := after("w w") // for the whole smelt
	near("dry charcoal when wetter", figureOf(wet, figure.CharcoalDry).P50, dry.P50, 1e-9)
	near("ratio when wetter", figureOf(wet, figure.RatioFive).P50, smelt.P50, 1e-9)
	near("weight when wetter", figureOf(wet, figure.CharcoalCharged).P50, figureOf(was, figure.CharcoalCharged).P50*2.02/1.8, 1e-9)
	if got := wet.M.Running().Recipe(); got[0] != next[0] || got[1] != next[1] {
		t.Errorf("next charge when wetter: %+v", got)
	}
	wet.Answers(words.DampBooked)
	wet.Wait(time.Minute)
	if !wet.M.Running().Stands(rule.CharcoalDamp) {
		t.Errorf("%v stand", wet.M.Running().Standing())
	}

	full := after("l w")
	near("dry charcoal when fuller", figureOf(full, figure.CharcoalDry).P50, dry.P50*2.02/1.8, 1e-9)
	full.Shows("to keep the ratio")
	full.Press("y")
	if got := full.M.Running().Recipe(); got[1].Count.Value <= next[1].Count.Value {
		t.Errorf("next charge when fuller: %+v", got)
	}

	other := after("o")
	other.Write("birch")
	other.Press("enter")
	if got := other.M.Running().Recipe(); got[0].Lot != "birch" || got[1] != next[1] {
		t.Errorf("next charge of another lot: %+v", got)
	}
	near("dry charcoal so far, another lot since", figureOf(other, figure.CharcoalDry).P50, dry.P50, 1e-9)

	unknown := after("enter w")
	is := figureOf(unknown, figure.CharcoalDry)
	if is.P50 <= dry.P50 || is.P50 >= dry.P50*2.02/1.8 || is.RelSD() <= figureOf(full, figure.CharcoalDry).RelSD() {
		t.Errorf("dry charcoal when nobody knows: %+v, wet %+v", is.Band, dry.Band)
	}
}

// A bucket that a scale can hardly tell from the one before is not asked about.
func TestABucketAsHeavyIsNotAskedAbout(t *testing.T) {
	d := charged(t)
	d.Press(strings.Fields("o r m b 1 . 8 8 enter enter")...)
	if w, ok := d.Last().(entry.Weigh); !ok || w.Mass != 1.88 || d.M.Dialog() != nil {
		t.Errorf("%#v, open %v", d.Last(), d.M.Dialog())
	}
}

// Only charcoal that is weighed out is topped up: by 1/(1 - water), here 2.02 for 1.8.
func TestWeighedOutCharcoalIsToppedUp(t *testing.T) {
	d := charged(t)
	d.Press(strings.Fields("o r n 1 . 8 enter 2 enter o r m b 2 . 0 2 enter w n y")...)
	next := d.M.Running().Recipe()
	if got := float64(next[0].Mass.Value); math.Abs(got-2) > 1e-9 || next[1].Mass.Value != 2 {
		t.Fatalf("next charge %+v", next)
	}
	d.Press("c")
	d.Wait(time.Minute)
	last := d.M.Running().Reading().Figure(figure.RatioLast)
	if dry := 2 / 1.8; math.Abs(last.P50/dry-1) > 0.02 {
		t.Errorf("ratio %.3f, dry of the water %.3f", last.P50, dry)
	}
}

// A plan's steps outlast a change of the next charge.
func TestAPlanOutlastsTheArrows(t *testing.T) {
	d := charged(t)
	part := func(w entry.What, m string, n entry.Count) entry.Part {
		return entry.Part{What: w, Measure: m, Count: entry.Some(n)}
	}
	next := d.M.Running().Recipe()
	step := func(n int, scoops entry.Count) entry.RecipeStep {
		return entry.RecipeStep{Charges: n, Parts: entry.Parts{next[0], part(entry.Ore, next[1].Measure, scoops)}}
	}
	d.M = d.M.Keeping(entry.Recipe{Ramp: []entry.RecipeStep{step(2, 2), step(1, 3)}})
	d.Press("up")
	scoops := func() entry.Count { return d.M.Running().Recipe()[1].Count.Value }
	for _, want := range []entry.Count{3, 2, 3} {
		if got := scoops(); got != want {
			t.Errorf("%v scoops, want %v", got, want)
		}
		d.Press("c")
		d.Wait(10 * time.Minute)
	}
}
