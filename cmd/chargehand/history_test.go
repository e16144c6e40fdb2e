package main

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
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

// A smelt that keeps what own smelts taught when it was lit is the same in a book without
// them, and in one with others: in its report too, to the byte.
func TestASmeltKeepsWhatItWasTaught(t *testing.T) {
	kg := func(v entry.Kilogram) entry.Maybe[entry.Kilogram] { return entry.Some(v) }
	lot := entry.Lot{Name: "pond", What: entry.Ore, Mix: "reed", Moisture: entry.Some(entry.Share(0))}
	keep := func(h place, n int, bloom entry.Kilogram, taught *entry.Taught) string {
		id := fmt.Sprintf("2026-05-0%d-reedhollow-a", n)
		h.keep(id, time.Date(2026, 5, n, 8, 0, 0, 0, time.UTC),
			entry.Light{UID: id, Furnace: entry.Furnace{Name: "Reed Hollow"}, Lots: []entry.Lot{lot}, Taught: taught},
			entry.Charge{Parts: entry.Parts{{What: entry.Charcoal, Mass: kg(2)}, {What: entry.Ore, Lot: "pond", Mass: kg(10)}}},
			entry.Extract{}, entry.Weigh{What: entry.WeighBloom, Mass: bloom})
		return id
	}
	first, second := newHouse(t), newHouse(t)
	keep(first, 1, 2.6, nil)
	keep(first, 2, 3, nil)
	taught := &entry.Taught{Mix: "reed", Yields: []entry.Number{0.26, 0.3}, Smelts: 2}
	id := keep(first, 4, 2.1, taught)
	keep(second, 3, 0.5, nil) // another crew's
	folder := filepath.Join(t.TempDir(), "package")
	first.run("export", id, "--package", folder)
	second.run("import", folder)
	report := func(h place) string {
		out := filepath.Join(t.TempDir(), "r.html")
		h.run("report", id, "--out", out)
		page, err := os.ReadFile(out)
		if err != nil {
			t.Fatal(err)
		}
		return string(page)
	}
	was, is := report(first), report(second)
	if was != is {
		t.Error("the report differs in another book")
	}
	want := learn.Yield([]float64{0.26, 0.3})
	for _, h := range []place{first, second} {
		s := h.state("--at", "+1m", id)
		if s.Own != (ownJSON{2, 2, 0}) || math.Abs(float64(*s.Figures["yield"].P50)-want.P50) > 1e-6 {
			t.Errorf("own %+v, yield %+v, want %+v", s.Own, s.Figures["yield"], want)
		}
	}
	bare := newHouse(t) // without the copy it would go by the house that it lies in
	keep(bare, 3, 0.5, nil)
	if s := bare.state("--at", "+1m", keep(bare, 4, 2.1, nil)); s.Own == (ownJSON{2, 2, 0}) {
		t.Error("the copy is not what is compared")
	}
}
