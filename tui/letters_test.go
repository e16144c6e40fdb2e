package tui_test

import (
	"slices"
	"strings"
	"testing"

	"chargehand/tui/desk"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// The letters of all screens, those to come among them, are settled: no two are
// the same, the list shows those of the screens that there are, and of the others
// none is given away.
func TestLettersAreSettled(t *testing.T) {
	settled := map[string]screen.ID{
		"f": screen.Fire, "b": screen.Book, "r": screen.Replay, "s": screen.Shelf, "a": screen.Start, "h": screen.Help,
		"t": screen.Stores, "u": screen.Furnace, "p": screen.Plan, "c": screen.Account, "g": screen.Forge, "m": screen.Compare, "w": screen.Why, "i": screen.Logs,
		"l": "dark or light", "e": "settings", "o": "the running smelt", "q": "leave", "j": "remind me",
	}
	named := map[string]screen.ID{
		screen.LetterBackground: "dark or light", screen.LetterSettings: "settings", screen.LetterRunning: "the running smelt", screen.LetterLeave: "leave", screen.LetterRemind: "remind me",
	}
	for id, letter := range screen.Letters {
		if other, twice := named[letter]; twice {
			t.Errorf("%s is of %s and of %s", letter, id, other)
		}
		named[letter] = id
	}
	for letter, id := range settled {
		if named[letter] != id {
			t.Errorf("%s is of %q, not of %q", letter, named[letter], id)
		}
	}
	if len(named) != len(settled) {
		t.Errorf("%d letters, %d are settled", len(named), len(settled))
	}
	d := desk.Practising(t)
	d.Press("v")
	for _, o := range d.M.Dialog().(screen.Choice).Options {
		k := o.Keys()[0]
		id, isScreen := settled[k]
		if !isScreen {
			t.Errorf("%s (%s) has no settled letter", k, o.Help().Desc)
		}
		if screen.Letters[id] == k && !slices.Contains(d.M.Screens(), id) {
			t.Errorf("%s is kept for %s and leads to %q", k, id, o.Help().Desc)
		}
	}
}

// The letters that the help names for the two looks are those of the list.
func TestTheHelpNamesTheLettersOfTheLooks(t *testing.T) {
	d := desk.Practising(t)
	d.Press("l")
	of := map[string]string{}
	for _, o := range d.M.Dialog().(screen.Choice).Options {
		of[o.Help().Desc] = o.Keys()[0]
	}
	want := "l, then " + of["peep"] + " for the peep, " + of["flame"] + " for the flame"
	if !strings.Contains(strings.Join(words.HelpOfDay, "\n"), want) {
		t.Errorf("the help does not say %q", want)
	}
}
