package words

// Beside the picture of the shaft.
const (
	ChargeWord   = "charge"
	CurveHead    = "how hot, by height; pale: 8 in 10"
	SlagAndBloom = "slag, bloom"
	HearthIs     = "hearth"
)
