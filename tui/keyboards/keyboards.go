// Package keyboards knows where keys lie on the keyboards that people have, for
// tests of what a finger that misses would do. Only tests import it.
package keyboards

import "strings"

// Keyboards are the keyboards, row by row, each key by what it types without shift. The rows
// are shifted against each other by the usual stagger, so a key touches the
// ones beside it, two above and two below. Letters and signs after the
// standard layouts for the United States (ANSI X3.154 / ISO/IEC 9995), Germany
// (DIN 2137) and France (the usual AZERTY), from memory, unverified. The tall
// ISO enter lies right of the home row and of the row above it.
var Keyboards = map[string][]string{
	"QWERTY": {"1 2 3 4 5 6 7 8 9 0 - = backspace", "q w e r t y u i o p [ ] \\", "a s d f g h j k l ; ' enter", "z x c v b n m , . /"},
	"QWERTZ": {"1 2 3 4 5 6 7 8 9 0 ß ´ backspace", "q w e r t z u i o p ü + enter", "a s d f g h j k l ö ä # enter", "y x c v b n m , . -"},
	"AZERTY": {"& é \" ' ( - è _ ç à ) = backspace", "a z e r t y u i o p ^ $ enter", "q s d f g h j k l m ù * enter", "w x c v b n , ; : !"},
}

// NumberPad touches its keys on all eight sides; + and enter are two keys tall
// and 0 two keys wide.
var NumberPad = []string{"num / * -", "7 8 9 +", "4 5 6 +", "1 2 3 enter", "0 0 . enter"}

// Stagger is how far each row stands right of the digits, in quarters of a key:
// half a key, a quarter more, half a key more (ISO/IEC 9995-1 keyboards, from
// memory, unverified).
var Stagger = []int{0, 2, 3, 5}

// Neighbours are the keys that touch each key of a keyboard: those whose edges
// come within half a key of each other in the row above, beside, or below.
func Neighbours(rows []string, shift []int) map[string][]string {
	type place struct {
		key      string
		row, at4 int // quarters of a key from the left
	}
	var places []place
	for r, row := range rows {
		for i, k := range strings.Fields(row) {
			at := 4 * i
			if shift != nil {
				at += shift[r]
			}
			places = append(places, place{k, r, at})
		}
	}
	touch := map[string][]string{}
	for _, a := range places {
		for _, b := range places {
			gap := a.at4 - b.at4
			if a.key != b.key && abs(a.row-b.row) <= 1 && abs(gap) <= 4+oneIf(a.row != b.row && shift != nil) {
				touch[a.key] = append(touch[a.key], b.key)
			}
		}
	}
	// Tab lies left of the second row and touches the first key of it and of the
	// rows above and below.
	if shift != nil {
		for _, row := range rows[:3] {
			k := strings.Fields(row)[0]
			touch[k], touch["tab"] = append(touch[k], "tab"), append(touch["tab"], k)
		}
	}
	// The space bar lies under the bottom row from x to m.
	if shift != nil {
		bottom := strings.Fields(rows[3])
		for _, k := range bottom[1:7] {
			touch[k] = append(touch[k], " ")
			touch[" "] = append(touch[" "], k)
		}
	}
	return touch
}

func abs(n int) int { return max(n, -n) }

func oneIf(b bool) int {
	if b {
		return 1
	}
	return 0
}
