package tui_test

import (
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"

	"chargehand/tui"
	"chargehand/tui/desk"
	"chargehand/tui/theme"
)

// eachView goes through the screens to look at, by name.
func eachView(d *desk.Desk, see func(name string)) {
	see("fire")
	d.Press("o")
	see("list")
	d.Press("esc", "b", "7", "2")
	see("field")
	d.Press("esc", "h")
	see("help")
	d.Press("esc", "space")
	see("far")
	d.Press("space", "o", "d")
	see("decision")
	d.Press("esc", "o", "w", "a")
	see("caution")
	d.Press("esc", "v", "r", "pgdown", "pgdown", "pgdown", "pgdown", "pgdown", "pgdown", "pgdown", "pgdown", "pgdown", "pgdown", "w")
	see("replay")
	d.Press("esc", "v", "b", "up", "up")
	see("book")
	d.Press("v", "s")
	see("shelf")
	d.Press("v", "a")
	see("start")
	d.Press("r")
	see("light")
}

func TestEveryViewFillsTheWindow(t *testing.T) {
	for _, th := range []theme.Theme{{}, {Profile: theme.Fixed256, ASCII: true}} {
		eachView(desk.Smelting(t, th), func(string) {})
		d := desk.Smelting(t, th)
		check := func(name string) {
			t.Helper()
			for w := 40; w <= 250; w += 7 {
				for _, h := range []int{12, 13, 17, 24, 29, 36, 48, 60, 80} {
					m := d.M.Sized(w, h)
					fills(t, m.View(), name, w, h)
				}
			}
		}
		eachView(d, check)
	}
	// Smaller than the smallest: still exactly the window.
	d := desk.Sit(t)
	for _, size := range [][2]int{{1, 1}, {39, 12}, {40, 11}, {10, 40}, {250, 5}} {
		d.M = d.M.Sized(size[0], size[1])
		fills(t, d.M.View(), "too small", size[0], size[1])
	}
	if v := tui.New(tui.Config{Start: desk.Noon}).View(); v != "" {
		t.Errorf("before the first size the view is %q", v)
	}
}

func fills(t *testing.T, view, name string, w, h int) {
	t.Helper()
	lines := strings.Split(view, "\n")
	if len(lines) != h {
		t.Fatalf("%s at %dx%d has %d lines", name, w, h, len(lines))
	}
	for i, l := range lines {
		if n := ansi.StringWidth(l); n != w {
			t.Fatalf("%s at %dx%d: line %d is %d wide: %q", name, w, h, i+1, n, ansi.Strip(l))
		}
	}
}

func TestGolden(t *testing.T) {
	both := [][2]int{desk.Small, desk.Usual}
	desk.Golden(t, "screens", [][2]int{desk.Usual}, "v")
	desk.Golden(t, "settings", [][2]int{desk.Usual}, "v", "e")
	desk.Golden(t, "field", both, "b", "7", "2")
	desk.Golden(t, "locked", [][2]int{desk.Usual}, "o", "z", "i")
}

func TestVersionFollowsWhatIsShown(t *testing.T) {
	d := desk.Practising(t)
	before := d.M
	for _, msg := range []tea.Msg{
		tui.Pressed{Key: desk.KeyMsg("c"), At: desk.Later(d.At, time.Second)}, tui.Tick{At: desk.Later(d.At, time.Second)}, tea.WindowSizeMsg{Width: 90, Height: 30},
	} {
		m, _, _ := before.Update(msg)
		if m.View() != before.View() && m.Version() == before.Version() {
			t.Errorf("%T changed the screen but not its version", msg)
		}
	}
	if m, _, _ := before.Update(tea.MouseMsg{}); m.Version() != before.Version() {
		t.Error("a message for nobody draws a new frame")
	}
}

// The old model stays as it was: Update is pure.
func TestUpdateIsPure(t *testing.T) {
	d := desk.Smelting(t, theme.Theme{})
	d.Hold = true
	d.Press("c")
	old := d.M
	want := old.View()
	for _, k := range []string{"c", "s", "u", "m", "v", "up", "b", "7"} {
		m, _, _ := old.Update(tui.Pressed{Key: desk.KeyMsg(k), At: desk.Later(d.At, time.Second)})
		m, _, _ = m.Update(tui.Tick{At: desk.Later(d.At, 2*time.Second)})
		m, _, _ = m.Update(tui.Kept{Entries: d.Queue})
		_ = m.View()
		if old.View() != want {
			t.Fatalf("%s changed the model it was given", k)
		}
	}
	again, _, _ := old.Update(tui.Pressed{Key: desk.KeyMsg("c"), At: desk.Later(d.At, time.Second)})
	twice, _, _ := old.Update(tui.Pressed{Key: desk.KeyMsg("c"), At: desk.Later(d.At, time.Second)})
	if again.View() != twice.View() {
		t.Error("the same message on the same model gives two screens")
	}
}
