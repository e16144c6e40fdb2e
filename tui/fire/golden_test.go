package fire_test

import (
	"testing"
	"time"

	"chargehand/tui/desk"
	"chargehand/tui/theme"
)

// What a golden holds was looked at as a picture before it was kept.
func TestGoldenScreen(t *testing.T) {
	both := [][2]int{desk.Small, desk.Usual}
	usual := [][2]int{desk.Usual}
	desk.Golden(t, "fire", both)
	desk.GoldenIn(t, theme.Theme{Profile: theme.Fixed256}, "fire_256", [][2]int{desk.Large}, func(*desk.Desk) {})
	desk.Golden(t, "far", usual, "space")
	desk.Golden(t, "rare", both, "o")
	desk.Golden(t, "decision", usual, "o", "d")
	desk.Golden(t, "caution", usual, "o", "w", "a")
	lost := func(keys ...string) func(*desk.Desk) {
		return func(d *desk.Desk) {
			d.Press("b", "o")
			d.Pass(2 * time.Minute)
			d.Press(keys...)
		}
	}
	desk.GoldenIn(t, theme.Theme{}, "blast_lost", both, lost())
	desk.GoldenIn(t, theme.Theme{}, "blast_lost_far", usual, lost("space"))
	down := func(keys ...string) func(*desk.Desk) {
		return func(d *desk.Desk) {
			d.Press("o", "l", "o", "b", "l", "m", "p", "o", "w", "r", "1", "2", "esc", "o", "w", "k", "J", "o", "enter")
			d.Pass(28 * time.Minute)
			d.Press(append([]string{"t"}, keys...)...)
		}
	}
	desk.GoldenIn(t, theme.Theme{}, "burn_down", both, down())
	desk.GoldenIn(t, theme.Theme{}, "burn_down_far", usual, down("space"))
	desk.GoldenIn(t, theme.Theme{}, "ready", usual, down("o", "w", "r"))
	desk.GoldenIn(t, theme.Theme{}, "decision_late", usual, down("o", "d"))
	result := func(d *desk.Desk) {
		closed(d, "r")
		weighed(d, "4.1")
	}
	desk.GoldenIn(t, theme.Theme{}, "result", [][2]int{desk.Small, desk.Usual, desk.Large}, result)
	desk.GoldenIn(t, theme.Theme{}, "result_far", both, func(d *desk.Desk) {
		result(d)
		d.Press("space")
	})
	desk.Golden(t, "pounds_and_inches", usual, "v", "e", "m", "y", "l", "y", "t", "y", "b", "y", "p", "y", "esc")
}
