package act

import (
	"testing"

	"chargehand/model/entry"
	"chargehand/model/paper"
	"chargehand/tui/screen"
)

// The letters of the paper log are those under which the same is entered late.
func TestPaperHasTheLettersOfTheScreen(t *testing.T) {
	for _, l := range paper.Letters {
		found := false
		for _, a := range lateActs {
			if a.key != l.Key {
				continue
			}
			found = true
			if l.Takes != paper.TakesNothing {
				continue // it asks for more first
			}
			var kept entry.Event
			a.ask(&screen.Shared{}, nil, func(ev entry.Event) screen.Effect { kept = ev; return nil })
			if kept == nil || kept.Kind() != l.Kind {
				t.Errorf("%s is %s on paper and %v on the screen", l.Key, l.Kind, kept)
			}
		}
		if !found {
			t.Errorf("%s is no letter of what is entered late", l.Key)
		}
	}
}
