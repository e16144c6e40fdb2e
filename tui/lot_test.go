package tui_test

import (
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/tui/desk"
)

// Lot, slag, fragments and flux can be chosen when charging, filling and entering late.
func TestLotsAndWhatElseGoesIn(t *testing.T) {
	d := desk.Sit(t)
	d.Press("p", "o", "r", "o", "e") // seed slag into the fill
	d.Write("2,5")
	d.Press("enter")
	fill, ok := d.Last().(entry.Fill)
	if !ok || len(fill.Parts) != 1 || fill.Parts[0].What != entry.SeedSlag || fill.Parts[0].Mass.Value != 2.5 {
		t.Fatalf("kept %#v", d.Last())
	}
	d.Press("f", "c", "o", "r", "l", "o")
	d.Write("pond")
	d.Press("enter", "c")
	c, ok := d.Last().(entry.Charge)
	if !ok || c.Parts[1].Lot != "pond" || c.Parts[0].Lot != "" {
		t.Fatalf("charged %#v", d.Last())
	}
	d.Press("s")
	if c, ok := d.Last().(entry.Charge); !ok || c.Parts[0].Lot != "pond" {
		t.Errorf("a scoop is %#v", d.Last())
	}
	d.Wait(10 * time.Minute)
	d.Press("o", "e")
	d.Write("5")
	d.Press("enter", "c")
	d.Press("o", "x") // flux too
	d.Write("1")
	d.Press("enter", "l", "p") // of another lot: the pond's, which is known now
	d.Write("3")
	d.Press("enter")
	d.Write("0,4")
	d.Press("enter")
	late, ok := d.Last().(entry.Charge)
	if !ok || len(late.Parts) != 3 || late.Parts[1].Lot != "pond" || late.Parts[1].Count.Value != 3 || late.Parts[2].What != entry.Flux || late.Parts[2].Mass.Value != 0.4 {
		t.Errorf("late %#v", d.Last())
	}
	d.Shows("flux")
}
