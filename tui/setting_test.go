package tui

import (
	"math"
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/model/words"
	"chargehand/tui/theme"
)

// Units are chosen in a list that stays open, hold at once and after a restart,
// and are kept in the house; the journal of the smelt stays metric.
func TestUnitsAreChosen(t *testing.T) {
	d := practising(t)
	d.press("c")
	d.shows("1.9 kg charcoal")
	d.press("v", "e", "m", "l", "b", "t", "p")
	d.answers("pressure in mm of water")
	d.press("p", "esc")
	if want := (words.Units{words.Mass: 1, words.Length: 1, words.Blast: 1, words.Heat: 1, words.Pressure: 2}); d.m.theme.Units != want {
		t.Fatalf("%v", d.m.theme.Units)
	}
	d.shows("4.19 lb")
	d.shows("inch")
	d.shows("°F")
	d.press("b", "2", "5", ",", "4", "enter")
	d.answers("25.4 cfm")
	if b := d.last().(entry.Blast); math.Abs(float64(b.Volume.Value)-25.4*28.316846592) > 1e-9 {
		t.Errorf("%v l/min", b.Volume)
	}
	d.press("w", "b", "1", "1", "enter")
	if w := d.last().(entry.Weigh); math.Abs(float64(w.Mass)-11*0.45359237) > 1e-12 {
		t.Errorf("%v kg", w.Mass)
	}
	d.press("i", "4", "enter")
	if dip := d.last().(entry.Dip); math.Abs(float64(dip.BelowRim.Value)-10.16) > 1e-12 {
		t.Errorf("%v cm", dip.BelowRim)
	}
	d.press("e")
	d.write("2200")
	d.press("enter", "w")
	if at := d.last().(entry.Temperature); math.Abs(float64(at.Degrees)-(2200-32)*5./9) > 1e-9 {
		t.Errorf("%v °C", at.Degrees)
	}
	d.press("i")
	d.write("900")
	d.press("enter")
	d.answers("900 inch cannot be: between 0 and 196.85 inch")
	d.press("esc")
	for _, e := range d.m.running.Entries() {
		if e.Kind() == entry.KindSetting {
			t.Errorf("the smelt took %+v", e.Event)
		}
	}
	again := sitAt(t, d.book, later(d.at, time.Minute), theme.Theme{})
	if again.m.theme.Units != d.m.theme.Units {
		t.Errorf("after a restart: %v", again.m.theme.Units)
	}
}

// A number that is left as it stands is not worn off by the way through another
// unit: neither in an amendment nor in the form before light.
func TestNumbersLeftAloneStayExact(t *testing.T) {
	d := practising(t)
	d.press("i", "1", "0", "enter")
	d.press("v", "e", "m", "l", "esc")
	was := entry.Dip{BelowRim: entry.Some(entry.Centimetre(10))}
	d.press("v", "b", "a", "w")
	d.shows("3.94")
	d.press("esc", "a", "w", "enter")
	if now := d.last().(entry.Amend).Event; now != entry.Event(was) {
		t.Errorf("%+v became %+v", was, now)
	}
	d.press("v", "a", "r", "y")
	d.shows("9.84 inch")
	d.press("enter")
	l := d.m.running.Light()
	if l.Furnace.Bore.Value != 25 || l.Measures[0].Mass.Value != 1.9 || !l.Furnace.Guessed {
		t.Errorf("%+v %+v", l.Furnace, l.Measures)
	}
}

// Dark or light is kept for the next time, but the command line comes first.
func TestBackgroundIsKept(t *testing.T) {
	d := sit(t)
	d.press("v", "d")
	if !d.m.theme.Light {
		t.Fatal("still dark")
	}
	again := sitAt(t, d.book, later(d.at, time.Minute), theme.Theme{})
	if !again.m.theme.Light {
		t.Error("dark again after a restart")
	}
	m := New(Config{Store: d.book, Start: d.at, Background: true})
	m, _, _ = m.Update(m.readHouse()())
	if m.theme.Light {
		t.Error("a stored choice came before the command line")
	}
}
