package replay_test

import (
	"testing"
	"time"

	"chargehand/tui/desk"
	"chargehand/tui/theme"
)

// What a golden holds was looked at as a picture before it was kept.
func TestGoldenScreen(t *testing.T) {
	both := [][2]int{desk.Small, desk.Usual}
	ten := []string{"v", "r"}
	for range 10 {
		ten = append(ten, "pgdown")
	}
	desk.Golden(t, "replay", both, append(ten, "w")...)
	desk.Golden(t, "replay_known", [][2]int{desk.Usual}, append(ten, "k")...)
	desk.GoldenIn(t, theme.Theme{}, "replay_warning", [][2]int{desk.Usual}, func(d *desk.Desk) {
		d.Press("b", "o")
		d.Pass(2 * time.Minute)
		d.Press("v", "r", "end", "left", "w", "left")
	})
}
