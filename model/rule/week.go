package rule

import (
	"slices"

	"chargehand/model/entry"
)

// The cautions of the week before, each at its deed.
const (
	Digging       = "digging"
	Dust          = "dust"
	BurnGas       = "burns and roasts"
	FreshCharcoal = "fresh charcoal"
	Quicklime     = "lime"
	DryingFires   = "drying"
	Generator     = "generator and gas"
	DampOre       = "damp ore"
)

// InWeek is every caution of the week, in the order of the work. They have no moment of a
// smelt: a deed brings each.
var InWeek = []Caution{
	{ID: Digging, Source: common},
	{ID: Dust, Source: "published: OSHA 29 CFR 1926.1153 (2016), respirable crystalline silica 0.05 mg/m3 over 8 h"},
	{ID: BurnGas, Source: common},
	{ID: FreshCharcoal, Source: common},
	{ID: Quicklime, Source: common},
	{ID: DryingFires, Source: "published: Markewitz, Wareham Forge, smelts of 2004 and 2017 lost to walls too wet"},
	{ID: Generator, Source: common},
	{ID: DampOre, Source: common},
}

// WeekCautions are the cautions that an event of the house brings; of tells what a lot is
// of, and damp whether it is ore ready to be charged that got wet.
func WeekCautions(ev entry.Event, of func(entry.UID) entry.Material, damp func(entry.UID) bool) []Caution {
	var ids []string
	switch ev := ev.(type) {
	case entry.Deed:
		ids = ofDeed(ev, of)
	case entry.LotStored:
		if ev.Lot.Material == entry.LotFlux {
			ids = []string{Quicklime}
		}
		if damp(ev.Lot.ID()) {
			ids = append(ids, DampOre)
		}
	case entry.Drying:
		ids = []string{DryingFires}
	case entry.FurnaceBuilt:
		if ev.Why == entry.Built {
			ids = append(ids, DryingFires)
		}
		if len(ev.Furnace.Blower) > 0 {
			ids = append(ids, Generator)
		}
	}
	var cs []Caution
	for _, c := range InWeek {
		if slices.Contains(ids, c.ID) {
			cs = append(cs, c)
		}
	}
	return cs
}

func ofDeed(d entry.Deed, of func(entry.UID) entry.Material) (ids []string) {
	holds := func(m entry.Material) bool {
		in := func(a entry.Amount) bool { return of(a.Lot) == m }
		return slices.ContainsFunc(d.In, in) || slices.ContainsFunc(d.Out, in)
	}
	switch d.Does {
	case entry.Dug:
		ids = append(ids, Digging)
	case entry.Crushed, entry.Sieved, entry.Broken:
		ids = append(ids, Dust)
	case entry.Roasted:
		ids = append(ids, BurnGas)
	case entry.Burnt:
		ids = append(ids, BurnGas, FreshCharcoal)
	}
	if holds(entry.LotClay) && !slices.Contains(ids, Dust) {
		ids = append(ids, Dust)
	}
	if holds(entry.LotFlux) {
		ids = append(ids, Quicklime)
	}
	return ids
}
