package tui_test

import (
	"slices"
	"strings"
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/tui/desk"
	"chargehand/tui/theme"
)

// closed is a desk after a smelt that was closed so long ago, with the form before light
// open on its furnace.
func closed(t *testing.T, ago time.Duration) *desk.Desk {
	t.Helper()
	d := desk.Smelting(t, theme.Theme{})
	d.Press("o", "o", "n", "y", "o", "k", "y", "enter")
	d.Wait(ago)
	d.Press("v", "a")
	d.Press("r")
	return d
}

// A furnace in which a smelt ended not long ago is lit again: one row asks what was left
// in, and the light keeps that and for how long it stood.
func TestAFurnaceIsLitAgain(t *testing.T) {
	for _, c := range []struct {
		ago   time.Duration
		typed string
		left  []entry.LeftIn
	}{
		{20 * time.Hour, "", nil},
		{20 * time.Minute, "se", []entry.LeftIn{entry.LeftSlag, entry.LeftEmbers}},
		{3 * time.Hour, "slag and bloom", nil}, // a word that it does not know stays a mistake of its row
	} {
		d := closed(t, c.ago)
		d.Shows("left in it")
		d.Press("pgdown", "up", "up", "up", "up")
		d.Write(c.typed)
		d.Press("pgdown", "enter")
		if strings.Contains(c.typed, "and") {
			d.Shows("s for slag")
			continue
		}
		d.Press("y")
		l := d.M.Running().Light()
		if got := time.Duration(float64(l.Rested.Value) * float64(time.Hour)); !l.Rested.Known || got < c.ago || got > c.ago+time.Minute || !slices.Equal(l.LeftIn, c.left) {
			t.Fatalf("after %s: rested %v, left in %v\n%s", c.ago, got, l.LeftIn, d.Picture())
		}
		d.Press("v", "b")
		d.Shows("again after ")
	}
	if d := closed(t, 7*24*time.Hour); strings.Contains(d.Picture(), "left in it") {
		t.Error("after a week it asks what was left in")
	}
}

// Another furnace is not asked about, nor is one that never held a smelt.
func TestOnlyTheFurnaceThatWasLitIsLitAgain(t *testing.T) {
	d := closed(t, time.Hour)
	d.Press("left") // the last of the usual ones
	if strings.Contains(d.Picture(), "left in it") {
		t.Errorf("another furnace:\n%s", d.Picture())
	}
}

// What was left in is put right with the light, and a light moved moves for how long it stood.
func TestWhatWasLeftInIsPutRight(t *testing.T) {
	d := closed(t, 2*time.Hour)
	d.Press("pgdown", "enter", "y")
	d.Wait(30 * time.Minute)
	d.Press("o", "v", "l")
	d.Shows("left in it")
	d.Press("pgdown", "up", "up", "up", "up")
	d.Write("b")
	d.Press("pgdown", "enter")
	if l := d.M.Running().Light(); !slices.Equal(l.LeftIn, []entry.LeftIn{entry.LeftBloom}) || !l.Rested.Known {
		t.Errorf("%+v %v\n%s", l.LeftIn, l.Rested, d.Picture())
	}
}
