package desk

import (
	"fmt"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/exp/golden"

	"chargehand/tui/theme"
)

// Sizes of windows that goldens are kept of.
var (
	Small = [2]int{80, 24}
	Usual = [2]int{120, 36}
	Large = [2]int{200, 60}
)

// Golden holds what is shown after some keys, in the middle of an invented smelt,
// against what was looked at as a picture before it was kept.
func Golden(t *testing.T, name string, sizes [][2]int, keys ...string) {
	t.Helper()
	GoldenIn(t, theme.Theme{}, name, sizes, func(d *Desk) { d.Press(keys...) })
}

// GoldenIn is the same in a theme, after whatever is done at the desk.
func GoldenIn(t *testing.T, th theme.Theme, name string, sizes [][2]int, does func(*Desk)) {
	t.Helper()
	for _, size := range sizes {
		d := Smelting(t, th)
		d.Send(tea.WindowSizeMsg{Width: size[0], Height: size[1]})
		does(d)
		t.Run(fmt.Sprintf("%s_%dx%d", name, size[0], size[1]), func(t *testing.T) {
			golden.RequireEqual(t, []byte(d.M.View()))
		})
	}
}
