package lot

import (
	"chargehand/model/entry"
	"chargehand/physics"
)

// OfWeight is moisture as a share of the weight as it lies, which is what a scale shows and
// screens say.
func OfWeight(onDry entry.Share) float64 { return physics.OfWeight(float64(onDry)) }

// OnDry is moisture as entries keep it, on the dry mass.
func OnDry(ofWeight float64) entry.Share { return entry.Share(physics.OnDry(ofWeight)) }
