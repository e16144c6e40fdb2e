package help_test

import (
	"testing"

	"chargehand/tui/desk"
)

// What a golden holds was looked at as a picture before it was kept.
func TestGoldenScreen(t *testing.T) {
	desk.Golden(t, "help", [][2]int{desk.Small, desk.Usual}, "h")
	desk.Golden(t, "help_page", [][2]int{desk.Usual}, "h", "pgdown")
}
