package solve_test

import (
	"math"
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/model/solve"
)

// ofLot is an invented smelt charged from one lot of ore, 20 kg dry in all.
func ofLot(l entry.Lot) *day {
	d := newDay(norse)
	light := d.entries[0].Event.(entry.Light)
	light.Lots = []entry.Lot{l}
	d.entries[0].Event = light
	d.key(entry.Fill{Parts: entry.Parts{buckets(3)}}).wait(time.Minute).key(blast(600)).wait(15 * time.Minute)
	for range 10 {
		p := ore(2)
		p.Lot = string(l.ID())
		d.key(charge(buckets(1), p)).wait(10 * time.Minute)
	}
	return d
}

// Ore that nobody assayed has the iron that is usual of raw or of roasted ore, as stores and account take it: 37 and
// 48 % (see package ore). Raw ore is the oxide that holds water, which it gives off in the shaft.
func TestRawOreIsNotTakenForRoasted(t *testing.T) {
	lot := entry.Lot{UID: "aa00000000000001", Name: "pond", What: entry.Ore, Moisture: entry.Some(entry.Share(0))}
	roasted := ofLot(lot)
	lot.Raw = true
	raw := ofLot(lot)
	lot.Signs = []entry.OreSign{entry.SignBlack}
	poor := ofLot(lot)
	for _, c := range []struct {
		name string
		d    *day
		want float64
	}{{"roasted", roasted, 0.48}, {"raw", raw, 0.37}, {"raw, black and earthy", poor, 0.37 - 0.6*0.8*(0.37-0.25)}} {
		s := c.d.fresh(c.d.now)
		if got := s.Totals.OreIron / 20; math.Abs(got-c.want) > 1e-3 || !s.UsualOre {
			t.Errorf("%s: %.3f iron, want %.3f, usual %v", c.name, got, c.want, s.UsualOre)
		}
	}
	held := func(d *day) (water, all float64) {
		for _, layer := range d.fresh(d.now).Profile {
			water += layer.Ore.Goethite
			all += layer.Ore.Sum()
		}
		return water, all
	}
	if water, _ := held(roasted); water != 0 {
		t.Errorf("%.3f kg of the iron of roasted ore holds water", water)
	}
	if water, all := held(raw); water <= 0 || water >= all {
		t.Errorf("%.3f of %.3f kg of the iron of raw ore holds water still", water, all)
	}
}

// An assay that came after the smelt was lit counts as one that its light took down, whether it is given beside the entries
// or put into them, and a solver that has solved the smelt before solves it anew.
func TestAnAssayThatCameLater(t *testing.T) {
	lot := entry.Lot{UID: "aa00000000000001", Name: "pond", What: entry.Ore, Moisture: entry.Some(entry.Share(0))}
	d := ofLot(lot)
	lot.Iron = entry.Some(entry.Share(0.3))
	want := ofLot(lot).fresh(d.now)
	var v solve.Solver
	if before := d.solve(&v, d.now); !before.UsualOre || before.Totals.OreIron <= want.Totals.OreIron {
		t.Fatalf("before the assay: %v, %.2f kg of iron", before.UsualOre, before.Totals.OreIron)
	}
	v.Irons = solve.Irons{lot.UID: 0.3}
	after := d.solve(&v, d.now)
	var into []entry.Entry
	for _, e := range d.entries {
		into = append(into, v.Irons.Into(e))
	}
	c := fold.Trace(into, fold.All, d.now)
	for name, s := range map[string]solve.Solution{"beside": after, "put in": new(solve.Solver).Solve(&c)} {
		if s.UsualOre || s.Totals != want.Totals || s.Hearth != want.Hearth {
			t.Errorf("%s: %.3f kg of iron, hearth %.1f K, want %.3f and %.1f", name, s.Totals.OreIron, s.Hearth.Temperature, want.Totals.OreIron, want.Hearth.Temperature)
		}
	}
	if l := d.entries[0].Event.(entry.Light).Lots[0]; l.Iron.Known {
		t.Error("the entries themselves were changed")
	}
}
