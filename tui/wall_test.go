package tui_test

import (
	"strings"
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/rule"
	"chargehand/tui/desk"
	"chargehand/tui/theme"
)

// Wall and weather are keyed below one letter of the rare acts: what of it, and where.
func TestWallAndWeatherAreKeyedAtTheFire(t *testing.T) {
	d := desk.Smelting(t, theme.Theme{})
	for _, c := range []struct {
		keys string
		want entry.Event
	}{
		{"o a w b", nil}, // it asks where
		{"esc", entry.WallSeen{What: entry.WallBurnThrough}},
		{"o a w k a", entry.WallSeen{What: entry.WallCrack, Where: "at the tuyere"}},
		{"o a w p w n", entry.WallSeen{What: entry.WallPatched, With: "wet clay"}},
		{"o a w p enter", entry.WallSeen{What: entry.WallPatched}},
		{"o a r h", entry.Weather{Rain: entry.RainHeavy}},
		{"o a i g", entry.Weather{Wind: entry.WindGusts}},
		{"o a o", entry.Arch{Open: true}},
		{"o a k", entry.Arch{}},
	} {
		n := len(d.Acts())
		d.Press(strings.Fields(c.keys)...)
		if c.want == nil {
			if len(d.Acts()) != n {
				t.Errorf("%s kept %#v", c.keys, d.Last())
			}
			continue
		}
		if d.Last() != c.want {
			t.Errorf("%s kept %#v, want %#v; %s", c.keys, d.Last(), c.want, d.Said())
		}
		d.Wait(time.Second)
	}
	d.Press("o", "a", "i", "l", "v", "b", "a", "w", "e")
	d.Write("12")
	d.Press("enter")
	if a, ok := d.Last().(entry.Amend); !ok || a.Event != (entry.Weather{Wind: entry.WindLight, Air: entry.Some(entry.Celsius(12))}) {
		t.Errorf("amended: %#v; %s", d.Last(), d.Said())
	}
	d.Press("esc")
	d.Press("o", "a", "e")
	d.Write("80")
	d.Press("enter")
	d.Shows("in the shade")
	d.Press("n", "esc")
	d.Press("o", "a", "e")
	d.Write("8")
	d.Press("enter")
	if d.Last() != (entry.Weather{Air: entry.Some(entry.Celsius(8))}) {
		t.Errorf("the air kept %#v; %s", d.Last(), d.Said())
	}
}

// The air outside that the weather tells goes into the air that burns: the same litres of
// colder air hold more of it, as 1/T of a gas at one pressure.
func TestTheAirSumUsesTheWeather(t *testing.T) {
	moles := func(celsius string) float64 {
		d := desk.Smelting(t, theme.Theme{})
		d.Press("b")
		d.Write("700")
		d.Press("enter", "o", "a", "e")
		d.Write(celsius)
		d.Press("enter")
		d.Wait(time.Second)
		f := d.M.Running().Reading().Figure(figure.BurnMost)
		if !f.Known() {
			t.Fatalf("no air at %s: %+v", celsius, f)
		}
		return f.P50
	}
	cold, warm := moles("0"), moles("30")
	if ratio, want := cold/warm, 303.15/273.15; ratio < want*0.995 || ratio > want*1.005 {
		t.Errorf("at 0 and at 30 °C %.4g and %.4g kg/h burn at most: %.4f times as much, by the gas law %.4f", cold, warm, ratio, want)
	}
}

// Fire through the wall brings its caution at once, though it was told of before.
func TestABurntThroughWallBringsItsCaution(t *testing.T) {
	d := desk.Smelting(t, theme.Theme{})
	for range 30 {
		d.Wait(time.Minute)
		d.Press("g")
	}
	d.Press("o", "a", "w", "b", "a")
	d.Wait(time.Second)
	if d.M.Careful() != rule.BurnThrough {
		t.Errorf("the caution is %q", d.M.Careful())
	}
}

// A hand-over of a part leaves the initials of who is in charge.
func TestAHandOverSaysWhatItCovers(t *testing.T) {
	d := desk.Smelting(t, theme.Theme{})
	d.Press("o", "g", "K", "L", "enter", "b")
	if d.Last() != (entry.HandOver{To: "KL", Covers: "blower and tuyere"}) {
		t.Fatalf("kept %#v; %s", d.Last(), d.Said())
	}
	by := d.M.Running().Reading().By
	d.Press("o", "g", "J", "M", "enter", "esc")
	if now := d.M.Running().Reading().By; d.Last() != (entry.HandOver{To: "JM"}) || by == "KL" || now != "JM" {
		t.Errorf("kept %#v, in charge %q and then %q", d.Last(), by, now)
	}
}
