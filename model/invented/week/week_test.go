package week

import (
	"math"
	"testing"

	"chargehand/model/doubt"
	"chargehand/model/entry"
	"chargehand/model/house"
	"chargehand/model/invented"
)

// The week leads to the smelt: lots, measures and furnace of the same names, sizes and
// amounts, every entry one that can be kept, nothing in it doubted, and a plan that is taken
// and of which most lines are ticked.
func TestTheWeekLeadsToTheSmelt(t *testing.T) {
	es := Entries()
	for i, e := range es {
		if e.Seq != uint64(i+1) || e.Stream != entry.House || e.Kept.After(Morning()) || i > 0 && e.Kept.Before(es[0].Kept) {
			t.Errorf("entry %d: %d of %s at %s", i, e.Seq, e.Stream, e.Kept)
		}
		if _, err := entry.Encode(e); err != nil {
			t.Error(err)
		}
		if ds := doubt.InHouse(e.Event, house.Fold(es[:i], nil, e.Kept)); len(ds) > 0 {
			t.Errorf("entry %d is doubted: %+v", i, ds)
		}
	}
	h := house.Fold(es, nil, Morning())
	smelt, err := invented.Smelt()
	if err != nil {
		t.Fatal(err)
	}
	light, _ := smelt[0].Event.(entry.Light)
	for _, lit := range light.Lots {
		l, ok := h.Lot(lit.Name)
		if !ok || !l.Left.Known() || math.Abs(l.Weight(l.Left.Kg)-float64(lit.Mass.Value)) > 2.1 {
			t.Errorf("%s: lit with %v kg, the week leaves %+v", lit.Name, lit.Mass.Value, l.Left)
		}
	}
	for _, m := range light.Measures {
		found := false
		for _, o := range h.Measures {
			found = found || o.Name == m.Name && o.Mass.Value == m.Mass.Value
		}
		if !found {
			t.Errorf("no measure %s of %v kg", m.Name, m.Mass.Value)
		}
	}
	if len(h.Furnaces) != 1 || h.Furnaces[0].Last().Furnace.Bore != light.Furnace.Bore || len(h.Furnaces[0].Versions) != 2 || len(h.Furnaces[0].Dryings) != 4 {
		t.Errorf("%+v", h.Furnaces)
	}
	if len(h.Plans) != 1 || h.Plans[0].Taken != "usual" || len(h.Plans[0].Done) != 7 || len(h.Plans[0].Plans) != 3 || !h.Plans[0].Promised["ore_planned"].P50.Known || h.Plans[0].Day != "2026-05-09" {
		t.Fatalf("%+v", h.Plans)
	}
}
