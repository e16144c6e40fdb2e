package words

import (
	"chargehand/model/entry"
	modelwords "chargehand/model/words"
)

// Lots, and what goes in beside charcoal and ore.
const (
	FromLot  = "from another lot"
	AlsoIn   = "slag, fragments or flux too"
	LotOther = "another one"
)

// LotWhich asks for one of the lots of a material, LotName for the name of another.
func LotWhich(w entry.What) string { return "which lot of " + modelwords.Material(w) }

// LotName asks what another lot is called.
func LotName(w entry.What) string { return "name of the lot of " + modelwords.Material(w) }
