package account_test

import (
	"strings"
	"testing"

	"chargehand/model/entry"
	"chargehand/tui/desk"
)

// What a golden holds was looked at as a picture before it was kept.
func TestGoldenScreen(t *testing.T) {
	desk.Golden(t, "account", [][2]int{desk.Small, desk.Usual, desk.Large}, "l", "r", "v", "c")
}

// A smelt weighed days later: the line of the account is there at once, and one line
// for next time is kept with the house.
func TestWeighedLaterAndALineForNextTime(t *testing.T) {
	d := desk.Sit(t)
	d.Press("p")
	d.Press("v", "c")
	if !strings.Contains(d.Picture(), "iron out") {
		t.Fatalf("no account in\n%s", d.Picture())
	}
	d.Press("w", "g")
	for _, k := range "11" {
		d.Press(string(k))
	}
	d.Press("enter", "k")
	weighed := false
	for l := range d.M.Running().Of(entry.KindWeigh) {
		w := l.Event.(entry.Weigh)
		weighed = weighed || w.What == entry.WeighSlag && w.Where == entry.SlagOfFurnace && w.Mass == 11
	}
	if !weighed {
		t.Errorf("no slag weighed in\n%s", d.Picture())
	}
	d.Press("n")
	for _, k := range "tap it sooner" {
		key := string(k)
		if k == ' ' {
			key = "space"
		}
		d.Press(key)
	}
	d.Press("enter")
	ls := d.M.Shared().House().Lessons
	if len(ls) != 1 || ls[0].Text != "tap it sooner" || ls[0].Smelt == "" {
		t.Errorf("the lessons are %+v after\n%s", ls, d.Picture())
	}
	if !strings.Contains(d.Picture(), "tap it sooner") {
		t.Errorf("the lesson is not on\n%s", d.Picture())
	}
}
