package shelf

import (
	"math"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"chargehand/model/entry"
)

func smelt(l entry.Light, events ...entry.Event) []entry.Entry {
	lit := time.Date(2026, 5, 9, 8, 0, 0, 0, time.UTC)
	var es []entry.Entry
	for i, ev := range append([]entry.Event{l}, events...) {
		es = append(es, entry.Entry{Version: 1, Stream: "s", Seq: uint64(i + 1), Happened: lit.Add(time.Duration(i) * time.Minute), Event: ev})
	}
	return es
}

func ore(lot string, kg entry.Kilogram) entry.Charge {
	return entry.Charge{Parts: entry.Parts{{What: entry.Charcoal, Mass: entry.Some(entry.Kilogram(2))}, {What: entry.Ore, Lot: lot, Mass: entry.Some(kg)}}}
}

func TestSummary(t *testing.T) {
	l := entry.Light{UID: "u", Furnace: entry.Furnace{Name: "Reed Hollow"}, Lots: []entry.Lot{
		{Name: "pond", What: entry.Ore, Mix: "reed", Moisture: entry.Some(entry.Share(0.25))}, {Name: "hill", What: entry.Ore, Mix: "reed", Moisture: entry.Some(entry.Share(0.25))}}}
	out := []entry.Event{ore("pond", 5), ore("hill", 5), entry.Extract{}, entry.Weigh{What: entry.WeighBloom, Mass: 2}, entry.Weigh{What: entry.WeighBloom, Mass: 1.4, State: entry.Compacted}}
	s := Of("s", smelt(l, out...))
	if s.ID != "s" || s.Furnace != "Reed Hollow" || s.Charges != 2 || s.Charcoal.Value != 4 || s.Ore.Value != 10 || s.OreDry.Value != 8 || s.Bloom.Value != 1.4 || s.BloomLoose.Value != 2 || s.BloomCompacted.Value != 1.4 {
		t.Errorf("%+v", s)
	}
	if s.Mix != "reed" || !s.Teaches() || s.Unfinished() {
		t.Errorf("mix %q, teaches %t", s.Mix, s.Teaches())
	}
}

// Smelts without a mix teach nothing until one is named, nor does what was never
// smelted.
func TestWhatTeachesNothing(t *testing.T) {
	lots := func(a, b string) []entry.Lot {
		return []entry.Lot{{Name: "pond", What: entry.Ore, Mix: a}, {Name: "hill", What: entry.Ore, Mix: b}}
	}
	over := []entry.Event{ore("pond", 5), ore("hill", 5), entry.Extract{None: true}}
	named := append(over, entry.LotStored{Lot: entry.Lot{Name: "pond", What: entry.Ore, Mix: "reed"}}, entry.LotStored{Lot: entry.Lot{Name: "hill", What: entry.Ore, Mix: "reed"}})
	for _, c := range []struct {
		why     string
		light   entry.Light
		events  []entry.Event
		teaches bool
	}{
		{"one mix, and none came of it", entry.Light{Lots: lots("reed", "reed")}, over, true},
		{"no mix", entry.Light{Lots: lots("", "")}, over, false},
		{"a mix named afterwards", entry.Light{Lots: lots("", "")}, named, true},
		{"two mixes", entry.Light{Lots: lots("reed", "heath")}, over, false},
		{"no lots", entry.Light{}, []entry.Event{ore("", 5), entry.Extract{None: true}}, false},
		{"not over", entry.Light{Lots: lots("reed", "reed")}, over[:2], false},
		{"not weighed", entry.Light{Lots: lots("reed", "reed")}, append(over[:2:2], entry.Extract{}), false},
		{"will not be weighed", entry.Light{Lots: lots("reed", "reed")}, append(over[:2:2], entry.Extract{}, entry.Weigh{What: entry.WeighBloom, Closed: true}), false},
		{"only weighed compacted", entry.Light{Lots: lots("reed", "reed")}, append(over[:2:2], entry.Extract{}, entry.Weigh{What: entry.WeighBloom, Mass: 1.4, State: entry.Compacted}), true},
		{"invented", entry.Light{Invented: true, Lots: lots("reed", "reed")}, over, false},
		{"practice", entry.Light{Practice: true, Lots: lots("reed", "reed")}, over, false},
		{"a rehearsal", entry.Light{Rehearsal: true, Lots: lots("reed", "reed")}, over, false},
	} {
		if s := Of("s", smelt(c.light, c.events...)); s.Teaches() != c.teaches {
			t.Errorf("%s: %+v", c.why, s)
		}
	}
}

func TestNothingIsNoSmelt(t *testing.T) {
	if s := Of("s", nil); s.Teaches() || s.ID != "s" {
		t.Errorf("%+v", s)
	}
}

// Charges every ten minutes, one of which takes twenty, over two hours.
func TestSummaryOfADay(t *testing.T) {
	l := entry.Light{UID: "u"}
	lit := time.Date(2026, 5, 9, 8, 0, 0, 0, time.UTC)
	es := smelt(l)
	put := func(minute int, ev entry.Event) {
		es = append(es, entry.Entry{Version: 1, Stream: "s", Seq: uint64(len(es) + 1), Happened: lit.Add(time.Duration(minute) * time.Minute), Event: ev})
	}
	for _, minute := range []int{32, 42, 52, 62, 82, 92, 102} {
		put(minute, ore("pond", 1))
	}
	put(125, entry.Extract{})
	put(200, entry.Weigh{What: entry.WeighBloom, Mass: 1.4})
	s := Of("s", es)
	want := []HalfHour{{}, {Ore: 3}, {Ore: 2, Slow: true}, {Ore: 2}, {}}
	if diff := cmp.Diff(want, s.Day); diff != "" || s.Lasted != 125*time.Minute || s.FirstOre() != 1 {
		t.Errorf("lasted %s, first ore %d, day (-want +got)\n%s", s.Lasted, s.FirstOre(), diff)
	}
	if y, dry, ok := s.Yield(); !ok || !dry || math.Abs(y-1.4/float64(s.OreDry.Value)) > 1e-9 {
		t.Errorf("yield %g, dry %t, known %t", y, dry, ok)
	}
	s.OreDry.Known = false
	if y, dry, ok := s.Yield(); !ok || dry || math.Abs(y-0.2) > 1e-9 {
		t.Errorf("as charged: yield %g, dry %t, known %t", y, dry, ok)
	}
}
