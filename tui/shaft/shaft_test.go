package shaft

import (
	"flag"
	"fmt"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/picture"
	"chargehand/model/words"
	"chargehand/physics"
	"chargehand/tui/cell"
	"chargehand/tui/theme"
)

// invented is a furnace of a usual size in its main burn, three charges and the
// fill in it. It is invented.
func invented() picture.Picture {
	p := picture.Picture{
		Top: 51, Floor: -15, Mark: 50, Burden: 44, BurdenKnown: true, Bore: 25, BoreTop: 25, Angle: 20, BlastOn: true,
		Bath: -7, Bloom: 6.5, Hearth: physics.Band{P10: 1140, P50: 1290, P90: 1440},
		Slices: []picture.Slice{
			{Top: 44, Bottom: 28, Charge: 24, OreTop: 44, OreBottom: 40.8},
			{Top: 28, Bottom: 12, Charge: 23, OreTop: 26, OreBottom: 23},
			{Top: 12, Bottom: 0, Charge: 22, OreTop: 9, OreBottom: 8},
		},
	}
	for _, z := range []struct {
		what    figure.Process
		top     float64
		celsius float64
	}{{figure.Drying, 44, 150}, {figure.RedToBlack, 39, 500}, {figure.LosesOxygen, 33, 780}, {figure.IronForms, 25, 950}, {figure.SlagRuns, 15, 1150}, {figure.Burning, 7, 1350}} {
		if n := len(p.Labels); n > 0 {
			p.Labels[n-1].Bottom = z.top
		}
		p.Labels = append(p.Labels, picture.Label{Zone: figure.Zone{What: z.what, Top: z.top, Degrees: z.celsius}})
	}
	return p
}

var themes = map[string]theme.Theme{
	"true": {Profile: theme.True}, "light": {Profile: theme.True, Light: true}, "256": {Profile: theme.Fixed256},
	"256 light": {Profile: theme.Fixed256, Light: true}, "16": {Profile: theme.Base16}, "16 light": {Profile: theme.Base16, Light: true},
	"none": {}, "ascii": {ASCII: true},
}

// painted is a furnace at a size of screen: its columns and rows, and the wall's.
func painted(th theme.Theme, pic picture.Picture, w, h, wall int) cell.Grid {
	g := th.Grid(w+12, h)
	g.Fill(g.Bounds(), ' ', th.Style(theme.Text))
	p := Fit(pic, cell.Rect{X: 5, Y: 1, W: w, H: h - 1}, wall)
	Scale(g, th, words.Units{}, p, 3, pic.Floor)
	Paint(g, th, p, View{Pic: pic})
	return g
}

var show = flag.String("show", "", "print the furnace in a theme: true, light, 256, 16, none, ascii")

// TestShow prints one to look at:
//
//	go test ./tui/shaft -run TestShow -show true
func TestShow(t *testing.T) {
	if *show == "" {
		t.Skip("a way to look at one, asked for with -show")
	}
	th := themes[*show]
	early, unknown, lost := invented(), invented(), invented()
	early.Bath, early.Bloom = -13, 1
	unknown.Bath, unknown.TuyereRight = unknown.Floor, true
	lost.BlastOn, lost.BoreTop = false, 18
	g := th.Grid(4*38, 26)
	g.Fill(g.Bounds(), ' ', th.Style(theme.Text))
	for i, pic := range []picture.Picture{invented(), early, unknown, lost} {
		p := Fit(pic, cell.Rect{X: 38*i + 8, Y: 1, W: 24, H: 24}, 3)
		Scale(g, th, words.Units{}, p, 38*i+3, pic.Floor)
		Paint(g, th, p, View{Pic: pic, Past: i == 1})
	}
	fmt.Print(g.Encode(th.Palette()))
}

// Whatever the theme and the size, a furnace is painted inside its rectangle and
// the pipe's few columns beside it, and in ASCII with ASCII alone.
func TestStaysInItsPlace(t *testing.T) {
	for name, th := range themes {
		for _, size := range [][3]int{{16, 19, 1}, {24, 25, 3}, {40, 46, 5}, {7, 8, 1}} {
			for _, right := range []bool{false, true} {
				pic := invented()
				pic.TuyereRight = right
				g := painted(th, pic, size[0], size[1], size[2])
				for y, row := range strings.Split(g.String(), "\n") {
					if w := ansi.StringWidth(row); w != size[0]+12 {
						t.Fatalf("%s %v: row %d is %d wide", name, size, y, w)
					}
					for _, c := range row {
						if th.ASCII && c > 0x7e {
							t.Fatalf("%s: %q", name, c)
						}
					}
				}
			}
		}
	}
}

// A centimetre is as long across as down: a cell is twice as high as wide.
func TestTrueBothWays(t *testing.T) {
	pic := invented()
	for _, r := range []cell.Rect{{X: 5, Y: 1, W: 24, H: 24}, {X: 2, Y: 3, W: 40, H: 45}, {X: 0, Y: 0, W: 12, H: 40}} {
		p := Fit(pic, r, 1)
		from, to := p.Span(pic, p.Row(0))
		across := float64(to-from) * p.PerRow / 2
		if d := across - pic.Bore; d > p.PerRow/2 || d < -p.PerRow/2 {
			t.Errorf("%v: a bore of %v is %v cm across", r, pic.Bore, across)
		}
		if p.Top < pic.Top-1e-9 || to-from > r.W-2 {
			t.Errorf("%v: does not fit: top %v, %d columns", r, p.Top, to-from)
		}
	}
}

// Heat falls from the middle to the wall, and from the tuyere to the top.
func TestHeatOfAPicture(t *testing.T) {
	h := HeatOf(invented())
	before := 2000.0
	for cm := 4.0; cm <= 44; cm++ {
		c, fall := h.Middle(cm)
		if c > before || fall < 0 || c < 20 {
			t.Errorf("at %v cm: %v C, %v K less at the wall", cm, c, fall)
		}
		before = c
	}
	pic := invented()
	pic.Labels[2].WallSide = entry.Some(entry.Celsius(600))
	if _, fall := HeatOf(pic).Middle(pic.Labels[2].At()); fall != 180 {
		t.Errorf("a solved wall: %v K less, want 180", fall)
	}
	if HeatOf(picture.Picture{}).Known() {
		t.Error("heat of nothing")
	}
}

// Where it is not known how high slag stands there is neither level nor bloom:
// the floor of the hearth is hatched, and nothing there is bright.
func TestUnknownSlagHasNoLevel(t *testing.T) {
	pic := invented()
	pic.Bath = pic.Floor
	for name, th := range themes {
		g := painted(th, pic, 24, 25, 3)
		rows := strings.Split(g.String(), "\n")
		hatched := strings.Count(rows[22], "╱") + strings.Count(rows[22], "/")
		if hatched < 15 {
			t.Errorf("%s: %d of the hearth hatched:\n%s", name, hatched, g)
		}
		for _, c := range "▔≈@" {
			if strings.ContainsRune(strings.Join(rows[18:23], ""), c) && c != '@' {
				t.Errorf("%s: %q in the hearth:\n%s", name, c, g)
			}
		}
	}
}

// A burden that has burned down to the tuyere leaves no empty hearth: what lies in it is not
// known.
func TestASunkBurdenLeavesTheHearthUnknown(t *testing.T) {
	pic := invented()
	pic.Bath, pic.Burden, pic.Slices, pic.Labels, pic.Sunk = pic.Floor, 0, nil, nil, true
	for name, th := range themes {
		g := painted(th, pic, 24, 25, 3)
		rows := strings.Split(g.String(), "\n")
		for n, in := range map[int]bool{5: false, 12: false, 20: true, 22: true} {
			hatched := strings.Count(rows[n], "╱") + strings.Count(rows[n], "/")
			if (hatched > 15) != in {
				t.Errorf("%s: %d of row %d hatched:\n%s", name, hatched, n, g)
			}
		}
	}
}

// The texture hangs on the layers: a burden that has sunk by half a row looks the
// same half a row lower, but for its heat.
func TestLumpsSinkWithTheirLayer(t *testing.T) {
	pic := invented()
	p := painter{th: themes["true"], p: Fit(pic, cell.Rect{W: 24, H: 24}, 3)}
	s := pic.Slices[0]
	sunk := s
	sunk.Top -= p.p.PerRow / 2
	for h := p.p.half(s.Top); h < p.p.half(s.Bottom)-1; h++ {
		for x := range 18 {
			if p.lump(s, x, h) != p.lump(sunk, x, h+1) {
				t.Fatalf("half row %d, column %d: another lump", h, x)
			}
		}
	}
}

// Without blast there is no stroke before the tuyere, without colour too.
func TestBlastShows(t *testing.T) {
	for name, th := range themes {
		on, off := invented(), invented()
		off.BlastOn = false
		strokes := func(p picture.Picture) string {
			rows := strings.Split(painted(th, p, 24, 25, 3).String(), "\n")
			return rows[18] + rows[19]
		}
		if a, b := strokes(on), strokes(off); a == b || !strings.ContainsAny(a, "━>") || strings.ContainsAny(b, "━>") {
			t.Errorf("%s: with blast\n%s\nwithout\n%s", name, a, b)
		}
	}
}

// The same picture is painted the same each time: the glow does not move by
// itself.
func TestStandsStill(t *testing.T) {
	for name, th := range themes {
		once := painted(th, invented(), 24, 25, 3).Encode(th.Palette())
		if again := painted(th, invented(), 24, 25, 3).Encode(th.Palette()); again != once {
			t.Errorf("%s: two paintings differ", name)
		}
	}
}

func BenchmarkPaint(b *testing.B) {
	pic := invented()
	for _, name := range []string{"true", "256", "16"} {
		th := themes[name]
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				_ = painted(th, pic, 40, 46, 5)
			}
		})
	}
}
