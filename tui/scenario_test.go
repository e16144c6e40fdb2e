package tui_test

import (
	"strings"
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/rule"
	"chargehand/model/session"
	"chargehand/tui/desk"
	"chargehand/tui/words"
)

// From an empty book to the first warning off the plan's line: a furnace, dug and roasted
// ore, charcoal, a plan, a fire lit by it, and charges with too little ore. Every line of
// the plan is live: next charges, how many are to come, what the stores must last for, and
// the ratio that the rule holds the charges against.
func TestFromDiggingToTheFirstWarning(t *testing.T) {
	d := desk.Sit(t)
	d.KeyFurnace()
	d.KeyStores(desk.PondOre, desk.Alder("64"), desk.Bucket, desk.Scoop)
	d.LightByPlan()
	s := func() session.Session { return d.M.Running() }
	if l := s().Light(); l.Plan == nil || len(l.Lots) != 2 {
		t.Fatalf("lit with %+v\n%s", l, d.Picture())
	}
	planned := s().Rest()
	ore, rises := 0.0, 0
	for _, st := range planned {
		if st.Parts.Holds(entry.Ore) {
			rises++
		}
	}
	if f := s().Reading().Figure(figure.OrePlanned); f.Known() {
		ore = f.P50
	}
	end, _ := s().Reading().OreToCome()
	if rises < 2 || ore <= 0 || end.P50 != ore || len(s().Supplies()) != 2 {
		t.Fatalf("%d rises, %.1f kg planned, bloom of %.1f, supplies %+v", rises, ore, end.P50, s().Supplies())
	}
	d.Wait(time.Minute)
	d.Press("f")
	d.Wait(time.Minute)
	first := planned[0].Charges // of charcoal alone
	for range first {
		d.Press("c")
		d.Wait(11 * time.Minute)
	}
	if next := s().Recipe(); !next.Holds(entry.Ore) {
		t.Fatalf("after %d of charcoal alone the next is %+v, %d charged\n%s", first, next, len(s().Charges()), d.Picture())
	}
	for range 2 {
		d.Press("c")
		d.Wait(11 * time.Minute)
	}
	d.Shows("kg ore, pond, roasted")
	if s().Stands(rule.RatioOff) {
		t.Error("off its plan as planned")
	}
	for range 5 { // charcoal, and half a scoop
		d.Press("f", "d")
		d.Wait(11 * time.Minute)
	}
	if !s().Stands(rule.RatioOff) {
		t.Errorf("%v stand\n%s", s().Standing(), d.Picture())
	}
	if left := s().Rest(); len(left) == 0 || left[0].Charges >= planned[1].Charges+planned[2].Charges {
		t.Errorf("left %+v", left)
	}
	// The plan is lit: the stores are held against none. An act of the fire from there.
	d.Press("v", "t")
	d.Shows(words.StoresPlanLit)
	if p := d.Picture(); strings.Contains(p, "needed") {
		t.Errorf("held against a plan that burns:\n%s", p)
	}
	before := len(s().Charges())
	d.Press("c")
	if n := len(s().Charges()); n != before+1 {
		t.Errorf("%d charges, was %d", n, before)
	}
}
