package tui_test

import (
	"math"
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/tui/desk"
)

// What may be off and what a bloom weighs in water are keyed with the weighing, and nothing
// of it is lost where the keys go elsewhere.
func TestAWeighingSaysMore(t *testing.T) {
	for _, c := range []struct {
		keys []string
		want entry.Weigh
	}{
		{[]string{"e", "0", ".", "2", "enter", "k"}, entry.Weigh{PlusMinus: entry.Some(entry.Kilogram(0.2)), State: entry.Cold}},
		{[]string{"i", "2", ".", "4", "enter", "k", "e", ".", "1", "enter", "enter"}, entry.Weigh{PlusMinus: entry.Some(entry.Kilogram(0.1)), InWater: entry.Some(entry.Kilogram(2.4)), Soaked: true}},
		{[]string{"i", "2", ".", "4", "enter", "enter", "m"}, entry.Weigh{InWater: entry.Some(entry.Kilogram(2.4)), State: entry.Compacted}},
		{[]string{"e", "esc"}, entry.Weigh{}},
		{[]string{"e", "1", "p"}, entry.Weigh{}}, // no number has a p: typed anew, then left
		{[]string{"i", "2", ".", "4", "enter", "esc"}, entry.Weigh{InWater: entry.Some(entry.Kilogram(2.4))}},
		{[]string{"i", "4", "enter", "esc"}, entry.Weigh{}}, // more in water than in air is refused
	} {
		d := desk.Burning(t)
		d.Press(append([]string{"w", "b", "3", ".", "2", "enter"}, c.keys...)...)
		d.Press("esc")
		var got []entry.Weigh
		for _, ev := range d.Acts() {
			if w, ok := ev.(entry.Weigh); ok {
				got = append(got, w)
			}
		}
		c.want.What, c.want.Mass = entry.WeighBloom, 3.2
		if len(got) != 1 || got[0] != c.want {
			t.Errorf("%v keeps %+v, want %+v", c.keys, got, c.want)
		}
	}
	d := desk.Burning(t)
	d.Press("w", "g", "6", "enter", "e", ".", "5", "enter", "k")
	w, ok := d.Acts()[len(d.Acts())-1].(entry.Weigh)
	if !ok || w.Where != entry.SlagOfFurnace || w.PlusMinus != entry.Some(entry.Kilogram(0.5)) {
		t.Errorf("%+v", w)
	}
	d.Answers("6 kg ± 0.5 kg")
}

// A bloom that came out in two pieces is weighed piece by piece: the second is added to the
// first where that is said, and else takes its place.
func TestTheOtherPieceOfABloomIsAdded(t *testing.T) {
	for _, c := range []struct {
		keys string
		want entry.Weigh
	}{
		{"p", entry.Weigh{What: entry.WeighBloom, Mass: 3.45}},
		{"pk", entry.Weigh{What: entry.WeighBloom, Mass: 3.45, State: entry.Cold}},
		{"k", entry.Weigh{What: entry.WeighBloom, Mass: 1.1, State: entry.Cold}},
	} {
		d := desk.Burning(t)
		d.Press("w", "b", "2", ".", "3", "5", "enter", "h")
		d.Wait(10 * time.Second)
		d.Press("w", "b", "1", ".", "1", "enter")
		d.Shows("another piece of it: 3.45 kg in all")
		for _, k := range c.keys {
			d.Press(string(k))
			d.Wait(2 * time.Second)
		}
		d.Press("esc")
		w, ok := d.Acts()[len(d.Acts())-1].(entry.Weigh)
		if w.Mass = entry.Kilogram(math.Round(1000*float64(w.Mass)) / 1000); !ok || w != c.want {
			t.Errorf("%s: %+v, want %+v", c.keys, w, c.want)
		}
		if b := d.M.Running().Reading().Bloom; math.Abs(b.Value-float64(c.want.Mass)) > 1e-9 {
			t.Errorf("%s: the bloom is %v kg, want %v", c.keys, b, c.want.Mass)
		}
	}
}
