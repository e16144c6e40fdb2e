package physics

// OfWeight gives the water as a share of the weight as it lies, from the water on the dry
// mass. Both are in use: scales show the first, sums need the second.
func OfWeight(onDry float64) float64 { return orNone(onDry / (1 + onDry)) }

// OnDry gives the water on the dry mass from its share of the weight as it lies, which is
// below 1.
func OnDry(ofWeight float64) float64 { return orNone(ofWeight / (1 - ofWeight)) }
