package figure

import (
	"math"
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/physics"
)

// smeltOf reads a smelt that was lit with a plan, or with none.
func smeltOf(plan *entry.PlanTaken, rows ...entry.Event) *Reading {
	es := smelt(entry.Furnace{}, rows...)
	light := es[0].Event.(entry.Light)
	light.Plan = plan
	es[0].Event = light
	return From(fold.Fold(es, fold.All, 6*time.Hour))
}

// Twenty kilograms of ore with the usual 6 % of water are 18.87 dry; published
// smelts that gave a bloom give 8 to 40 % of that, in the middle 20.
func TestBloomIsOfTheOreSoFarWithoutAPlan(t *testing.T) {
	var rows []entry.Event
	for range 10 {
		rows = append(rows, load(1.8, 2), wait(10))
	}
	r := smeltOf(nil, rows...)
	end, ore := r.Figure(BloomEnd), 20/1.06
	if math.Abs(end.P50-0.20*ore) > 0.01 || math.Abs(end.P10-0.08*ore) > 0.15 || math.Abs(end.P90-0.40*ore) > 0.15 || end.Basis != Guessed {
		t.Errorf("%+v of %.2f kg", end, ore)
	}
	if _, planned := r.OreToCome(); planned {
		t.Error("there is no plan")
	}
	if none := r.Figure(NoBloom); none.P10 != 10 || none.P90 != 80 || NoBloom.HasMiddle() {
		t.Errorf("chance of none %+v", none)
	}
	if r := smeltOf(nil, load(1.8, 0)); r.Figure(BloomEnd).Known() {
		t.Errorf("a bloom without ore: %+v", r.Figure(BloomEnd))
	}
}

// With a charging plan the bloom is of its ore, until that is in or nothing more
// comes; and what the plan knew of yield and failures holds.
func TestBloomIsOfTheOrePlanned(t *testing.T) {
	parts := entry.Parts{{What: entry.Charcoal, Mass: entry.Some(entry.Kilogram(1.8))}, {What: entry.Ore, Mass: entry.Some(entry.Kilogram(1.06))}}
	ramp := entry.Recipe{Next: parts, Ramp: []entry.RecipeStep{{Charges: 20, Parts: parts}, {Does: entry.StepBurnDown}}}
	r := smeltOf(nil, load(1.8, 1.06), wait(10), ramp, wait(5), load(1.8, 1.06))
	if ore, planned := r.OreToCome(); !planned || math.Abs(ore.P50-21) > 1e-9 {
		t.Errorf("%+v, planned %v: one kg was in, twenty are to come", ore, planned)
	}
	r = smeltOf(nil, load(1.8, 1.06), wait(10), ramp, wait(5), load(1.8, 1.06), entry.LastOre{})
	if ore, planned := r.OreToCome(); planned || math.Abs(ore.P50-2) > 1e-9 {
		t.Errorf("%+v, planned %v: the last ore is in", ore, planned)
	}
	number := func(v float64) entry.Maybe[entry.Number] { return entry.Some(entry.Number(v)) }
	plan := &entry.PlanTaken{Promised: map[string]entry.Estimate{
		"ore_planned": {P50: number(25), Unit: "kg"},
		"yield":       {P10: number(0.15), P50: number(0.24), P90: number(0.33), Unit: "1"},
		"no_bloom":    {P10: number(20), P50: number(20), P90: number(20), Unit: "%"},
	}}
	r = smeltOf(plan, load(1.8, 1.06))
	if end := r.Figure(BloomEnd); math.Abs(end.P50-6) > 1e-9 || math.Abs(end.P10-3.75) > 1e-9 || end.Basis != Estimated {
		t.Errorf("of 25 kg at 0.24: %+v", end)
	}
	if none := r.Figure(NoBloom); none.Band != physics.Exact(20) {
		t.Errorf("chance of none %+v", none)
	}
}
