package words

// AtTheWall stands over the temperatures of the shaft: whereof they are, and that
// they are known to fifty degrees only.
func AtTheWall(unit string) string { return "about " + unit + " at the wall" }

// Wall says it of a single one.
func Wall(temperature string) string { return "wall " + temperature }

// Beside the picture of the shaft.
const (
	ChargeWord   = "charge"
	CurveHead    = "how hot; pale: not sure"
	SlagAndBloom = "slag, bloom"
	HearthIs     = "hearth"
)
