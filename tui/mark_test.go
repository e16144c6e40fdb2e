package tui_test

import (
	"strings"
	"testing"

	"chargehand/tui/desk"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// Practice is marked on every screen that shows it, beside "this is the past".
func TestPracticeIsMarkedWhereverItIsShown(t *testing.T) {
	d := desk.Practising(t)
	first := func() string { l, _, _ := strings.Cut(d.Picture(), "\n"); return l }
	d.Press("c")
	for _, view := range []struct {
		keys []string
		says []string
	}{
		{nil, []string{"practice"}}, {[]string{"space"}, []string{"practice"}}, {[]string{"space", "v", "b"}, []string{"practice"}},
		{[]string{"home", "a"}, []string{"practice"}}, {[]string{"esc", "v", "r"}, []string{"practice", words.ThePast}},
	} {
		d.Press(view.keys...)
		for _, says := range view.says {
			if !strings.Contains(d.Picture(), says) {
				t.Errorf("after %v %q is not said: %s", view.keys, says, first())
			}
		}
	}
	d = desk.SitAt(t, desk.Memory{}, desk.Noon, theme.Theme{})
	d.Press("l", "home", "end", "enter", "v", "r")
	for _, says := range []string{"invented", words.ThePast} {
		if !strings.Contains(first(), says) {
			t.Errorf("Replay of the invented one does not say %q: %s", says, first())
		}
	}
}
