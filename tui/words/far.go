package words

import (
	"strconv"
	"time"

	"chargehand/model/rule"
	modelwords "chargehand/model/words"
)

// The far view.
const (
	FarBetween   = "between"
	FarNow       = "ANY MOMENT"
	FarNoWarning = "no warning stands"
)

// FarSteps are the first two things to do about what must be acted on, in the fewest
// words: they are drawn in letters, over the whole of the remedy.
func FarSteps(id rule.ID) []string {
	switch id {
	case rule.BlastLost:
		return []string{"blower off tuyere", "blow it clear first"}
	case rule.TuyereBlocked:
		return []string{"rod the tuyere", "still dark: tap"}
	case rule.SlagAt:
		return []string{"tap or drop bowl", "then rod tuyere"}
	case rule.WallOpen:
		return []string{"off that side", "clay it shut"}
	}
	return nil
}

// FarSince stands over the minutes of the measure that burns.
func FarSince(due int) string { return "since the last, of about " + strconv.Itoa(due) + " min" }

// FarWentIn says when the last charge went in.
func FarWentIn(n int, at time.Time) string {
	return "charge " + strconv.Itoa(n) + " went in at " + at.Format(modelwords.Clock)
}
