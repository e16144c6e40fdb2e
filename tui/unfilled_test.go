package tui_test

import (
	"testing"

	"chargehand/model/entry"
	"chargehand/tui/desk"
)

// The first charge into a shaft that nobody filled is booked, and the fill asked about:
// one key keys it as of a minute before. The question swallows no act.
func TestTheFillIsAskedForAtTheFirstCharge(t *testing.T) {
	d := desk.Sit(t)
	d.Press("p", "c")
	d.Shows("no fill keyed")
	if d.Count(entry.KindCharge) != 1 {
		t.Fatal("the charge is not booked")
	}
	d.Press("y")
	fills, r := d.Count(entry.KindFill), d.M.Running().Reading()
	if fills != 1 || r.Unfilled || len(r.Charges) != 1 {
		t.Errorf("%d fills, %d charges", fills, len(r.Charges))
	}
	d.Press("c")
	if d.M.Dialog() != nil {
		t.Error("asked again")
	}
	other := desk.Sit(t)
	other.Press("p", "c", "s")
	if other.Count(entry.KindCharge) != 2 || other.Count(entry.KindFill) != 0 || other.M.Dialog() != nil {
		t.Errorf("a scoop while it asks: %d charges", other.Count(entry.KindCharge))
	}
	filled := desk.Sit(t)
	filled.Press("p", "f", "c")
	if filled.M.Dialog() != nil {
		t.Error("asked although a bucket was filled in")
	}
}
