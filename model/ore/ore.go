// Package ore says how much iron is in bog ore that nobody assayed: by whether it was roasted
// and what it shows. Stores and account take it from here, so that a lot has one iron.
package ore

import (
	"chargehand/model/entry"
	"chargehand/physics"
)

// Iron of ore that was not assayed, as shares of its dry mass: raw 25 to 50 %, roasted 35
// to 60 % with a middle of 48 (published bog ores, as the design of this house takes them).
var (
	Raw     = physics.Band{P10: 0.25, P50: 0.37, P90: 0.50}
	Roasted = physics.Band{P10: 0.35, P50: 0.48, P90: 0.60}
)

// Iron is the iron to be taken for ore that was not assayed, as a share of its dry mass: what
// is usual of raw or of roasted ore, moved by its signs.
func Iron(roasted bool, signs []entry.OreSign) physics.Band {
	if roasted {
		return bySigns(Roasted, signs)
	}
	return bySigns(Raw, signs)
}
