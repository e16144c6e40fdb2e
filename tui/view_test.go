package tui

import (
	"fmt"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
	"github.com/charmbracelet/x/exp/golden"

	"chargehand/tui/theme"
)

// smelting is a desk in the middle of an invented smelt, keyed key by key.
func smelting(t *testing.T, th theme.Theme) *desk {
	t.Helper()
	d := sitAt(t, memory{}, noon, th)
	d.press("r", "up")
	d.write("MK")
	for range 9 {
		d.press("up")
	}
	d.write("Reed Hollow")
	for range 10 {
		d.press("down")
	}
	d.press("enter", "b")
	d.write("400")
	d.press("enter")
	d.wait(70 * time.Minute)
	d.press("f", "f", "f", "f")
	d.wait(15 * time.Minute)
	d.press("b")
	d.write("720")
	d.press("enter")
	for i := range 9 {
		if i == 3 || i == 6 {
			d.press("up")
		}
		d.press("c")
		d.wait(time.Duration(9+i%3) * time.Minute)
		switch i {
		case 2:
			d.press("l", "p", "w")
		case 4:
			d.press("t")
		case 5:
			d.press("g")
		case 6:
			d.press("r", "u")
		case 7:
			d.press("o", "e", "9", "enter", "p")
		}
	}
	d.press("f")
	d.fast(300*time.Millisecond, "s", "s", "s")
	d.wait(4 * time.Minute)
	return d
}

// eachView goes through the screens to look at, by name.
func eachView(d *desk, see func(name string)) {
	see("fire")
	d.press("o")
	see("list")
	d.press("esc", "b", "7", "2")
	see("field")
	d.press("esc", "h")
	see("help")
	d.press("esc", "space")
	see("far")
	d.press("space", "o", "d")
	see("decision")
	d.press("esc", "o", "x")
	see("caution")
	d.press("esc", "v", "r", "pgdown", "pgdown", "pgdown", "pgdown", "pgdown", "pgdown", "pgdown", "pgdown", "pgdown", "pgdown", "w")
	see("replay")
	d.press("esc", "v", "b", "up", "up")
	see("book")
	d.press("v", "s")
	see("shelf")
	d.press("v", "a")
	see("start")
	d.press("r", "y")
	see("light")
}

func TestEveryViewFillsTheWindow(t *testing.T) {
	for _, th := range []theme.Theme{{}, {Profile: theme.Fixed256, ASCII: true}} {
		eachView(smelting(t, th), func(string) {})
		d := smelting(t, th)
		check := func(name string) {
			t.Helper()
			for w := 40; w <= 250; w += 7 {
				for _, h := range []int{12, 13, 17, 24, 29, 36, 48, 60, 80} {
					m := d.m
					m.w, m.h = w, h
					fills(t, m.View(), name, w, h)
				}
			}
		}
		eachView(d, check)
	}
	// Smaller than the smallest: still exactly the window.
	d := sit(t)
	for _, size := range [][2]int{{1, 1}, {39, 12}, {40, 11}, {10, 40}, {250, 5}} {
		d.m.w, d.m.h = size[0], size[1]
		fills(t, d.m.View(), "too small", size[0], size[1])
	}
	if v := New(Config{Start: noon}).View(); v != "" {
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

func TestGoldenScreens(t *testing.T) {
	for _, profile := range []struct {
		name string
		th   theme.Theme
	}{{"mono", theme.Theme{}}, {"256", theme.Theme{Profile: theme.Fixed256}}} {
		for _, size := range [][2]int{{80, 24}, {120, 36}, {200, 60}} {
			d := smelting(t, profile.th)
			d.send(tea.WindowSizeMsg{Width: size[0], Height: size[1]})
			eachView(d, func(name string) {
				t.Run(fmt.Sprintf("%s_%dx%d_%s", name, size[0], size[1], profile.name), func(t *testing.T) {
					golden.RequireEqual(t, []byte(d.m.View()))
				})
			})
		}
	}
}

func TestVersionFollowsWhatIsShown(t *testing.T) {
	d := practising(t)
	before := d.m
	for _, msg := range []tea.Msg{
		Pressed{Key: keyMsg("c"), At: later(d.at, time.Second)}, Tick{At: later(d.at, time.Second)}, tea.WindowSizeMsg{Width: 90, Height: 30},
	} {
		m, _, _ := before.Update(msg)
		if m.View() != before.View() && m.version == before.version {
			t.Errorf("%T changed the screen but not its version", msg)
		}
	}
	if m, _, _ := before.Update(tea.MouseMsg{}); m.version != before.version {
		t.Error("a message for nobody draws a new frame")
	}
}

// The old model stays as it was: Update is pure.
func TestUpdateIsPure(t *testing.T) {
	d := smelting(t, theme.Theme{})
	d.hold = true
	d.press("c")
	old := d.m
	want := old.View()
	for _, k := range []string{"c", "s", "u", "m", "v", "up", "b", "7"} {
		m, _, _ := old.Update(Pressed{Key: keyMsg(k), At: later(d.at, time.Second)})
		m, _, _ = m.Update(Tick{At: later(d.at, 2*time.Second)})
		m, _, _ = m.Update(Kept{Entries: d.queue})
		_ = m.View()
		if old.View() != want {
			t.Fatalf("%s changed the model it was given", k)
		}
	}
	again, _, _ := old.Update(Pressed{Key: keyMsg("c"), At: later(d.at, time.Second)})
	twice, _, _ := old.Update(Pressed{Key: keyMsg("c"), At: later(d.at, time.Second)})
	if again.View() != twice.View() {
		t.Error("the same message on the same model gives two screens")
	}
}
