package words

import (
	"strconv"
	"time"

	modelwords "chargehand/model/words"
)

// The far view.
const (
	FarBetween   = "between"
	FarNow       = "ANY MOMENT"
	FarNoWarning = "no warning stands"
)

// FarSince stands over the minutes of the measure that burns.
func FarSince(due int) string { return "since the last, of about " + strconv.Itoa(due) + " min" }

// FarWentIn says when the last charge went in.
func FarWentIn(n int, at time.Time) string {
	return "charge " + strconv.Itoa(n) + " went in at " + at.Format(modelwords.Clock)
}
