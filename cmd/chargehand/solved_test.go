package main

import (
	"strings"
	"testing"
	"time"

	"chargehand/model/entry"
)

// The log of 30 Nov 2016 as imported: state solves the furnace, in the windows
// that package solve holds it to; before the fill and after the end it says why
// it does not.
func TestStateSolvesTheFurnace(t *testing.T) {
	h := newHouse(t)
	id := h.imported("../../testdata/logs/03-norse-course-2016-11-30.csv", "--furnace", "Norse,bore=25,stack=50,rim=50,base=15")
	s := h.state("--at", "17:15", id)
	for key, window := range map[string][2]number{
		"hearth_temperature": {1135, 1450}, "air_factor": {0.99, 1.34}, "top_gas_co": {50, 100}, "slag_iron": {20, 62},
	} {
		f := s.Figures[key]
		if f.P50 == nil || *f.P50 < window[0] || *f.P50 > window[1] {
			t.Errorf("%s is %+v, want within %v", key, f, window)
		}
	}
	// 7.8 kg of bloom by the log, and 25.2 % of the ore: published yields, 6 to 53
	// %, are the band.
	if f := h.state(id).Figures["bloom_end"]; f.P10 == nil || *f.P10 > 7.8 || *f.P90 < 7.8 || f.Basis != "guessed" {
		t.Errorf("bloom_end is %+v, weighed 7.8 kg", f)
	}
	if len(s.Zones) < 3 || s.Zones[0].WallSide == nil || s.Zones[0].Basis != "estimated" || s.Lack != nil || s.Carbon == nil {
		t.Errorf("zones %+v, lack %v, carbon %v", s.Zones, s.Lack, s.Carbon)
	}
	early := h.state("--at", "11:00", id)
	if early.Figures["hearth_temperature"].P50 != nil || early.Lack == nil {
		t.Errorf("before the fill: %+v", early)
	}
	if said := h.run("state", "--at", "11:30", id); !strings.Contains(said, "needs the blast") {
		t.Errorf("filled, without a blast:\n%s", said)
	}
	if said := h.run("state", id); !strings.Contains(said, "the bloom is out") {
		t.Errorf("at the end:\n%s", said)
	}
}

// A smelt whose ore was assayed long after it was lit is worked out with that assay: state says what
// it says of one whose light knew it.
func TestStateTakesAnAssayThatCameLater(t *testing.T) {
	h := newHouse(t)
	lit := time.Date(2026, 5, 2, 9, 0, 0, 0, time.UTC)
	pond := entry.Lot{UID: "aa00000000000001", Name: "pond", Material: entry.LotOre, What: entry.Ore, Moisture: entry.Some(entry.Share(0))}
	smelt := func(id string, of entry.Lot) {
		events := []entry.Event{
			entry.Light{UID: id, Furnace: entry.Furnace{Bore: entry.Some(entry.Centimetre(25)), Stack: entry.Some(entry.Centimetre(50)), TuyereBase: entry.Some(entry.Centimetre(25))}, Lots: []entry.Lot{of}},
			entry.Fill{Parts: entry.Parts{{What: entry.Charcoal, Mass: entry.Some(entry.Kilogram(6))}}}, entry.Blast{Volume: entry.Some(entry.LitrePerMinute(600))},
		}
		for i := range 150 {
			if i%10 != 9 {
				events = append(events, entry.Note{Text: "."})
				continue
			}
			events = append(events, entry.Charge{Parts: entry.Parts{{What: entry.Charcoal, Mass: entry.Some(entry.Kilogram(1.8))}, {What: entry.Ore, Mass: entry.Some(entry.Kilogram(1.5)), Lot: string(of.UID)}}})
		}
		h.keep(id, lit, events...)
	}
	h.keep(entry.House, lit.Add(-time.Hour), entry.LotStored{Lot: pond})
	smelt("2026-05-02-reedhollow-a", pond)
	pond.Iron = entry.Some(entry.Share(0.30))
	smelt("2026-05-02-reedhollow-b", pond)
	slag := func(id string) figureJSON { return h.state("--at", "+150m", id).Figures["slag_iron"] }
	before, want := slag("2026-05-02-reedhollow-a"), slag("2026-05-02-reedhollow-b")
	if before.P50 == nil || want.P50 == nil || *before.P50 == *want.P50 {
		t.Fatalf("before the assay %+v, with it %+v", before, want)
	}
	h.keep(entry.House, lit.Add(100*24*time.Hour), entry.Assay{Lot: pond.UID, Basis: entry.AsDried, Parts: map[string]entry.Assayed{"Fe": {Percent: 30}}})
	if after := slag("2026-05-02-reedhollow-a"); after.P50 == nil || *after.P50 != *want.P50 || after.Basis != want.Basis {
		t.Errorf("after the assay %s, want %s", asText(after), asText(want))
	}
}
