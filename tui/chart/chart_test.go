package chart

import (
	"flag"
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/charmbracelet/x/ansi"

	"chargehand/tui/cell"
	"chargehand/tui/theme"
)

var themes = map[string]theme.Theme{
	"true": {Profile: theme.True}, "light": {Profile: theme.True, Light: true}, "256": {Profile: theme.Fixed256},
	"16": {Profile: theme.Base16}, "none": {}, "ascii": {ASCII: true},
}

// The strip and the day of these tests are invented.
func inventedStrip() Strip {
	s := Strip{Most: 15, Ore: 2, Usual: 11, Ahead: 6, Minutes: "minutes", Charge: "charge", OreWord: "ore", OreMost: "2 kg", NowWord: "now", UsualWord: "usual"}
	for n := 1; n <= 24; n++ {
		m := 8 + float64(n*7%5)
		s.Bars = append(s.Bars, Bar{Number: n, Minutes: m, Ore: min(0.5*float64(n/5), 2), Slow: n > 22})
	}
	s.Bars = append(s.Bars, Bar{Number: 25, Minutes: 8.7, Now: true})
	return s
}

func inventedDay() Day {
	d := Day{Lit: time.Date(2026, 6, 14, 7, 30, 0, 0, time.UTC), Span: 9 * time.Hour, Now: 6*time.Hour + 6*time.Minute,
		Phases:   []Phase{{0, "wood fire"}, {100 * time.Minute, "fill"}, {3 * time.Hour, "first ore"}, {280 * time.Minute, "full ore"}, {460 * time.Minute, "last ore"}, {525 * time.Minute, "pull"}},
		Taps:     []time.Duration{5 * time.Hour, 7 * time.Hour},
		Warnings: []Alarm{{At: 4 * time.Hour}, {At: 5*time.Hour + 40*time.Minute, Act: true}, {At: time.Hour, Note: true}}}
	for m := 15; m < 530; m++ {
		d.Hearth = append(d.Hearth, Heat{time.Duration(m) * time.Minute, min(300+4*float64(m), 1300)})
	}
	for m := 130; m < 520; m += 13 {
		d.Charges = append(d.Charges, Charge{time.Duration(m) * time.Minute, m > 180})
	}
	return d
}

func painted(th theme.Theme) cell.Grid {
	g := th.Grid(120, 26)
	g.Fill(g.Bounds(), ' ', th.Style(theme.Text))
	for i, r := range []Ranged{
		{From: 0.5, To: 1.5, Low: "0.5", High: "1.5", Good: true, GoodFrom: 0.9, Until: 1.1, At: 1.0},
		{From: 5, To: 11, Low: "5", High: "11", Good: true, GoodFrom: 9, Until: 11, At: 8.1, Outside: true},
		{From: 0, To: 20, Low: "0", High: "20 min", Good: true, GoodFrom: 11, Until: 15, At: 25},
	} {
		r.Draw(g, th, 20, 1+i, 9)
	}
	Minutes{Since: 9, Early: 11, Due: 14, Late: 16}.Draw(g, th, 60, 0, 60, 3)
	Spark(g, th, 2, 5, []Part{{}, {Ore: 0.3}, {Ore: 0.7, Slow: true}, {Ore: 1}, {None: true}, {}})
	inventedStrip().Draw(g.Sub(cell.Rect{X: 1, Y: 7, W: 80, H: 6}), th)
	inventedDay().Draw(g.Sub(cell.Rect{X: 0, Y: 14, W: 120, H: DayRows}), th)
	inventedDay().Draw(g.Sub(cell.Rect{X: 0, Y: 21, W: 80, H: GroundRows}), th)
	return g
}

var show = flag.String("show", "", "print the charts in a theme: true, light, 256, 16, none, ascii")

// TestShow prints them to look at:
//
//	go test ./tui/chart -run TestShow -v -show true
func TestShow(t *testing.T) {
	if *show == "" {
		t.Skip("a way to look at them, asked for with -show")
	}
	fmt.Print(painted(themes[*show]).Encode(themes[*show].Palette()))
}

func TestChartsKeepTheirPlace(t *testing.T) {
	for name, th := range themes {
		for y, row := range strings.Split(painted(th).String(), "\n") {
			if ansi.StringWidth(row) != 120 {
				t.Errorf("%s: row %d is %d wide", name, y, ansi.StringWidth(row))
			}
			for _, c := range row {
				if th.ASCII && c > 0x7e {
					t.Errorf("%s: %q in row %d", name, c, y)
				}
			}
		}
	}
}

// A figure stands where it is between the ends, on the end when it is beyond, and
// outside its band has another shape.
func TestFigureInItsRange(t *testing.T) {
	g := cell.New(30, 1, false)
	r := Ranged{From: 0, To: 10, Low: "0", High: "10", Good: true, GoodFrom: 4, Until: 6, At: 5}
	r.Draw(g, theme.Theme{}, 5, 0, 11)
	if got := strings.TrimSpace(g.String()); got != "0 ────━●━──── 10" {
		t.Errorf("got %q", got)
	}
	r.At, r.Outside = 99, true
	r.Draw(g, theme.Theme{}, 5, 0, 11)
	if got := strings.TrimSpace(g.String()); got != "0 ────━━━───◆ 10" {
		t.Errorf("got %q", got)
	}
}

// A block a minute: nine gone, five to go, two beyond the forecast; where there
// is no room a block is more.
func TestBlocksAreMinutes(t *testing.T) {
	g := cell.New(60, 3, false)
	m := Minutes{Since: 9, Early: 11, Due: 14, Late: 16}
	if w := m.Draw(g, theme.Theme{}, 0, 0, 60, 1); w != 48 {
		t.Errorf("%d columns", w)
	}
	row := strings.Split(g.String(), "\n")[0]
	if n := strings.Count(row, "▓▓"); n != 9 {
		t.Errorf("%d gone: %q", n, row)
	}
	if n := strings.Count(row, "██"); n != 5 {
		t.Errorf("%d to go: %q", n, row)
	}
	if n := strings.Count(row, "░░"); n != 2 {
		t.Errorf("%d beyond: %q", n, row)
	}
	if w := (Minutes{Since: 70, Early: 11, Due: 14, Late: 16}).Draw(g, theme.Theme{}, 0, 0, 60, 1); w > 60 {
		t.Errorf("%d columns of 60", w)
	}
	if w := (Minutes{}).Draw(g, theme.Theme{}, 0, 0, 60, 1); w != 0 {
		t.Error("blocks without a forecast")
	}
}

// The strip shows the last charges when not all fit, the one that burns among
// them, and ticks ahead.
func TestStripShowsTheLast(t *testing.T) {
	s := inventedStrip()
	for n := 26; n < 90; n++ {
		s.Bars = append(s.Bars[:len(s.Bars)-1], Bar{Number: n - 1, Minutes: 10}, Bar{Number: n, Now: true, Minutes: 3})
	}
	g := cell.New(80, 6, false)
	s.Draw(g, theme.Theme{})
	if got := g.String(); !strings.Contains(got, "now") || !strings.Contains(got, "85") || strings.Contains(got, " 10 ") {
		t.Errorf("got\n%s", got)
	}
	g = cell.New(80, 6, false)
	inventedStrip().Draw(g, theme.Theme{})
	if got := g.String(); !strings.Contains(got, "usual") || strings.Count(strings.Split(got, "\n")[0], "▔") < 1 && strings.Count(got, "▔") < 6 {
		t.Errorf("no ticks:\n%s", got)
	}
}

// The day is in order from left to right, and the sun is up by day alone.
func TestDayRunsOn(t *testing.T) {
	d := inventedDay()
	before := -1
	for at := time.Duration(0); at <= d.Span; at += 10 * time.Minute {
		x := d.Column(at, 120)
		if x < before || x < 1 || x > 118 {
			t.Errorf("at %v column %d after %d", at, x, before)
		}
		before = x
	}
	tr := track{Day: d, ground: 3, from: 1, wide: 118}
	for h, want := range map[int]bool{5: false, 7: true, 12: true, 17: true, 19: false} {
		at := time.Date(2026, 6, 14, h, 30, 0, 0, time.UTC).Sub(d.Lit)
		if up, _ := tr.sun(at); up != want {
			t.Errorf("at %d:30 up %v", h, up)
		}
	}
	_, noon := tr.sun(time.Date(2026, 6, 14, 12, 0, 0, 0, time.UTC).Sub(d.Lit))
	if _, morning := tr.sun(time.Date(2026, 6, 14, 7, 0, 0, 0, time.UTC).Sub(d.Lit)); noon != 0 || morning <= noon {
		t.Errorf("the sun stands at row %d at noon, %d in the morning", noon, morning)
	}
}

func TestUndatedDayHasNoSun(t *testing.T) {
	d := inventedDay()
	d.Undated = true
	g := cell.New(120, DayRows, false)
	d.Draw(g, theme.Theme{})
	if got := g.String(); strings.Contains(got, "███▄") || strings.Contains(got, "13:36") {
		t.Errorf("got\n%s", got)
	}
}

// How hot a hearth was stands as high as it was hot: over the line where it was hot enough, under
// it where it was too cold, and nothing where it is not known.
func TestHeatsStandOverTheirLine(t *testing.T) {
	d := Day{Span: 100 * time.Minute, Now: 100 * time.Minute}
	for m := 20; m < 100; m++ {
		c := 1300.0
		if m >= 60 && m < 70 {
			c = 1000
		}
		d.Hearth = append(d.Hearth, Heat{At: time.Duration(m) * time.Minute, Celsius: c})
	}
	th := theme.Theme{}
	g := th.Grid(102, 13)
	d.Heats(g, th, 1150, "hot enough")
	rows := strings.Split(g.String(), "\n")
	line := slices.IndexFunc(rows, func(r string) bool { return strings.Contains(r, "┈") })
	if line < 1 || !strings.Contains(rows[line-1], "hot enough") {
		t.Fatalf("no line:\n%s", g)
	}
	at := func(row, minute int) rune { return []rune(rows[row])[d.Column(time.Duration(minute)*time.Minute, 102)] }
	for _, c := range []struct {
		row, minute int
		want        rune
	}{{line, 10, '┈'}, {line - 2, 40, '▇'}, {line, 40, '░'}, {line - 1, 65, ' '}, {line, 65, '┈'}, {line + 2, 65, '▅'}, {line + 3, 65, '░'}, {line + 3, 10, ' '}} {
		if got := at(c.row, c.minute); got != c.want {
			t.Errorf("row %d, minute %d: %q, want %q\n%s", c.row, c.minute, got, c.want, g)
		}
	}
}
