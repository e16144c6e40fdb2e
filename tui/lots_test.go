package tui_test

import (
	"strings"
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/tui/desk"
)

// A lot that came into the stores while the fire burned is offered there by its name; the
// smelt that is charged from it keeps a copy of what is known of it, once, and the stores
// have less of it.
func TestALotOfTheStoresIsCharged(t *testing.T) {
	d := desk.Sit(t)
	d.Press("r", "pgdown", "enter", "y", "f", "n")
	d.Wait(10 * time.Minute)
	d.Press("v", "t", "n", "1", "d")
	d.Write("reed")
	d.Press("enter")
	d.Write("20")
	d.Press("enter")
	d.Write("30")
	d.Press("enter")
	d.Wait(2 * time.Second)
	d.Press("esc", "esc")
	d.Press("o", "r", "l", "o")
	d.Shows("r reed")
	d.Press("r")
	d.Shows("of ore (reed)")
	for range 2 {
		d.Press("c")
		d.Wait(10 * time.Minute)
	}
	if n := d.Count(entry.KindLot); n != 1 {
		t.Errorf("%d copies of the lot in the smelt, want 1", n)
	}
	d.Press("v", "t")
	if p := d.Picture(); strings.Count(p, "1 kg went into") != 2 || !strings.Contains(p, "18 ±1 kg") {
		t.Errorf("the stores say\n%s", p)
	}
}
