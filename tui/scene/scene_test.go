package scene_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
	"github.com/charmbracelet/x/exp/golden"

	"chargehand/model/figure"
	"chargehand/model/forecast"
	modelwords "chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/draw"
	"chargehand/tui/scene"
	"chargehand/tui/scene/scenes"
	"chargehand/tui/theme"
)

// nearScenes are those of the near view.
func nearScenes() []scenes.Scene {
	var near []scenes.Scene
	for _, s := range scenes.All() {
		if !strings.HasPrefix(s.Name, "far") && !strings.HasPrefix(s.Name, "decide") && !strings.HasPrefix(s.Name, "replay") {
			near = append(near, s)
		}
	}
	return near
}

func frame(th theme.Theme, w, h int, s scenes.Scene) string { return s.Frame(th, w, h, scenes.Whole) }

func whole(g cell.Grid, th theme.Theme, r *figure.Reading, v scene.View) {
	scenes.Whole(g, draw.With(th, modelwords.Units{}), r, v)
}

// What a golden view holds was looked at as a picture before it was kept.
func TestGolden(t *testing.T) {
	for _, s := range nearScenes() {
		for _, size := range [][2]int{{40, 12}, {80, 24}, {120, 36}, {200, 60}} {
			w, h := size[0], size[1]
			if w != 120 && s.Name != "midsmelt" && (w == 40 || s.Name != "down" && s.Name != "chemistry") {
				continue
			}
			t.Run(fmt.Sprintf("%s-%dx%d-plain", s.Name, w, h), func(t *testing.T) {
				golden.RequireEqual(t, ansi.Strip(frame(theme.Theme{}, w, h, s)))
			})
		}
	}
	for name, th := range map[string]theme.Theme{"256": {Profile: theme.Fixed256}, "256-light": {Profile: theme.Fixed256, Light: true}} {
		t.Run("midsmelt-120x36-"+name, func(t *testing.T) {
			golden.RequireEqual(t, frame(th, 120, 36, scenes.Named("midsmelt")))
		})
	}
	t.Run("midsmelt-80x24-ascii", func(t *testing.T) {
		golden.RequireEqual(t, ansi.Strip(frame(theme.Theme{ASCII: true}, 80, 24, scenes.Named("midsmelt"))))
	})
}

func TestEveryFrameFitsItsWindow(t *testing.T) {
	for w := draw.MinW - 8; w <= 250; w += 11 {
		for h := draw.MinH - 3; h <= 80; h += 5 {
			for i, s := range nearScenes() {
				th := theme.Theme{Profile: theme.Profile(i % 4), Light: i%2 == 0, ASCII: i%3 == 0}
				rows := strings.Split(frame(th, w, h, s), "\n")
				if len(rows) != h {
					t.Fatalf("%s %dx%d: %d rows", s.Name, w, h, len(rows))
				}
				for y, row := range rows {
					if n := ansi.StringWidth(row); n != w {
						t.Fatalf("%s %dx%d row %d: width %d: %q", s.Name, w, h, y, n, row)
					}
				}
			}
		}
	}
}

func TestLayoutTiles(t *testing.T) {
	for w := draw.MinW; w <= 250; w++ {
		for h := draw.MinH; h <= 80; h++ {
			ls := []scene.Layout{scene.LayoutOf(w, h), scene.LayoutOf(w, h).Headed(draw.BurnDownRows, scene.DownFigures)}
			if ls[0].Size == scene.Cramped {
				ls = append(ls, ls[0].Raised(8, scene.LeastFigures))
			}
			for _, l := range ls {
				area := 0
				for i, r := range l.Rects() {
					area += r.W * r.H
					if r.W < 0 || r.H < 0 || r.X < 0 || r.Y < 0 || r.Right() > w || r.Bottom() > h {
						t.Fatalf("%dx%d: %+v leaves the window", w, h, r)
					}
					for _, o := range l.Rects()[:i] {
						if r.X < o.Right() && o.X < r.Right() && r.Y < o.Bottom() && o.Y < r.Bottom() && !r.Empty() && !o.Empty() {
							t.Fatalf("%dx%d: %+v and %+v overlap", w, h, r, o)
						}
					}
				}
				if area != w*h {
					t.Fatalf("%dx%d: the parts cover %d of %d cells", w, h, area, w*h)
				}
			}
		}
	}
}

// The far eye needs the timer and the charge at every size: the digits are in
// blocks and have their room, and the charge stands in full beside or below.
func TestTimerIsTheLargest(t *testing.T) {
	for w := draw.MinW; w <= 250; w++ {
		for h := draw.MinH; h <= 80; h++ {
			l := scene.LayoutOf(w, h)
			if l.Size > scene.Cramped {
				if l.Timer.H < 9 || l.Timer.W < 22 || l.Next.H < 9 || l.Next.W < 16 {
					t.Fatalf("%dx%d: %+v and %+v", w, h, l.Timer, l.Next)
				}
				continue
			}
			if rows := draw.DigitRows(l.Scale); rows < 3 || l.Timer.H < rows+1 || l.Timer.W < draw.DigitColumns(l.Scale)+2 {
				t.Fatalf("%dx%d: scale %d in %+v", w, h, l.Scale, l.Timer)
			}
			if l.Next.H < 2 || l.Next.W < 20 {
				t.Fatalf("%dx%d: next charge in %+v", w, h, l.Next)
			}
		}
	}
}

func TestAsciiThemePrintsAscii(t *testing.T) {
	for _, s := range nearScenes() {
		s.V.Title, s.R.By = "Ørkenæs 鉄 –", "Åse"
		for i, c := range frame(theme.Theme{ASCII: true}, 120, 36, s) {
			if c > 0x7e {
				t.Fatalf("%s: %q at %d", s.Name, c, i)
			}
		}
	}
}

// Without colour the same characters stand beside the shaft, which has a picture
// of its own for each: a state that only a colour told would be lost.
func TestColourChangesNoCharacter(t *testing.T) {
	for _, s := range nearScenes() {
		l := scene.LayoutOf(120, 36)
		frame := func(th theme.Theme, w, h int, s scenes.Scene) string {
			rows := strings.Split(ansi.Strip(frame(th, w, h, s)), "\n")
			for y := l.Shaft.Y; y < l.Shaft.Bottom(); y++ {
				rows[y] = string([]rune(rows[y])[l.Shaft.Right():])
			}
			return strings.Join(rows, "\n")
		}
		plain := ansi.Strip(frame(theme.Theme{}, 120, 36, s))
		for p := theme.Base16; p <= theme.True; p++ {
			if got := ansi.Strip(frame(theme.Theme{Profile: p}, 120, 36, s)); got != plain {
				t.Errorf("%s: profile %d shows other characters", s.Name, p)
			}
		}
	}
}

func TestNotKeptIsSaidInWords(t *testing.T) {
	for _, s := range nearScenes() {
		if s.Name != "notkept" {
			continue
		}
		for _, size := range [][2]int{{40, 12}, {80, 24}, {200, 60}} {
			text := ansi.Strip(frame(theme.Theme{}, size[0], size[1], s))
			if !strings.Contains(text, "!! NOT KEPT 3") {
				t.Errorf("%v: not said:\n%s", size, text)
			}
			if do := "make room on the disk; leave this running"; size[0] >= 80 && !strings.Contains(text, do) {
				t.Errorf("%v: what to do is cut:\n%s", size, text)
			}
		}
	}
}

func TestUnknownSaysWhatWouldTell(t *testing.T) {
	s := scenes.Scene{R: scenes.Unweighed(), V: scenes.ViewOf(scenes.Unweighed())}
	text := ansi.Strip(frame(theme.Theme{}, 120, 36, s))
	for _, want := range []string{"at least 5.7 kg", "weigh a bucket", "weigh a scoop", "needs bore and stack", "gate 8", "not known in l/min"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is missing:\n%s", want, text)
		}
	}
}

func FuzzPaint(f *testing.F) { scenes.Fuzz(f, scenes.Whole) }

// BenchmarkFire is one frame, painted and encoded, with the shaft glowing: in 256
// colours, and in those of 24 bits, where almost every cell of the shaft has two
// colours of its own.
func BenchmarkFire(b *testing.B) {
	for _, size := range [][2]int{{80, 24}, {120, 36}, {200, 60}} {
		for name, profile := range map[string]theme.Profile{"256 colours": theme.Fixed256, "24 bits": theme.True} {
			b.Run(fmt.Sprintf("%dx%d in %s", size[0], size[1], name), func(b *testing.B) {
				th, s := theme.Theme{Profile: profile}, scenes.Named("midsmelt")
				b.ReportAllocs()
				var sheet cell.Grid
				n := 0
				for b.Loop() {
					n = len(s.FrameOn(&sheet, th, size[0], size[1], scenes.Whole))
				}
				b.ReportMetric(float64(n), "B/frame")
			})
		}
	}
}

func TestTuyereStandsOnItsSide(t *testing.T) {
	m := theme.Theme{}.Marks()
	for right, mouth := range map[bool]rune{false: m.Nozzle, true: m.NozzleR} {
		r := scenes.MidSmelt()
		r.Light.Furnace.TuyereRight = right
		text := ansi.Strip(frame(theme.Theme{}, 120, 36, scenes.Scene{R: r}))
		if !strings.ContainsRune(text, mouth) {
			t.Errorf("right %v: no %q", right, mouth)
		}
		r.BlastOff = true
		if text := ansi.Strip(frame(theme.Theme{}, 120, 36, scenes.Scene{R: r})); strings.ContainsRune(text, mouth) {
			t.Errorf("right %v: the mouth is open without blast", right)
		}
	}
}

// Why the time may be wrong is said in full beside or below it, also while the
// charge is late; and no time to come is said to be nought to nought.
func TestEveryDoubtIsSaidInFull(t *testing.T) {
	for _, size := range [][2]int{{80, 24}, {120, 36}, {200, 60}} {
		for _, minutes := range []float64{2.5, 9.5, 12.3} { // late, nearly due, to come
			for doubt := range forecast.Doubts {
				r, v := scenes.MidSmelt(), scenes.ViewOf(scenes.MidSmelt())
				v.Due = scenes.Ahead(r, minutes, doubt)
				g := theme.Theme{}.Grid(size[0], size[1])
				whole(g, theme.Theme{}, r, v)
				l := scene.LayoutOf(size[0], size[1])
				timer := l.Timer
				timer.X++
				text := strings.Join(strings.FieldsFunc(g.Sub(timer).String(), func(c rune) bool { return strings.ContainsRune(" \n█▀▄", c) }), " ")
				if !strings.Contains(strings.ReplaceAll(text, " min ", " "), modelwords.Doubt(doubt)) {
					t.Errorf("%v, %v min: %q is not in full:\n%s", size, minutes, modelwords.Doubt(doubt), g.Sub(timer))
				}
				if all := g.String(); strings.Contains(all, "0 to 0") || strings.Contains(all, "0 and 0") {
					t.Errorf("%v, %v min:\n%s", size, minutes, g)
				}
			}
		}
	}
}
