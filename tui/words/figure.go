package words

// The ratio against the charge that is shown as the next, and the head of a
// caution.
const (
	RatioAsNext = "as planned"
	RatioUnder  = "less ore than the next"
	RatioOver   = "more ore than the next"
	CautionMark = "take care"
)
