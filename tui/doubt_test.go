package tui_test

import (
	"reflect"
	"strings"
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/tui/desk"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// doubtful are keys that say what can hardly be, and what then is kept, with which mark.
// The practice furnace has a bore of 25 cm, its rim 60 cm over the tuyere, the floor 15 cm
// under it; a bucket is 1.9 kg, a scoop of ore 0.5.
var doubtful = []struct {
	before, keys string
	want         entry.Event
	sure         string
}{
	{"", "i 7 0 enter", entry.Dip{BelowRim: entry.Some(entry.Centimetre(70))}, "below_tuyere"},
	{"", "i 5 0 0 enter", entry.Dip{BelowRim: entry.Some(entry.Centimetre(500))}, "below_floor"},
	{"", "i t 9 0 enter", entry.Dip{AboveTuyere: entry.Some(entry.Centimetre(90))}, "above_rim"},
	{"b 7 0 0 enter", "b 3 6 0 0 enter", entry.Blast{Volume: entry.Some(entry.LitrePerMinute(3600))}, "blast_jumps"},
	{"b 7 0 0 enter", "b 7 0 enter", entry.Blast{Volume: entry.Some(entry.LitrePerMinute(70))}, "blast_jumps"},
	{"", "b 1 enter", entry.Blast{Volume: entry.Some(entry.LitrePerMinute(1))}, "blast_for_bore"},
	{"c c", "w b 6 0 enter", entry.Weigh{What: entry.WeighBloom, Mass: 60}, "more_than_ore"},
	{"c c", "w r 6 0 enter", entry.Weigh{What: entry.WeighFragments, Mass: 60}, "more_than_ore"},
	{"c c", "w g 6 0 enter n", entry.Weigh{What: entry.WeighSlag, Mass: 60}, "slag_over_ore"},
	{"c c", "w b 0 enter", entry.Weigh{What: entry.WeighBloom}, "weighs_nothing"},
	{"c c", "w m b 1 0 0 enter", entry.Weigh{What: entry.WeighMeasure, Name: "bucket", Mass: 100}, "measure_jumps too_heavy_to_lift"},
	{"c c", "w m b . 1 9 enter", entry.Weigh{What: entry.WeighMeasure, Name: "bucket", Mass: 0.19}, "measure_jumps"},
	{"", "o r w 5 7 , 6 enter 1 enter", entry.Charge{Parts: entry.Parts{
		{What: entry.Charcoal, Mass: entry.Some(entry.Kilogram(57.6))}, {What: entry.Ore, Mass: entry.Some(entry.Kilogram(1))}}}, "more_than_shaft"},
	{"", "o r w 1 . 9 enter 1 5 enter", entry.Charge{Parts: entry.Parts{
		{What: entry.Charcoal, Mass: entry.Some(entry.Kilogram(1.9))}, {What: entry.Ore, Mass: entry.Some(entry.Kilogram(15))}}}, "ore_over_charcoal"},
	{"", "e 1 9 0 0 enter", entry.Temperature{Degrees: 1900, Where: entry.WherePeep}, "hotter_than_fire"},
	{"", "o t t 4 0 enter", entry.Tuyere{Proud: entry.Some(entry.Centimetre(40))}, "tuyere_too_far"},
}

// answer says yes to every doubt, and takes what lists offer.
func answer(d *desk.Desk) {
	for range 5 {
		switch asks := d.M.Dialog().(type) {
		case nil:
			return
		case screen.Choice:
			if asks.Question {
				d.Press("y")
				continue
			}
			d.Press("enter")
		default:
			if strings.HasSuffix(asks.Ask(d.M.Shared()).Label, words.Really("")) {
				d.Press("y")
			} else {
				return
			}
		}
	}
}

// What can hardly be is asked about once, at the step at fault, and kept with its mark if
// it is so; else the step stands there again with what was typed. Left alone, nothing is
// kept, and what was typed comes back. It all holds of the form for late entries too.
func TestWhatCanHardlyBeAsks(t *testing.T) {
	for _, c := range doubtful {
		at := func() *desk.Desk {
			d := aside(desk.Practising(t))
			d.Press(strings.Fields(c.before)...)
			d.Wait(3 * time.Minute)
			return d
		}
		keys := strings.Fields(c.keys)
		fault := len(keys) // how many keys it takes to the step at fault
		for n := range keys {
			if keys[n] != "enter" {
				continue
			}
			try := at()
			try.Press(keys[:n+1]...)
			if a := try.M.Dialog(); a != nil && strings.HasSuffix(a.Ask(try.M.Shared()).Label, words.Really("")) {
				fault = n + 1
				break
			}
		}
		d := at()
		before := len(booked(d))
		d.Press(keys[:fault]...)
		if len(booked(d)) != before {
			t.Errorf("%s: kept without asking: %#v", c.keys, booked(d)[before:])
			continue
		}
		d.Shows(words.YesNo)
		typed := keys[fault-2] // the last digit of it
		d.Press("n")
		f, ok := d.M.Dialog().(screen.Field)
		if !ok || !strings.HasSuffix(f.Input.Text(), typed) || len(booked(d)) != before {
			t.Errorf("%s, no: %#v is open, %q", c.keys, d.M.Dialog(), d.Said())
			continue
		}
		d.Press("enter", "y")
		d.Press(keys[fault:]...)
		answer(d)
		if evs := booked(d); len(evs) != before+1 || !reflect.DeepEqual(evs[before], c.want) {
			t.Errorf("%s: kept %#v", c.keys, evs[before:])
		}
		if e := d.Queue[len(d.Queue)-1]; sureOf(d) != c.sure {
			t.Errorf("%s: the mark is %q, want %q (%+v)", c.keys, sureOf(d), c.sure, e)
		}
		left := at()
		left.Press(keys[:fault]...)
		left.Press("r") // an act
		if evs := booked(left); len(evs) != before+1 || !reflect.DeepEqual(evs[before], entry.Event(entry.Rod{})) {
			t.Errorf("%s, r: kept %#v", c.keys, evs[before:])
		}
		left.Answers(words.DoubtNotKept)
		left.Press(keys[:fault-len(numberBefore(keys[:fault]))-1]...)
		left.Shows(strings.Join(numberBefore(keys[:fault]), ""))
		left.Shows("half typed")
	}
}

// numberBefore is the number typed before the last enter.
func numberBefore(keys []string) []string {
	n := len(keys) - 1
	for n > 0 && strings.Contains("0123456789.,", keys[n-1]) {
		n--
	}
	return keys[n : len(keys)-1]
}

// sureOf is the mark of the last act handed over.
func sureOf(d *desk.Desk) string {
	sure := ""
	for _, e := range d.Queue {
		if entry.IsAct(e.Event) && e.Kind() != entry.KindRemind {
			sure = e.Sure
		}
	}
	return sure
}

// What was answered is not asked again: of the same said once more, and of an entry whose
// time alone is moved. The Book shows the mark.
func TestADoubtIsAskedOnce(t *testing.T) {
	d := desk.Practising(t)
	d.Wait(20 * time.Minute)
	d.Press("i", "7", "0", "enter", "y")
	d.Wait(time.Minute)
	d.Press("m")
	if d.M.Dialog() != nil {
		t.Error("moving its time asks again")
	}
	d.Press("i", "7", "0", "enter")
	if d.M.Dialog() != nil || d.Count(entry.KindDip) != 2 {
		t.Errorf("the same asks again: %v", d.Acts())
	}
	d.Answers("70 cm below the rim, sure")
	d.Press("v", "b")
	d.Shows("sure: a dip below the tuyere")
	d.Press("a", "w", "1", "2", "enter")
	d.Press("v", "f")
	for l := range d.M.Running().Backward() {
		if dip, ok := l.Event.(entry.Dip); ok && dip.BelowRim.Value == 12 && d.M.Running().Sure(l) != "" {
			t.Error("the mark stays on an entry that was changed to what can be")
		}
	}
}

// What is entered late, and what is changed, is held against the smelt as it stood then,
// without the entry that is changed.
func TestDoubtsGoByTheMoment(t *testing.T) {
	d := desk.Practising(t)
	d.Press("b", "7", "0", "0", "0", "enter")
	answer(d)
	d.Wait(10 * time.Minute)
	d.Press("b", "7", "0", "0", "enter") // a slip put right
	answer(d)
	d.Press("v", "b", "up", "a", "w", "7", "0", "0", "enter")
	if d.M.Dialog() != nil {
		t.Errorf("putting a slip right asks: %s", d.M.Dialog().Ask(d.M.Shared()).Label)
	}
	d.Press("v", "f")
	d.Press("o", "e", "5", "enter", "b", "4", "0", "0", "0", "enter")
	if d.M.Dialog() == nil {
		t.Fatal("a late blast of five times the one before it is not asked about")
	}
	d.Press("y")
	if l, _ := d.M.Running().Last(); l.Entry.Sure == "" && d.M.Running().Sure(l) == "" {
		t.Errorf("%+v", l)
	}
}
