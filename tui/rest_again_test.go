package tui_test

import (
	"strings"
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/rule"
	"chargehand/tui/desk"
	"chargehand/tui/words"
)

// byPlan is a smelt lit by a plan of ten charges with ore and one over them, five in.
func byPlan(t *testing.T) *desk.Desk {
	d := charged(t)
	next := d.M.Running().Recipe()
	d.M = d.M.Keeping(entry.Recipe{Next: next, Ramp: []entry.RecipeStep{
		{Charges: 10, Parts: next}, {Does: entry.StepLastOre, Charges: 1, Parts: next[:1]}}})
	for range 3 {
		d.Press("c")
		d.Wait(10 * time.Minute)
	}
	return d
}

// The rest of a day is planned anew on a card; taking an end replaces what the plan had
// left: the next charges and what the stores must last for, and nothing else.
func TestAgainFromHere(t *testing.T) {
	d := byPlan(t)
	ore := figureOf(d, figure.OreCharged)
	d.Press("o", "r", "p")
	for _, line := range []string{words.AgainPull, words.AgainBloom, words.NothingPromised} {
		d.Shows(line)
	}
	d.Press("o")
	d.Write("8")
	d.Press("enter")
	d.Shows("ore short by")
	d.Press("e")
	var taken entry.AgainFromHere
	for l := range d.M.Running().Of(entry.KindAgainFromHere) {
		taken = l.Event.(entry.AgainFromHere)
	}
	if !strings.HasPrefix(taken.Taken, "shorter") {
		t.Fatalf("%+v, %q", taken, d.Said())
	}
	in := 0
	for _, st := range d.M.Running().Rest() {
		in += st.Charges
	}
	if in != 5 || figureOf(d, figure.OreCharged) != ore { // 8 kg are four charges of 2 kg, and one over them
		t.Errorf("%d charges left, %+v", in, taken.Steps)
	}
	charges, ramp := d.M.Running().Coming(99)
	if !ramp || len(charges) != 5 {
		t.Errorf("%d charges are coming", len(charges))
	}
	d.Press("u") // and it is crossed out like any act
	if n := len(d.M.Running().Rest()); n != 2 || d.M.Running().Rest()[0].Charges != 7 {
		t.Errorf("%+v", d.M.Running().Rest())
	}
	if d.M.Running().Stands(rule.PlanLate) {
		t.Error("late without a promise")
	}
}

// Without a plan there is no rest of it.
func TestNothingToPlanAgain(t *testing.T) {
	d := charged(t)
	d.Press("o", "r", "p")
	if said, refused := d.M.Answer(); !refused || said != words.NoRestToPlan {
		t.Errorf("%q", said)
	}
}
