package main

import (
	"encoding/json"
	"fmt"

	"chargehand/model/entry"
	"chargehand/model/house"
	"chargehand/model/lot"
	"chargehand/model/words"
	"chargehand/physics"
)

func storesCommand() command {
	return command{name: "stores", does: words.StoresDoes, setUp: wing{where: entry.OnStores, examples: storesExamples}.setUp(func(w world, c common) error {
		h, err := theHouse(w, c)
		if err != nil {
			return err
		}
		if c.json {
			all := []lotJSON{}
			for _, l := range h.Lots {
				all = append(all, lotOf(l))
			}
			return json.NewEncoder(w.out).Encode(map[string]any{"lots": all})
		}
		var rows []words.StoresRow
		for _, l := range h.Lots {
			rows = append(rows, words.StoresRow{Lot: l, Iron: lot.Iron(l)})
		}
		_, err = fmt.Fprint(w.out, words.Stores(rows))
		return err
	})}
}

// storesExamples are invented.
func storesExamples() []entry.Event {
	ore, roasted := entry.NameUID("bog ore, as dug"), entry.NameUID("bog ore, roasted")
	return []entry.Event{
		entry.MeasureNamed{Measure: entry.Measure{Name: "barrow", What: entry.Ore, Mass: entry.Some(entry.Kilogram(52))}},
		entry.LotStored{Lot: entry.Lot{Name: "bog ore, as dug", Material: entry.LotOre, What: entry.Ore, Moisture: entry.Some(entry.Share(0.3)), Origin: "invented: the reed meadow"}},
		entry.LotStored{Lot: entry.Lot{Name: "bog ore, roasted", Material: entry.LotOre, What: entry.Ore, Moisture: entry.Some(entry.Share(0.02)), Mix: "reed meadow"}},
		entry.Deed{Does: entry.Dug, Out: []entry.Amount{{Lot: ore, Measure: "barrow", Count: entry.Some(entry.Count(1.5))}}},
		entry.Deed{Does: entry.Roasted, In: []entry.Amount{{Lot: ore, Mass: entry.Some(entry.Kilogram(60))}}, Out: []entry.Amount{{Lot: roasted, Mass: entry.Some(entry.Kilogram(36))}}},
		entry.Assay{Lot: roasted, Basis: entry.AsRoasted, Parts: map[string]entry.Assayed{"Fe2O3": {Percent: 74}, "SiO2": {Percent: 14}}},
		entry.SampleResult{Sample: "7-S3", Assay: entry.Assay{Parts: map[string]entry.Assayed{"FeO": {Percent: 52}, "SiO2": {Percent: 27}}}},
	}
}

// lotJSON is a lot as JSON has it. Unknown is null.
type lotJSON struct {
	UID      string        `json:"uid"`
	Name     string        `json:"name"`
	Material string        `json:"material"`
	Left     *quantityJSON `json:"left"` // as it lies
	Dry      *quantityJSON `json:"dry"`
	Iron     *quantityJSON `json:"iron"` // kg of iron in what is left, by its last assay
	Mix      string        `json:"mix"`
	Short    *number       `json:"below_nothing_kg,omitempty"`
	AtLeast  bool          `json:"at_least,omitempty"` // an unknown amount came on top
	AtMost   bool          `json:"at_most,omitempty"`  // an unknown amount was taken from it
}

func lotOf(l house.Lot) lotJSON {
	j := lotJSON{UID: string(l.ID), Name: l.Name, Material: string(l.Of()), Mix: l.Mix, AtLeast: l.Left.More, AtMost: l.Left.Less}
	if kg, short := l.Short(); short {
		j.Short = some(kg)
	}
	dry := quantityJSON{Unit: "kg", Basis: string(entry.BasisMeasured)}
	wet := dry
	if l.Left.Known() {
		b := physics.Normal(l.Left.Kg, l.Left.SD)
		dry.P10, dry.P50, dry.P90 = some(b.P10), some(b.P50), some(b.P90)
		wet.P10, wet.P50, wet.P90 = some(l.Weight(b.P10)), some(l.Weight(b.P50)), some(l.Weight(b.P90))
	} else {
		dry.Basis, wet.Basis = string(entry.BasisUnknown), string(entry.BasisUnknown)
	}
	j.Dry, j.Left = &dry, &wet
	if iron := lot.Iron(l); iron.P50 > 0 {
		j.Iron = &quantityJSON{some(iron.P10), some(iron.P50), some(iron.P90), "kg", string(entry.BasisEstimated)}
	}
	return j
}
