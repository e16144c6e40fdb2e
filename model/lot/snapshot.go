package lot

import (
	"chargehand/model/entry"
	"chargehand/model/house"
)

// Snapshot is a lot as a smelt takes it down (see house.Lot), with the iron that its assay
// comes to and whether it is raw: the solver of the shaft goes by that, as plan and account do.
func Snapshot(l house.Lot) entry.Lot {
	s := l.Snapshot()
	if iron := IronShare(l); l.Of() == entry.LotOre && iron.Basis == entry.BasisMeasured {
		s.Iron = entry.Some(entry.Share(iron.P50))
	}
	s.Raw = l.Of() == entry.LotOre && !l.Roasted()
	return s
}
