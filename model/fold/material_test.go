package fold

import (
	"testing"
	"time"

	"chargehand/model/entry"
)

// What went in is told by lot, whether a part names it by uid, by name or, where
// there is but one of its material, not at all.
func TestMaterials(t *testing.T) {
	at := time.Date(2026, 5, 9, 9, 0, 0, 0, time.UTC)
	var es []entry.Entry
	keep := func(ev entry.Event) {
		at = at.Add(time.Minute)
		es = append(es, entry.Entry{Version: entry.Version, Stream: "a", Seq: uint64(len(es) + 1), Happened: at, Kept: at, Event: ev})
	}
	part := func(w entry.What, lot string, kg entry.Kilogram) entry.Part {
		return entry.Part{What: w, Lot: lot, Mass: entry.Some(kg)}
	}
	dry := entry.Some(entry.Share(0))
	keep(entry.Light{Lots: []entry.Lot{
		{Name: "pond", UID: "00000000000000a1", What: entry.Ore, Moisture: dry},
		{Name: "kiln", What: entry.Charcoal, Moisture: entry.Some(entry.Share(0.1))},
	}})
	keep(entry.Charge{Parts: entry.Parts{part(entry.Charcoal, "", 11), part(entry.Ore, "pond", 1)}})
	keep(entry.Charge{Parts: entry.Parts{part(entry.Ore, "00000000000000a1", 2), part(entry.Ore, "", 4), part(entry.Ore, "bank", 8), part(entry.SeedSlag, "", 0)}})
	got := func() map[string]float64 {
		c := Trace(es, All, Latest(es))
		sums := map[string]float64{}
		for _, m := range c.Materials() {
			sums[string(m.What)+" "+m.Lot.Name] += m.Dry.Kg
		}
		return sums
	}
	want := map[string]float64{"charcoal kiln": 10, "ore pond": 7, "ore bank": 8 / (1 + oreMoisture)}
	check := func() {
		t.Helper()
		all := got()
		if len(all) != len(want) {
			t.Errorf("%v, want %v", all, want)
		}
		for k, kg := range want {
			if d := all[k] - kg; d > 1e-9 || d < -1e-9 {
				t.Errorf("%s: %g kg, want %g", k, all[k], kg)
			}
		}
	}
	check()
	keep(entry.LotStored{Lot: entry.Lot{Name: "moor", What: entry.Ore, Moisture: dry}})
	delete(want, "ore pond") // with a second lot of ore nobody knows which the unnamed is of
	want["ore pond"], want["ore "] = 3, 4/(1+oreMoisture)
	check()
}
