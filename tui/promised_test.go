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
	d.Press("v", "u")
	d.Script("nReed Hollow\n25\n\n50\n60\n15\n5\n20\n20\n")
	d.Press("v", "t")
	d.Script("n1rpond, roasted\n31\n3\n")
	d.Script("n2balder\n64\n12\n")
	d.Script("ka1bucket\n2\n")
	d.Press("v", "p")
	d.Script("wb3\n")
	d.Script("n4\n")
	d.Press("enter", "l", "pgdown", "enter")
	if d.M.Dialog() != nil { // some numbers are guesses
		d.Press("y")
	}
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
	d.Shows("less came")
}
