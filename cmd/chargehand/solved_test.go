package main

import (
	"strings"
	"testing"
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
