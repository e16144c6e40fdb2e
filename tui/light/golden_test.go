package light_test

import (
	"testing"

	"chargehand/tui/desk"
)

// What a golden holds was looked at as a picture before it was kept.
func TestGoldenScreen(t *testing.T) {
	desk.Golden(t, "light", [][2]int{desk.Small, desk.Usual, desk.Large}, "v", "a", "r", "up", "up")
}
