package rule_test

import (
	"testing"

	"chargehand/model/entry"
	"chargehand/model/rule"
	"chargehand/model/words"
)

// Each caution of the week comes at its deed, and at no other (wings, section 15).
func TestCautionsOfTheWeek(t *testing.T) {
	of := func(uid entry.UID) entry.Material { return entry.Material(uid) }
	damp := func(uid entry.UID) bool { return uid == "name:rained on" }
	deed := func(d entry.Does, out entry.Material) entry.Event {
		return entry.Deed{Does: d, Out: []entry.Amount{{Lot: entry.UID(out)}}}
	}
	said := map[string]bool{}
	for _, c := range []struct {
		ev   entry.Event
		want []string
	}{
		{deed(entry.Dug, entry.LotOre), []string{rule.Digging}},
		{deed(entry.Dug, entry.LotClay), []string{rule.Digging, rule.Dust}},
		{deed(entry.Crushed, entry.LotOre), []string{rule.Dust}},
		{deed(entry.Roasted, entry.LotOre), []string{rule.BurnGas}},
		{deed(entry.Burnt, entry.LotCharcoal), []string{rule.BurnGas, rule.FreshCharcoal}},
		{deed(entry.Washed, entry.LotOre), nil},
		{deed(entry.Bought, entry.LotCharcoal), nil},
		{deed(entry.Bought, entry.LotFlux), []string{rule.Quicklime}},
		{entry.LotStored{Lot: entry.Lot{Material: entry.LotFlux}}, []string{rule.Quicklime}},
		{entry.LotStored{Lot: entry.Lot{Material: entry.LotOre}}, nil},
		{entry.LotStored{Lot: entry.Lot{Name: "rained on", Material: entry.LotOre}}, []string{rule.DampOre}},
		{entry.Drying{}, []string{rule.DryingFires}},
		{entry.FurnaceBuilt{Why: entry.Built}, []string{rule.DryingFires}},
		{entry.FurnaceBuilt{Why: entry.Measured, Furnace: entry.Furnace{Blower: []entry.Blast{{}}}}, []string{rule.Generator}},
		{entry.Note{}, nil},
	} {
		var got []string
		for _, k := range rule.WeekCautions(c.ev, of, damp) {
			got, said[k.ID] = append(got, k.ID), true
		}
		if len(got) != len(c.want) {
			t.Errorf("%#v brings %v, want %v", c.ev, got, c.want)
			continue
		}
		for i := range got {
			if got[i] != c.want[i] {
				t.Errorf("%#v brings %v, want %v", c.ev, got, c.want)
			}
		}
	}
	for _, k := range rule.InWeek {
		if _, fact, care := words.Caution(k.ID); !said[k.ID] || k.Source == "" || fact == "" || care == "" {
			t.Errorf("%s: comes %v, source %q, says %q, %q", k.ID, said[k.ID], k.Source, fact, care)
		}
	}
}
