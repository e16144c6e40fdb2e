package tui_test

import (
	"math"
	"testing"
	"time"

	"chargehand/model/entry"
	modelwords "chargehand/model/words"
	"chargehand/tui"
	"chargehand/tui/desk"
	"chargehand/tui/theme"
)

// Units are chosen in a list that stays open, hold at once and after a restart,
// and are kept in the house; the journal of the smelt stays metric.
func TestUnitsAreChosen(t *testing.T) {
	d := desk.Practising(t)
	d.Press("c")
	d.Shows("1.9 kg charcoal")
	d.Press("v", "e", "m", "y", "l", "y", "b", "y", "t", "y", "p", "y")
	d.Answers("pressure in mm of water")
	d.Press("p", "y", "esc")
	if want := (modelwords.Units{modelwords.Mass: 1, modelwords.Length: 1, modelwords.Blast: 1, modelwords.Heat: 1, modelwords.Pressure: 2}); d.M.Shared().Units != want {
		t.Fatalf("%v", d.M.Shared().Units)
	}
	d.Shows("4.19 lb")
	d.Shows("inch")
	d.Shows("°F")
	d.Press("b", "2", "5", ",", "4", "enter")
	d.Answers("25.4 cfm")
	if b := d.Last().(entry.Blast); math.Abs(float64(b.Volume.Value)-25.4*28.316846592) > 1e-9 {
		t.Errorf("%v l/min", b.Volume)
	}
	d.Press("w", "b", "1", "1", "enter")
	d.Shows("11 lb of iron from 2.2 lb of ore: really")
	d.Press("y", "h")
	if w := d.Last().(entry.Weigh); math.Abs(float64(w.Mass)-11*0.45359237) > 1e-12 {
		t.Errorf("%v kg", w.Mass)
	}
	d.Press("i", "4", "enter")
	if dip := d.Last().(entry.Dip); math.Abs(float64(dip.BelowRim.Value)-10.16) > 1e-12 {
		t.Errorf("%v cm", dip.BelowRim)
	}
	d.Press("e")
	d.Write("2200")
	d.Press("enter", "w")
	if at := d.Last().(entry.Temperature); math.Abs(float64(at.Degrees)-(2200-32)*5./9) > 1e-9 {
		t.Errorf("%v °C", at.Degrees)
	}
	d.Press("i")
	d.Write("900")
	d.Press("enter")
	d.Answers("type 0 to 196.85 inch: 900 cannot be")
	d.Press("esc")
	for _, e := range d.M.Running().Entries() {
		if e.Kind() == entry.KindSetting {
			t.Errorf("the smelt took %+v", e.Event)
		}
	}
	again := desk.SitAt(t, d.Book, desk.Later(d.At, time.Minute), theme.Theme{})
	if again.M.Shared().Units != d.M.Shared().Units {
		t.Errorf("after a restart: %v", again.M.Shared().Units)
	}
}

// A number that is left as it stands is not worn off by the way through another
// unit: neither in an amendment nor in the form before light.
func TestNumbersLeftAloneStayExact(t *testing.T) {
	d := desk.Practising(t)
	d.Press("i", "1", "0", "enter")
	d.Press("v", "e", "m", "y", "l", "y", "esc")
	was := entry.Dip{BelowRim: entry.Some(entry.Centimetre(10))}
	d.Press("v", "b", "a", "w")
	d.Shows("3.94")
	d.Press("esc", "a", "w", "enter")
	if now := d.Last().(entry.Amend).Event; now != entry.Event(was) {
		t.Errorf("%+v became %+v", was, now)
	}
	d.Press("v", "a", "r", "y")
	d.Shows("9.84 inch")
	d.Press("pgdown", "enter", "y")
	l := d.M.Running().Light()
	if l.Furnace.Bore.Value != 25 || l.Measures[0].Mass.Value != 1.9 || !l.Furnace.Guessed {
		t.Errorf("%+v %+v", l.Furnace, l.Measures)
	}
}

// Dark or light is kept for the next time, but the command line comes first.
func TestBackgroundIsKept(t *testing.T) {
	d := desk.Sit(t)
	d.Press("v", "l")
	if !d.M.Shared().Theme.Light {
		t.Fatal("still dark")
	}
	again := desk.SitAt(t, d.Book, desk.Later(d.At, time.Minute), theme.Theme{})
	if !again.M.Shared().Theme.Light {
		t.Error("dark again after a restart")
	}
	m := tui.New(tui.Config{Store: d.Book, Start: d.At, Background: true})
	m, _, _ = m.Update(m.ReadHouse()())
	if m.Shared().Theme.Light {
		t.Error("a stored choice came before the command line")
	}
}

// A letter meant for the fire that falls into the list of settings turns no unit and
// silences no bell: it asks, and the next act is booked.
func TestALetterMeantForTheFireTurnsNoUnit(t *testing.T) {
	for _, stray := range []string{"b", "m", "l", "t", "p", "r"} {
		d := desk.Burning(t)
		units, heard, n := d.M.Shared().Units, d.M.Shared().Heard, len(d.M.Running().Reading().Charges)
		d.Press("v", "e", stray, "c")
		if sh := d.M.Shared(); sh.Units != units || sh.Heard != heard || d.M.Dialog() != nil {
			t.Errorf("%s: %v, the bell %v, open %T", stray, sh.Units, sh.Heard, d.M.Dialog())
		}
		if got := len(d.M.Running().Reading().Charges); got != n+1 {
			t.Errorf("%s, then c: %d charges, want %d", stray, got, n+1)
		}
	}
}
