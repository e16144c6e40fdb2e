package tui_test

import (
	"strings"
	"testing"
	"time"

	"chargehand/tui/desk"
	"chargehand/tui/theme"
)

// The next hour is a way of looking: it keeps no act, any other key does what it does without it, and it goes by itself.
func TestTheNextHourTakesNoKeyAway(t *testing.T) {
	d := desk.Practising(t)
	d.Press("q")
	d.Shows("says nothing of this smelt") // there is no fire in it yet
	d = desk.Smelting(t, theme.Theme{})
	acts := len(d.Acts())
	d.Press("q")
	for _, text := range []string{"opinion of the next hour, from", "10 plausible furnaces", "as shown", "more blast", "worth acting on"} {
		d.Shows(text)
	}
	if n := len(d.Acts()); n != acts {
		t.Errorf("%d acts kept by looking", n-acts)
	}
	gone := func(after string) {
		t.Helper()
		if strings.Contains(d.Picture(), "opinion of the next hour, from") {
			t.Errorf("still there after %s", after)
		}
	}
	d.Press("c")
	gone("a charge")
	if n := len(d.Acts()); n != acts+1 {
		t.Errorf("%d acts after a charge", n-acts)
	}
	d.Press("q", "q")
	gone("the key again")
	d.Press("q", "esc")
	gone("the way back")
	d.Press("q")
	d.Wait(3 * time.Minute)
	gone("three minutes")
}
