package main

import (
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/model/learn"
	"chargehand/model/shelf"
	"chargehand/persist"
)

// Three smelts of the house on one ore mix, one of which gave no bloom, are what
// state foretells a fourth by: yields of 0.20 and 0.30 of the ore, and one in
// three without a bloom. The published band is what a smelt without a mix gets.
func TestStateLearnsFromTheHouse(t *testing.T) {
	h := newHouse(t)
	book, err := persist.Open(h.book(), persist.Options{Summarise: shelf.Of})
	if err != nil {
		t.Fatal(err)
	}
	smelt := func(n int, mix string, bloom entry.Kilogram, over bool) string {
		id := fmt.Sprintf("2026-05-0%d-reedhollow-a", n)
		kg := func(v entry.Kilogram) entry.Maybe[entry.Kilogram] { return entry.Some(v) }
		lot := entry.Lot{Name: "pond", What: entry.Ore, Mix: mix, Moisture: entry.Some(entry.Share(0))}
		events := []entry.Event{
			entry.Light{UID: id, Furnace: entry.Furnace{Name: "Reed Hollow"}, Lots: []entry.Lot{lot}},
			entry.Charge{Parts: entry.Parts{{What: entry.Charcoal, Mass: kg(2)}, {What: entry.Ore, Lot: "pond", Mass: kg(10)}}},
		}
		if over {
			events = append(events, entry.Extract{None: bloom == 0})
			if bloom > 0 {
				events = append(events, entry.Weigh{What: entry.WeighBloom, Mass: bloom})
			}
		}
		for i, ev := range events {
			book.Keep(entry.Entry{Stream: id, Happened: time.Date(2026, 5, n, 8, i, 0, 0, time.UTC), Event: ev})
		}
		return id
	}
	smelt(1, "reed", 2, true)
	smelt(2, "reed", 3, true)
	smelt(3, "reed", 0, true)
	own, other := smelt(4, "reed", 0, false), smelt(5, "", 0, false)
	if err := book.Close(); err != nil {
		t.Fatal(err)
	}
	s := h.state("--at", "+10m", own)
	want := learn.Yield([]float64{0.2, 0.3})
	if y := s.Figures["yield"]; s.Own != (ownJSON{2, 3, 1}) || y.Basis != "estimated" || math.Abs(float64(*y.P50)-want.P50) > 1e-6 || math.Abs(float64(*y.P90)-want.P90) > 1e-6 {
		t.Errorf("own %+v, yield %+v, want %+v", s.Own, y, want)
	}
	if f := s.Figures["no_bloom"]; math.Abs(float64(*f.P10)-100*2./13) > 0.01 || *f.P10 != *f.P90 {
		t.Errorf("no bloom %+v, want 2 in 13", f)
	}
	if said := h.run("state", "--at", "+10m", own); !strings.Contains(said, "with your 2 smelts on this ore mix") || !strings.Contains(said, "1 of your 3 gave none") {
		t.Error(said)
	}
	if s := h.state("--at", "+10m", other); s.Own.OnMix != 0 || *s.Figures["yield"].P90 != 0.4 {
		t.Errorf("without a mix: own %+v, yield %+v", s.Own, s.Figures["yield"])
	}
}
