package lot

import (
	"chargehand/model/entry"
	"chargehand/model/house"
)

// Help is what would firm up most what is known of a lot.
type Help string

// What can help.
const (
	HelpWeigh Help = "weigh" // how much there is, is not known
	HelpWater Help = "water" // its moisture is taken as usual
	HelpAssay Help = "assay" // its iron is assumed
	NoHelp    Help = ""
)

// Helps is what would help most.
func Helps(l house.Lot) Help {
	switch m := l.Of(); {
	case !l.Left.Known():
		return HelpWeigh
	case !l.Moisture.Known && (m == entry.LotOre || m == entry.LotCharcoal || m == entry.LotWood):
		return HelpWater
	case m == entry.LotOre && IronShare(l).Basis != entry.BasisMeasured:
		return HelpAssay
	}
	return NoHelp
}
