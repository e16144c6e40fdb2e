package tui_test

import (
	"strings"
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/tui/desk"
	"chargehand/tui/screen"
	"chargehand/tui/theme"
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
	if p := d.Picture(); strings.Count(p, "2 kg to ") != 1 || !strings.Contains(p, "18 ±1 kg") {
		t.Errorf("the stores say\n%s", p)
	}
}

// Ore that goes in before the plan has any is of the lot that the plan is charged from, and
// the stores have less of it.
func TestEarlyOreIsOfThePlansLot(t *testing.T) {
	d := desk.Sit(t)
	d.KeyStores(desk.PondOre, desk.Alder("64"), desk.Bucket, desk.Scoop)
	d.LightByPlan()
	d.Wait(time.Minute)
	d.Press("f")
	d.Wait(time.Minute)
	if d.M.Running().Recipe().Holds(entry.Ore) {
		t.Fatal("the plan begins with ore")
	}
	d.Press("up", "c")
	d.Wait(10 * time.Minute)
	d.Press("s")
	d.Wait(10 * time.Minute)
	ore := 0
	for _, c := range d.M.Running().Reading().Charges {
		for _, p := range c.Parts {
			if p.What == entry.Ore {
				if ore++; p.Lot == "" {
					t.Errorf("ore of no lot: %+v", p)
				}
			}
		}
	}
	if ore != 2 {
		t.Errorf("%d parts of ore\n%s", ore, d.Picture())
	}
	l, _ := d.M.Shared().House().Lot("pond, roasted")
	if w := l.Weight(l.Left.Kg); w < 29.99 || w > 30.01 {
		t.Errorf("%.2f kg left of 31 after two scoops of 0.5", w)
	}
}

// A lot in which a newer version of the program wrote a word is taken as it stands: the fire
// is lit, and what is not understood is said.
func TestALotWithANewerWordIsLit(t *testing.T) {
	book := desk.Memory{}
	lot := entry.Lot{UID: "aa00000000000001", Name: "pond", Material: entry.LotOre, What: entry.Ore, Signs: []entry.OreSign{entry.SignHeavy, "glows"}}
	for _, ev := range []entry.Event{entry.LotStored{Lot: lot}, entry.Deed{Does: entry.Dug, Out: []entry.Amount{{Lot: lot.UID, Mass: entry.Some(entry.Kilogram(31))}}}} {
		book.Keep(entry.Entry{Version: 1, Stream: entry.House, Happened: desk.Noon.Wall.Add(-time.Hour), Event: ev})
	}
	d := desk.SitAt(t, book, desk.Noon, theme.Theme{})
	d.Press("r", "pgdown", "enter", "y")
	d.Answers("not understood, kept as it stands: signs glows")
	if l := d.M.Running().Light().Lots; len(l) != 1 || len(l[0].Signs) != 2 || l[0].Signs[1] != "glows" {
		t.Errorf("lit with %+v\n%s", l, d.Picture())
	}
	d.Press("v", "t")
	d.Press("enter")
	d.Shows("glows (not understood)")
}

// litOfTwoOres is a desk with two lots of ore in stores and a fire lit with the first, one charge in.
func litOfTwoOres(t *testing.T) *desk.Desk {
	t.Helper()
	d := desk.Sit(t)
	d.KeyStores(desk.PondOre, desk.HillOre, desk.Alder("64"), desk.Bucket, desk.Scoop)
	d.Press("v", "a", "r", "pgdown", "enter")
	if d.M.Dialog() != nil {
		d.Press("y")
	}
	d.Press("o", "m", "f", "c")
	return d
}

// What is left of the ore stays known after another lot of the stores was taken: the copy that
// the smelt keeps has what the stores had of it, and counts nothing there.
func TestLeftIsKnownAfterAnotherLot(t *testing.T) {
	d := litOfTwoOres(t)
	d.Wait(10 * time.Minute)
	d.Press("o", "r", "l", "o", "h")
	d.Press("c")
	d.Wait(time.Minute)
	var left float64
	for _, s := range d.M.Running().Supplies() {
		if s.What == entry.Ore {
			left = s.Left
		}
	}
	if left < 40.99 || left > 41.01 { // 31 and 12 less two scoops of half a kg from each
		t.Errorf("%.2f kg of ore left\n%s", left, d.Picture())
	}
	d.Shows("41 kg left")
	l, _ := d.M.Shared().House().Lot("hill, as dug")
	if w := l.Weight(l.Left.Kg); w < 10.99 || w > 11.01 || !l.Counted.IsZero() {
		t.Errorf("the stores have %.2f kg of it, counted %v", w, l.Counted)
	}
}

// The iron that a lot was assayed at goes with it into the smelt, as light takes it and as it is
// taken later: solver, account and stores have one. Of ore that nobody assayed none is said.
func TestTheAssayOfALotGoesWithIt(t *testing.T) {
	d := desk.Sit(t)
	d.KeyStores(desk.PondOre, desk.HillOre, desk.Alder("64"))
	pond, _ := d.M.Shared().House().Lot("pond, roasted")
	d.Book.Keep(entry.Entry{Version: 1, Stream: entry.House, Happened: d.At.Wall, Event: entry.Assay{Lot: pond.ID, Basis: entry.AsDried, Parts: map[string]entry.Assayed{"Fe": {Percent: 41}}}})
	d = desk.SitAt(t, d.Book, desk.Later(d.At, time.Minute), theme.Theme{})
	d.Press("r", "pgdown", "enter", "y", "o", "m", "f", "c", "o", "r", "l", "o", "h", "c")
	lots := map[string]entry.Lot{}
	for _, l := range d.M.Running().Lots() {
		lots[l.Name] = l
	}
	if iron := lots["pond, roasted"].Iron; !iron.Known || iron.Value < 0.4099 || iron.Value > 0.4101 {
		t.Errorf("assayed at 41 %%: %+v", iron)
	}
	if l, taken := lots["hill, as dug"]; !taken || l.Iron.Known {
		t.Errorf("nobody assayed it: %+v, taken %v", l.Iron, taken)
	}
}

// Another lot that was taken and crossed out again counts nothing of what is left, and the key
// that crosses out the last act takes it back, not the copy that came with it or the charge before.
func TestALotCrossedOutCountsNothing(t *testing.T) {
	d := litOfTwoOres(t)
	left := func(what string, want float64) {
		t.Helper()
		for _, s := range d.M.Running().Supplies() {
			if s.What == entry.Ore && s.Left > want-0.01 && s.Left < want+0.01 {
				return
			}
		}
		t.Errorf("%s: ore left is %+v, want %g kg", what, d.M.Running().Supplies(), want)
	}
	left("before", 30)
	d.Wait(10 * time.Minute)
	d.Press("o", "r", "l", "o", "h")
	left("with another lot", 42)
	d.Press("u")
	d.Answers("crossed out: next charge")
	left("crossed out", 30)
	d.Wait(10 * time.Minute)
	d.Press("c")
	left("charged as before", 29)
	d.Press("down", "u")
	d.Answers("crossed out: charge 3")
}

// An assay that comes while the fire burns, or after it, is taken by the solver of the smelt that was lit
// before: at once, and when the program is started again. Crossed out it counts no more.
func TestAnAssayReachesTheSmeltThatWasLitBefore(t *testing.T) {
	d := desk.Sit(t)
	d.KeyStores(desk.PondOre, desk.Alder("64"))
	pond, _ := d.M.Shared().House().Lot("pond, roasted")
	d.Press("r", "pgdown", "enter", "y", "o", "m", "f", "c")
	d.Wait(time.Minute)
	iron := func(what string, want float64) {
		t.Helper()
		got := float64(d.M.Running().Irons()[pond.ID])
		if got < want-1e-4 || got > want+1e-4 {
			t.Errorf("%s: the solver takes %.3f, want %g\n%s", what, got, want, d.Picture())
		}
	}
	iron("before", 0)
	beside := watching(t, d, "", screen.Fire)
	sees(t, d, beside)
	d.Press("v", "t")
	d.Press("up")
	d.Press("a", "i", "4", "1", "enter", "i", "r")
	iron("assayed", 0.41)
	sees(t, d, beside)
	if got := beside.M.Running().Irons()[pond.ID]; got < 0.4099 || got > 0.4101 {
		t.Errorf("a second screen takes %.3f", got)
	}
	d.Wait(2 * time.Second)
	d.Press("x")
	iron("crossed out", 0)
	d.Book.Keep(entry.Entry{Version: 1, Stream: entry.House, Happened: d.At.Wall, Kept: d.At.Wall, Event: entry.Assay{Lot: pond.ID, Basis: entry.AsDried, Parts: map[string]entry.Assayed{"Fe": {Percent: 38}}}})
	d = desk.SitAt(t, d.Book, desk.Later(d.At, time.Minute), theme.Theme{})
	d.Press("g")
	iron("started again", 0.38)
}
