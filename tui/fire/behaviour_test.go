package fire_test

import (
	"slices"
	"testing"
	"time"

	"chargehand/model/rule"
	"chargehand/tui/desk"
	"chargehand/tui/fire"
	"chargehand/tui/screen"
)

// No bare key at the fire changes phase: that takes the list and a yes.
func TestNoBareKeyChangesPhase(t *testing.T) {
	for _, b := range fire.Map.All() {
		for _, k := range b.Keys() {
			d := desk.Practising(t)
			d.Press("n", "x", "enter") // a last act for the keys that speak of one
			before := d.M.Running().Reading().Phase
			d.Press(k)
			if now := d.M.Running().Reading().Phase; now != before {
				t.Errorf("%s (%s) alone changed the phase from %s to %s", k, b.Help().Desc, before, now)
			}
		}
	}
}

// Of several warnings one key sees each, and once all are seen shows one after
// the other; any other key, or half a minute, is back at the gravest, and one
// that nobody has seen comes first. Two of one grade stand newest first.
func TestWarningsAreSteppedThrough(t *testing.T) {
	d := desk.Burning(t)
	d.Press("l", "3", "2")
	d.Pass(time.Minute)
	d.Press("l", "1", "6")
	d.Pass(2 * time.Minute)
	first := func() rule.ID {
		return d.M.Screen(screen.Fire).(fire.Screen).First(d.M.Shared())
	}
	ws := d.M.Running().Standing()
	if len(ws) < 2 || ws[0].Rule != rule.TuyereDim || ws[1].Rule != rule.SlagThick {
		t.Fatalf("%+v", ws)
	}
	for d.Press("a"); slices.ContainsFunc(d.M.Running().Standing(), fire.Unseen); d.Press("a") {
		d.Wait(time.Second)
	}
	gravest := first()
	seen := map[rule.ID]bool{}
	for range d.M.Running().Standing() {
		d.Wait(time.Second)
		d.Press("a")
		seen[first()] = true
	}
	if len(seen) != len(d.M.Running().Standing()) || first() != gravest {
		t.Errorf("%d of %d were shown, and the last is %s", len(seen), len(d.M.Running().Standing()), first())
	}
	d.Wait(time.Second)
	if d.Press("a"); first() == gravest {
		t.Error("not turned")
	}
	if d.Pass(fire.TurnsFor + time.Second); first() != gravest {
		t.Errorf("%s stands after half a minute", first())
	}
	d.Press("a")
	if d.Press("up"); first() != gravest {
		t.Errorf("%s stands after another key", first())
	}
}
