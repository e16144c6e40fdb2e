package words

import "strings"

// The far view and the lock.
const (
	DoFar  = "far view, and back"
	DoLock = "lock the keys"

	ShortFar = "far"

	NothingAtWork = "no smelt is at work: there is nothing to see from afar"
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
