package tui_test

import (
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/entry"
	modelwords "chargehand/model/words"
	"chargehand/tui/desk"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// One key and one letter keep what happened; under an alarm and somebody unwell the
// answer is what to do first, and it stays until a key.
func TestAnIncidentSaysWhatToDoFirst(t *testing.T) {
	for letter, what := range map[string]entry.IncidentWhat{
		"a": entry.IncidentAlarm, "w": entry.IncidentUnwell, "b": entry.IncidentBurn, "o": entry.IncidentFire, "n": entry.IncidentNearMiss, "e": entry.IncidentOther,
	} {
		d := desk.Smelting(t, theme.Theme{})
		d.Press("o", "y", letter)
		if ev, ok := d.Last().(entry.Incident); !ok || ev.What != what {
			t.Fatalf("%s kept %#v", letter, d.Last())
		}
		if words.IncidentTitle(what) == "" {
			continue
		}
		why, care := words.IncidentFirst(what)
		d.Wait(5 * time.Minute)
		d.Shows(words.IncidentTitle(what))
		for _, size := range [][2]int{{80, 24}, {120, 36}, {200, 60}, {60, 20}} { // no word of it is ever cut
			d.Send(tea.WindowSizeMsg{Width: size[0], Height: size[1]})
			shown := strings.Join(strings.Fields(d.Picture()), " ")
			for _, said := range []string{care, why, modelwords.LocalRules} {
				if !strings.Contains(shown, said) {
					t.Errorf("%s at %d by %d: not all of %q in\n%s", letter, size[0], size[1], said, d.Picture())
				}
			}
		}
		n := len(d.M.Running().Reading().Charges)
		d.Press("c") // an act is done all the same
		if len(d.M.Running().Reading().Charges) != n+1 || d.M.Dialog() != nil {
			t.Errorf("%s: no charge under what to do first", letter)
		}
	}
	d := desk.Smelting(t, theme.Theme{})
	d.Press("o", "y", "w", "esc")
	kept := d.Count(entry.KindIncident)
	d.Press("o", "y", "r") // to be read again, and kept once
	d.Shows(words.IncidentTitle(entry.IncidentUnwell))
	if n := d.Count(entry.KindIncident); n != kept {
		t.Errorf("read again: %d incidents", n)
	}
	d.Press("esc", "v", "b", "a", "w", "p")
	d.Write("210")
	d.Press("enter")
	a, ok := d.Last().(entry.Amend)
	if ev, is := a.Event.(entry.Incident); !ok || !is || ev.What != entry.IncidentUnwell || ev.CO.Value != 210 {
		t.Errorf("with what the alarm showed: %#v", d.Last())
	}
}
