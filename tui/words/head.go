package words

// Over the next charge.
const (
	BooksIt   = "books it"
	WasToNext = "it was, to the next"
)

// Figures that only the roomy screens have, and what is said beside them.
const (
	LineHearth    = "hearth"
	LineSlag      = "slag"
	LineIn        = "in"
	HearthLow     = "too cold for slag to run"
	HearthGood    = "hot enough"
	LineIron      = "iron"
	LineYield     = "yield"
	ReckonedHead  = "reckoned, a guess until weighed"
	TooLittleSlag = "too little of it yet to say how it runs"
	LevelUnknown  = "level not known"
	UnderTuyere   = "under tuyere"
)

// StripUsual stands behind the ticks of the strip.
const StripUsual = "usual"

// Marks of a smelt that counts for nothing, or is not of now.
const (
	TagPractice = "practice"
	TagInvented = "invented"
)

// About says of a weight that it is a guess, in few letters.
func About(weight string) string { return "about " + weight }
