package words

import (
	"strconv"
	"strings"
	"time"

	modelwords "chargehand/model/words"
)

// The far view and the lock.
const (
	DoFar  = "far view, and back"
	DoLock = "lock the keys"

	ShortFar  = "far"
	ShortNear = "near"

	NothingAtWork = "no smelt at work: nothing to see from afar"
	Locked        = "keys are locked"
	Unlocked      = "keys act again"
)

// LockWords unlock the keys: three letters, no two of which touch on a
// keyboard.
var LockWords = []string{"oat", "ivy", "tip"}

// Unlocks says how the keys act again.
func Unlocks(word string) string {
	return "type " + strings.Join(strings.Split(word, ""), " ") + " to unlock; every other key is held back"
}

// A wall clock that was set while the smelt ran.
const (
	DoClockWrong     = "the clock had been wrong"
	RightTime        = "what is the time"
	ClockRight       = "nothing is changed: that is what the clock says"
	TimesOfTheLog    = "its times are those of its log; o v l puts its day and light right"
	OverAndRestarted = "it is over, and the machine started anew since: its clock no longer tells of that day"
	BeforeLastStart  = "that is before what was kept before the machine last started: nothing is changed"
)

// RightTimeHint says what to type, and what stands.
func RightTimeHint(now time.Time) string {
	return "by a clock that is right; here it is " + now.Format(modelwords.Clock)
}

// RightAll asks once before every time of the smelt is put right.
func RightAll(was, lit time.Time) string {
	return "every time " + later(lit.Sub(was)) + ": lit " + lit.Format(modelwords.Clock) + ", not " + was.Format(modelwords.Clock)
}

// Righted says that they were.
func Righted(was, lit time.Time) string {
	return "every time of this smelt is " + later(lit.Sub(was)) + ": lit " + lit.Format(modelwords.Clock) + "; u in the book takes it back"
}

// later is how much later, or earlier.
func later(d time.Duration) string {
	way := " later"
	if d < 0 {
		way = " earlier"
	}
	d = d.Abs().Round(time.Second)
	switch {
	case d < 2*time.Minute:
		return strconv.Itoa(int(d.Seconds())) + " s" + way
	case d < 2*time.Hour:
		return strconv.Itoa(int(d.Round(time.Minute).Minutes())) + " min" + way
	case d < 48*time.Hour:
		return strconv.Itoa(int(d.Hours())) + " h " + strconv.Itoa(int(d.Round(time.Minute).Minutes())%60) + " min" + way
	}
	return strconv.Itoa(int(d.Round(24*time.Hour).Hours()/24)) + " days" + way
}

// ShiftAll asks once before all that was kept since the machine started is moved.
func ShiftAll(by time.Duration) string {
	return "move all since the machine last started " + modelwords.By(by)
}

// Shifted says that it was moved.
func Shifted(by time.Duration) string {
	return "all since the machine last started moved " + modelwords.By(by)
}
