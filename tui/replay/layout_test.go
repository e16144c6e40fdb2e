package replay

import (
	"fmt"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"

	"chargehand/model/figure"
	modelwords "chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/draw"
	"chargehand/tui/scene"
	"chargehand/tui/scene/scenes"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// in paints a scene with its day, as it was seen or as it is known.
func in(seen bool, steps string) scenes.Painter {
	return func(g cell.Grid, p draw.Pen, r *figure.Reading, v scene.View) {
		day := scenes.DayOf(r, seen)
		if steps != "" {
			day.Steps = steps
		}
		paint(g, p, r, v, day)
	}
}

// The parts tile the window: the line stands between the picture and the foot,
// full across.
func TestLayoutTiles(t *testing.T) {
	for w := draw.MinW; w <= 250; w++ {
		for h := draw.MinH; h <= 80; h++ {
			l, line := layoutOf(w, h)
			area := line.W * line.H
			all := append(l.Rects(), line)
			for i, r := range all {
				if i < len(all)-1 {
					area += r.W * r.H
				}
				if r.W < 0 || r.H < 0 || r.X < 0 || r.Y < 0 || r.Right() > w || r.Bottom() > h {
					t.Fatalf("%dx%d: %+v leaves the window", w, h, r)
				}
				for _, o := range all[:i] {
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

// Replay is Fire with the line below: what Fire says stands there too.
func TestReplayShowsFire(t *testing.T) {
	s := scenes.Named("replay")
	for w := draw.MinW; w <= 250; w += 7 {
		for h := draw.MinH; h <= 80; h += 3 {
			text := ansi.Strip(s.Frame(theme.Theme{}, w, h, in(true, "")))
			for _, want := range []string{modelwords.SinceLastCharge[:10], "bucket", "14:32"} {
				if !strings.Contains(text, want) {
					t.Fatalf("%dx%d: no %q:\n%s", w, h, want, text)
				}
			}
			if strings.Count(text, words.ThePast) != 1 {
				t.Fatalf("%dx%d: it does not say once that this is the past:\n%s", w, h, text)
			}
		}
	}
	if text := ansi.Strip(s.Frame(theme.Theme{}, 80, 24, in(true, ""))); strings.Contains(text, modelwords.StripMinutes+" ") {
		t.Errorf("the strip stands at 80x24:\n%s", text)
	}
}

func TestEveryFrameFitsItsWindow(t *testing.T) {
	for w := draw.MinW - 8; w <= 250; w += 11 {
		for h := draw.MinH - 3; h <= 80; h += 5 {
			for i, name := range []string{"replay", "replay-known"} {
				th := theme.Theme{Profile: theme.Profile((w + i) % 4), Light: i%2 == 0, ASCII: h%3 == 0}
				rows := strings.Split(scenes.Named(name).Frame(th, w, h, in(i == 0, "")), "\n")
				if len(rows) != h {
					t.Fatalf("%s %dx%d: %d rows", name, w, h, len(rows))
				}
				for y, row := range rows {
					if n := ansi.StringWidth(row); n != w {
						t.Fatalf("%s %dx%d row %d: width %d: %q", name, w, h, y, n, row)
					}
				}
			}
		}
	}
}

func FuzzReplay(f *testing.F) { scenes.Fuzz(f, in(true, "a note")) }

func BenchmarkReplay(b *testing.B) {
	for _, size := range [][2]int{{80, 24}, {200, 60}} {
		b.Run(fmt.Sprintf("%dx%d", size[0], size[1]), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				_ = scenes.Named("replay").Frame(theme.Theme{Profile: theme.Fixed256}, size[0], size[1], in(true, ""))
			}
		})
	}
}
