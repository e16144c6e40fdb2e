package lot

import (
	"chargehand/model/entry"
	"chargehand/model/house"
	"chargehand/model/ore"
)

// Assayed is what the assays of a house's lines say of the iron of its lots of ore, in the order in which
// they were written down: a smelt that was lit before one takes it from here. What the lots are else they
// are as the house stands.
func Assayed(lines []house.Line, stands func() house.State) (all []ore.Assayed) {
	for _, line := range lines {
		a, of, ok := assayIn(line.Event)
		if !ok || line.Struck() {
			continue
		}
		l, known := stands().Lot(string(of))
		if !known || l.Of() != entry.LotOre {
			continue
		}
		l.Assays = []entry.Assay{a}
		if iron := IronShare(l); iron.Basis == entry.BasisMeasured {
			all = append(all, ore.Assayed{At: line.Entry.Kept, Lot: l.ID, Iron: entry.Share(iron.P50)})
		}
	}
	return all
}

// assayIn is the assay of a lot that an event tells of.
func assayIn(ev entry.Event) (entry.Assay, entry.UID, bool) {
	switch ev := ev.(type) {
	case entry.Assay:
		return ev, ev.Lot, ev.Lot != ""
	case entry.LotStored:
		if ev.Lot.Assay != nil {
			return *ev.Lot.Assay, ev.Lot.ID(), true
		}
	}
	return entry.Assay{}, "", false
}
