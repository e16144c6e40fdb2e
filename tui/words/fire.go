package words

import modelwords "chargehand/model/words"

// What a smelt that is not at work says at the top.
const (
	PastInvented = "a moment to look at"
	PastImported = "imported, as it stood at its end"
	PastOver     = "over"
)

// The next hour.
const (
	HourOver   = "the smelt is over: there is no next hour"
	HourAsking = "looking at the next hour in plausible furnaces ..."
)

// Scoops names what so many are of that are counted into the open measure.
func Scoops(measure string, n float64) string {
	if n > 1 {
		measure = modelwords.Plural(measure)
	}
	return measure + " of ore"
}
