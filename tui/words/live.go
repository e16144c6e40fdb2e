package words

import (
	"strings"
	"time"

	modelwords "chargehand/model/words"
)

// The far view and the lock.
const (
	DoFar  = "far view, and back"
	DoLock = "lock the keys"

	ShortFar = "far"

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
	DoClockWrong   = "the clock had been wrong"
	NoClockJump    = "the clock was not set while this smelt ran"
	NothingToShift = "nothing stands wrong: the machine has run since the fire was lit, and its own clock told all along"
	AlreadyShifted = "that was put right already; crossing it out in the book takes it back"
)

// ShiftAll asks once before all that was kept since the machine started is moved.
func ShiftAll(by time.Duration) string {
	return "move all since the machine last started " + modelwords.By(by)
}

// Shifted says that it was moved.
func Shifted(by time.Duration) string {
	return "all since the machine last started moved " + modelwords.By(by)
}
