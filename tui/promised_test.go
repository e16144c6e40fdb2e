package tui_test

import (
	"testing"
	"time"

	"chargehand/tui/desk"
)

// When a smelt that was lit by a plan is over, its account has what the plan promised beside
// what came out, ore and charcoal dry on both sides; a smelt without one says nothing of it.
func TestPromisedAgainstWhatCameOut(t *testing.T) {
	d := desk.Sit(t)
	d.KeyFurnace()
	d.KeyStores(desk.PondOre, desk.Alder("64"), "ka1bucket\n2\n")
	d.LightByPlan()
	d.Wait(time.Minute)
	d.Press("f")
	for range 4 {
		d.Wait(11 * time.Minute)
		d.Press("f")
	}
	d.Wait(15 * time.Minute)
	d.Press("o", "o", "r")
	d.Press("w", "b")
	d.Write("2.5")
	d.Press("enter", "k")
	d.Wait(time.Minute)
	d.Press("esc", "v", "c")
	d.Shows("planned dry ore")
	d.Shows("8.8 kg went in") // five buckets of 2 kg with 12 % of water
	d.Shows("chance of what was wanted 4 in 10")
	d.Shows("wanted bloom 3 kg") // and over it, in large letters, that less came
}
