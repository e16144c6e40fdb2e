package fire

import (
	"slices"
	"testing"

	"github.com/charmbracelet/bubbles/key"

	"chargehand/tui/keyboards"
	"chargehand/tui/words"
)

// chargeKeys put something into the furnace; grave acts strike or change phase.
func chargeKeys() []key.Binding {
	return []key.Binding{Map.Charge, Map.Scoop, Map.Half, Map.Charcoal}
}

func TestNothingGraveBesideTheChargeKeys(t *testing.T) {
	boards := map[string]map[string][]string{"number pad": keyboards.Neighbours(keyboards.NumberPad, nil)}
	for name, rows := range keyboards.Keyboards {
		boards[name] = keyboards.Neighbours(rows, keyboards.Stagger)
	}
	graveKeys := Map.CrossOut.Keys()
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
	for name, rows := range keyboards.Keyboards {
		touch := keyboards.Neighbours(rows, keyboards.Stagger)
		for _, k := range Map.Chemistry.Keys() {
			if len(touch[k]) == 0 {
				t.Fatalf("%s has no %s", name, k)
			}
			for _, g := range append(Map.CrossOut.Keys(), Map.Rare.Keys()...) {
				if slices.Contains(touch[k], g) {
					t.Errorf("%s: %s lies beside %s", name, k, g)
				}
			}
		}
	}
}

// Within the list of rare acts the letters that change phase keep away from the
// charge letters, which a person keys by habit.
func TestPhaseLettersKeepAway(t *testing.T) {
	letters := []string{"c", "s", "d", "f"}
	phases := []string{words.DoPreheat, words.DoFilling, words.DoMainBurn, words.DoHoldOre, words.DoOreAgain, words.DoLastOre, words.DoBurnDown, words.DoClose}
	for _, o := range otherOptions() {
		if !slices.Contains(phases, o.Help().Desc) {
			continue
		}
		for name, rows := range keyboards.Keyboards {
			touch := keyboards.Neighbours(rows, keyboards.Stagger)
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
	graver := []string{decideKeys.extract, decideKeys.giveUp}
	all := append(graver, decideKeys.wait)
	for name, rows := range keyboards.Keyboards {
		touch := keyboards.Neighbours(rows, keyboards.Stagger)
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
