package tui_test

import (
	"testing"
	"time"

	"chargehand/tui/desk"
	"chargehand/tui/theme"
)

// eachMoment goes through the moments of an invented day that Fire, Far and the
// cards have something of their own to show for.
func eachMoment(d *desk.Desk, see func(name string)) {
	d.Press("b", "o")
	d.Pass(2 * time.Minute)
	see("blast_lost")
	d.Press("space")
	see("blast_lost_far")
	d.Press("space", "a", "b", "n")
	d.Pass(time.Minute)
	d.Press("v", "e", "m", "y", "l", "y", "t", "y", "b", "y", "p", "y", "esc")
	see("pounds_and_inches")
	d.Press("v", "e", "m", "y", "l", "y", "t", "y", "b", "y", "b", "y", "p", "y", "p", "y", "b", "y", "esc")
	d.Press("c", "o", "z")
	see("locked")
	for _, c := range d.M.Locked() {
		d.Press(string(c))
	}
	d.Press("o", "l", "o", "b", "l", "m", "p", "o", "w", "r", "1", "2", "esc", "o", "w", "k", "J", "o", "enter")
	d.Pass(28 * time.Minute)
	d.Press("t")
	see("burn_down")
	d.Press("space")
	see("burn_down_far")
	d.Press("space", "o", "w", "r")
	see("ready")
	d.Press("esc", "o", "d")
	see("decision_late")
	d.Press("esc", "v", "r", "end", "left", "w", "left")
	see("replay_warning")
	d.Press("esc")
}

func TestEveryMomentFillsTheWindow(t *testing.T) {
	d := desk.Smelting(t, theme.Theme{Profile: theme.Fixed256, ASCII: true})
	eachMoment(d, func(name string) {
		for w := 40; w <= 250; w += 30 {
			for _, h := range []int{12, 17, 24, 36, 60, 80} {
				m := d.M.Sized(w, h)
				fills(t, m.View(), name, w, h)
			}
		}
	})
}
