package tui

import (
	"fmt"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/exp/golden"

	"chargehand/tui/theme"
)

// eachMoment goes through the moments of an invented day that Fire, Far and the
// cards have something of their own to show for.
func eachMoment(d *desk, see func(name string)) {
	d.press("b", "o")
	d.pass(2 * time.Minute)
	see("blast_lost")
	d.press("space")
	see("blast_lost_far")
	d.press("space", "a", "b", "n")
	d.pass(time.Minute)
	d.press("v", "e", "m", "l", "t", "b", "p", "esc")
	see("pounds_and_inches")
	d.press("v", "e", "m", "l", "t", "b", "b", "p", "p", "b", "esc")
	d.press("c", "o", "z")
	see("locked")
	for _, c := range d.m.locked.word {
		d.press(string(c))
	}
	d.press("o", "l", "y", "o", "b", "y", "l", "f", "p", "o", "y", "1", "2", "esc", "o", "j", "J", "o", "enter")
	d.pass(28 * time.Minute)
	d.press("t")
	see("burn_down")
	d.press("space")
	see("burn_down_far")
	d.press("space", "o", "y")
	see("ready")
	d.press("esc", "o", "d")
	see("decision_late")
	d.press("esc", "v", "r", "end", "left", "w", "left")
	see("replay_warning")
	d.press("esc")
}

func TestGoldenMoments(t *testing.T) {
	for _, size := range [][2]int{{80, 24}, {120, 36}, {200, 60}} {
		d := smelting(t, theme.Theme{})
		d.send(tea.WindowSizeMsg{Width: size[0], Height: size[1]})
		eachMoment(d, func(name string) {
			t.Run(fmt.Sprintf("%s_%dx%d", name, size[0], size[1]), func(t *testing.T) {
				golden.RequireEqual(t, []byte(d.m.View()))
			})
		})
	}
}

func TestEveryMomentFillsTheWindow(t *testing.T) {
	d := smelting(t, theme.Theme{Profile: theme.Fixed256, ASCII: true})
	eachMoment(d, func(name string) {
		for w := 40; w <= 250; w += 30 {
			for _, h := range []int{12, 17, 24, 36, 60, 80} {
				m := d.m
				m.w, m.h = w, h
				fills(t, m.View(), name, w, h)
			}
		}
	})
}
