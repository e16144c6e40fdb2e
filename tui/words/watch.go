package words

import "strconv"

// What keys do about warnings and cautions.
const (
	DoSeen     = "warning seen"
	DoAlight   = "top gas is alight"
	DoOut      = "top gas is out"
	DoCautions = "cautions, to read again"

	ShortSeen    = "seen"
	ShortLessOre = "less ore"
	ShortAlight  = "alight"
	ShortOut     = "out"
)

// Answers about warnings and cautions.
const (
	NothingToSee   = "no warning stands that nobody has seen"
	TopGasNotAsked = "nobody asks about the top gas now; l says what is seen"
	AnyKeyNext     = "a key shows the next, one that acts closes and acts, esc closes"
	CautionRead    = "caution put away"
	CautionsClosed = "cautions closed"
)

// SeenWarning says which warning was seen, and how the others are.
func SeenWarning(title string, more bool, key string) string {
	if more {
		return "seen: " + title + "; " + key + " shows the next"
	}
	return "seen: " + title
}

// CautionOf says which of the cautions is shown.
func CautionOf(n, of int) string {
	return "caution " + strconv.Itoa(n) + " of " + strconv.Itoa(of)
}

// HelpCautions heads the cautions in the help.
const HelpCautions = "cautions"
