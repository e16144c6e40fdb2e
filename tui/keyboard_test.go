package tui

import (
	"slices"
	"strings"
	"testing"

	"github.com/charmbracelet/bubbles/key"
)

// The keyboards, row by row, each key by what it types without shift. The rows
// are shifted against each other by the usual stagger, so a key touches the
// ones beside it, two above and two below. Letters and signs after the
// standard layouts for the United States (ANSI X3.154 / ISO/IEC 9995), Germany
// (DIN 2137) and France (the usual AZERTY), from memory, unverified. The tall
// ISO enter lies right of the home row and of the row above it.
var keyboards = map[string][]string{
	"QWERTY": {"1 2 3 4 5 6 7 8 9 0 - = backspace", "q w e r t y u i o p [ ] \\", "a s d f g h j k l ; ' enter", "z x c v b n m , . /"},
	"QWERTZ": {"1 2 3 4 5 6 7 8 9 0 ß ´ backspace", "q w e r t z u i o p ü + enter", "a s d f g h j k l ö ä # enter", "y x c v b n m , . -"},
	"AZERTY": {"& é \" ' ( - è _ ç à ) = backspace", "a z e r t y u i o p ^ $ enter", "q s d f g h j k l m ù * enter", "w x c v b n , ; : !"},
}

// numberPad touches its keys on all eight sides; + and enter are two keys tall
// and 0 two keys wide.
var numberPad = []string{"num / * -", "7 8 9 +", "4 5 6 +", "1 2 3 enter", "0 0 . enter"}

// stagger is how far each row stands right of the digits, in quarters of a key:
// half a key, a quarter more, half a key more (ISO/IEC 9995-1 keyboards, from
// memory, unverified).
var stagger = []int{0, 2, 3, 5}

// neighbours are the keys that touch each key of a keyboard: those whose edges
// come within half a key of each other in the row above, beside, or below.
func neighbours(rows []string, shift []int) map[string][]string {
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
			if a.key != b.key && abs(a.row-b.row) <= 1 && abs(gap) <= 4+boolInt(a.row != b.row && shift != nil) {
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

func boolInt(b bool) int {
	if b {
		return 1
	}
	return 0
}

// chargeKeys put something into the furnace; grave acts strike or change phase.
func chargeKeys() []key.Binding {
	return []key.Binding{fireMap.Charge, fireMap.Scoop, fireMap.Half, fireMap.Charcoal}
}

func TestNeighbourTables(t *testing.T) {
	q := neighbours(keyboards["QWERTY"], stagger)
	for _, want := range []struct{ key, others string }{
		// What anybody sees on a keyboard.
		{"c", "x v d f"}, {"s", "a d w e z x"}, {"f", "d g r t c v"}, {"d", "s f e r x c"}, {"0", "9 - o p"},
	} {
		for _, o := range strings.Fields(want.others) {
			if !slices.Contains(q[want.key], o) {
				t.Errorf("%s should touch %s: it touches %v", want.key, o, q[want.key])
			}
		}
		if slices.Contains(q[want.key], "u") {
			t.Errorf("%s does not touch u", want.key)
		}
	}
	pad := neighbours(numberPad, nil)
	for _, o := range strings.Fields("1 2 3 . enter") {
		if !slices.Contains(append(pad["0"], pad["."]...), o) {
			t.Errorf("the lower row of the pad should touch %s", o)
		}
	}
}

func TestNothingGraveBesideTheChargeKeys(t *testing.T) {
	boards := map[string]map[string][]string{"number pad": neighbours(numberPad, nil)}
	for name, rows := range keyboards {
		boards[name] = neighbours(rows, stagger)
	}
	graveKeys := fireMap.CrossOut.Keys()
	for name, touch := range boards {
		for _, b := range chargeKeys() {
			for _, k := range b.Keys() {
				for _, g := range graveKeys {
					if k == g || slices.Contains(touch[k], g) {
						t.Errorf("%s: %s (%s) lies beside %s, which crosses out", name, k, b.Help().Desc, g)
					}
				}
			}
		}
	}
}

// A finger that misses the key of the chemistry, which is a way of looking, does
// nothing that cannot be crossed out: no crossing out, no change of phase.
func TestNothingGraveBesideTheChemistryKey(t *testing.T) {
	for name, rows := range keyboards {
		touch := neighbours(rows, stagger)
		for _, k := range fireMap.Chemistry.Keys() {
			if len(touch[k]) == 0 {
				t.Fatalf("%s has no %s", name, k)
			}
			for _, g := range append(fireMap.CrossOut.Keys(), fireMap.Rare.Keys()...) {
				if slices.Contains(touch[k], g) {
					t.Errorf("%s: %s lies beside %s", name, k, g)
				}
			}
		}
	}
}

// Within the list of rare acts the letters that change phase keep away from the
// charge letters, which a person keys by habit; and each asks once.
func TestPhaseLettersKeepAway(t *testing.T) {
	letters := []string{"c", "s", "d", "f"}
	for _, o := range otherOptions() {
		st := o.then(shared{})
		c, isChoice := st.ask.(choice)
		if !isChoice || !c.question {
			continue
		}
		for name, rows := range keyboards {
			touch := neighbours(rows, stagger)
			for _, k := range letters {
				if l := o.Keys()[0]; l == k || slices.Contains(touch[k], l) {
					t.Errorf("%s: %s (%s) changes phase and lies beside %s", name, l, o.Help().Desc, k)
				}
			}
		}
	}
}

// The three ways of the decision card lie apart, and those of them that change
// phase lie apart from the charge keys.
func TestDecisionKeysLieApart(t *testing.T) {
	graver := []string{decideKeys.Extract, decideKeys.GiveUp}
	all := append(graver, decideKeys.Wait)
	for name, rows := range keyboards {
		touch := neighbours(rows, stagger)
		for _, a := range all {
			for _, b := range all {
				if slices.Contains(touch[a], b) {
					t.Errorf("%s: %s and %s touch", name, a, b)
				}
			}
		}
		for _, charge := range chargeKeys() {
			k := charge.Keys()[0] // the letter: that a pad's digit lies elsewhere on a keyboard misleads no hand
			for _, g := range graver {
				if slices.Contains(touch[k], g) {
					t.Errorf("%s: %s lies beside %s, which charges", name, g, k)
				}
			}
		}
	}
}

// No bare key at the fire changes phase: that takes the list and a yes.
func TestNoBareKeyChangesPhase(t *testing.T) {
	for _, b := range fireMap.all() {
		for _, k := range b.Keys() {
			d := practising(t)
			d.press("n", "x", "enter") // a last act for the keys that speak of one
			before := d.m.running.Reading().Phase
			d.press(k)
			if now := d.m.running.Reading().Phase; now != before {
				t.Errorf("%s (%s) alone changed the phase from %s to %s", k, b.Help().Desc, before, now)
			}
		}
	}
}
