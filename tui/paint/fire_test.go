package paint

import (
	"fmt"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
	"github.com/charmbracelet/x/exp/golden"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/picture"
	"chargehand/model/rule"
	"chargehand/tui/cell"
	"chargehand/tui/theme"
)

func frame(th theme.Theme, w, h int, s scene) string {
	g := th.Grid(w, h)
	if s.paint == nil {
		Fire(g, th, s.r, s.v)
	} else {
		s.paint(g, th, s.r, s.v)
	}
	if foot, _ := g.Bounds().CutBottom(FootRows); w >= MinW && h >= MinH {
		Foot(g.Sub(foot), th, s.foot.answer, s.foot.ask, keys, KeyHint{"h", "help"})
	}
	return g.Encode(th.Palette())
}

// What a golden view holds was looked at as a picture before it was kept.
func TestGoldenFire(t *testing.T) {
	for _, size := range [][2]int{{40, 12}, {80, 24}, {120, 36}, {200, 60}} {
		for _, s := range scenes() {
			w, h := size[0], size[1]
			if s.name != "midsmelt" && w != 120 {
				continue
			}
			t.Run(fmt.Sprintf("%s-%dx%d-plain", s.name, w, h), func(t *testing.T) {
				golden.RequireEqual(t, ansi.Strip(frame(theme.Theme{}, w, h, s)))
			})
		}
		for name, th := range map[string]theme.Theme{"256": {Profile: theme.Fixed256}, "256-light": {Profile: theme.Fixed256, Light: true}} {
			t.Run(fmt.Sprintf("midsmelt-%dx%d-%s", size[0], size[1], name), func(t *testing.T) {
				golden.RequireEqual(t, frame(th, size[0], size[1], scenes()[0]))
			})
		}
	}
	t.Run("midsmelt-80x24-ascii", func(t *testing.T) {
		golden.RequireEqual(t, ansi.Strip(frame(theme.Theme{ASCII: true}, 80, 24, scenes()[0])))
	})
}

func TestEveryFrameFitsItsWindow(t *testing.T) {
	for w := MinW - 8; w <= 250; w += 11 {
		for h := MinH - 3; h <= 80; h += 5 {
			for i, s := range append(scenes(), screens()...) {
				th := theme.Theme{Profile: theme.Profile(i % 4), Light: i%2 == 0, ASCII: i%3 == 0}
				rows := strings.Split(frame(th, w, h, s), "\n")
				if len(rows) != h {
					t.Fatalf("%s %dx%d: %d rows", s.name, w, h, len(rows))
				}
				for y, row := range rows {
					if n := ansi.StringWidth(row); n != w {
						t.Fatalf("%s %dx%d row %d: width %d: %q", s.name, w, h, y, n, row)
					}
				}
			}
		}
	}
}

func TestLayoutTiles(t *testing.T) {
	for w := MinW; w <= 250; w++ {
		for h := MinH; h <= 80; h++ {
			replay, line := ReplayLayout(w, h)
			replay.Strip.H += line.H // the line stands between the strip and the foot, full across
			if replay.Strip.W = w; replay.Strip.H == line.H {
				replay.Strip = line
			}
			for _, l := range []Layout{LayoutOf(w, h), LayoutOf(w, h).raised(8, leastFigures), LayoutOf(w, h).headed(burnDownRows, downFigures), replay} {
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
	for w := MinW; w <= 250; w++ {
		for h := MinH; h <= 80; h++ {
			l := LayoutOf(w, h)
			if rows := digitRows(l.Scale); rows < 3 || l.Timer.H < rows+1 || l.Timer.W < digitColumns(l.Scale)+2 {
				t.Fatalf("%dx%d: scale %d in %+v", w, h, l.Scale, l.Timer)
			}
			if l.Next.H < 2 || l.Next.W < 20 {
				t.Fatalf("%dx%d: next charge in %+v", w, h, l.Next)
			}
		}
	}
}

func TestAsciiThemePrintsAscii(t *testing.T) {
	for _, s := range append(scenes(), screens()...) {
		s.v.Title, s.r.By = "Ørkenæs 鉄 –", "Åse"
		for i, c := range frame(theme.Theme{ASCII: true}, 120, 36, s) {
			if c > 0x7e {
				t.Fatalf("%s: %q at %d", s.name, c, i)
			}
		}
	}
}

// Without colour the same characters stand: a state that only a colour told
// would be lost.
func TestColourChangesNoCharacter(t *testing.T) {
	for _, s := range append(scenes(), screens()...) {
		plain := ansi.Strip(frame(theme.Theme{}, 120, 36, s))
		for p := theme.Base16; p <= theme.True; p++ {
			if got := ansi.Strip(frame(theme.Theme{Profile: p}, 120, 36, s)); got != plain {
				t.Errorf("%s: profile %d shows other characters", s.name, p)
			}
		}
	}
}

func TestNotKeptIsSaidInWords(t *testing.T) {
	for _, s := range scenes() {
		if s.name != "notkept" {
			continue
		}
		for _, size := range [][2]int{{40, 12}, {80, 24}, {200, 60}} {
			text := ansi.Strip(frame(theme.Theme{}, size[0], size[1], s))
			if !strings.Contains(text, "!! NOT KEPT 3") {
				t.Errorf("%v: not said:\n%s", size, text)
			}
		}
	}
}

func TestUnknownSaysWhatWouldTell(t *testing.T) {
	s := scene{r: unweighed(), v: viewOf(unweighed())}
	text := ansi.Strip(frame(theme.Theme{}, 120, 36, s))
	for _, want := range []string{"at least 5.7 kg", "weigh a bucket", "weigh a scoop", "needs bore and stack", "gate 8", "not known in l/min"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is missing:\n%s", want, text)
		}
	}
}

// Whatever people name their things, every frame keeps its size and passes no
// control character on.
func FuzzFire(f *testing.F) {
	f.Add("Reed Hollow", "bucket", "a note", uint8(80), uint8(24))
	f.Add("a\x1b[2J\x00\r\n", "鉄鉄鉄鉄鉄鉄鉄鉄鉄鉄鉄鉄", "e\u0301\u202e👩‍🔧\t", uint8(41), uint8(13))
	f.Fuzz(func(t *testing.T, furnace, measure, note string, w, h uint8) {
		r := midSmelt()
		r.Light.Furnace.Name, r.By, r.Blast = furnace, note, entry.Blast{Gate: measure}
		r.Measures[0].Name, r.Next[1].Measure = measure, measure
		v := viewOf(r)
		v.Title, v.Log[0].Text, v.Past = furnace, note, measure
		v.Warnings = []rule.Warning{{Rule: rule.TuyereDim, Grade: rule.Act, Evidence: rule.Evidence{{Name: "seen", Word: note}}}, {Rule: rule.ID(note)}}
		f := foot{answer: Answer{Text: note}}
		if w%2 == 0 {
			f.ask = &Ask{Label: measure, Value: note, Hint: furnace}
		}
		w, h = max(w, 1), max(h, 1)
		v.Flame, v.Closer, v.Decide = &Sight{Sees: note}, furnace, DecideKeys{measure, note, furnace}
		if h%2 == 0 {
			v.Warnings, v.Caution = nil, &CautionText{note, furnace, measure, note}
		}
		if w%3 == 0 {
			r.Phase = entry.BurnsDown
		}
		th := theme.Theme{ASCII: h%3 == 0}
		replayed := func(g cell.Grid, th theme.Theme, r figure.Reading, v FireView) {
			tl := dayOf(r, w%5 == 0)
			tl.Steps = note
			Replay(g, th, r, v, tl)
		}
		for _, paint := range []func(cell.Grid, theme.Theme, figure.Reading, FireView){Fire, Far, Decision, replayed} {
			for y, row := range strings.Split(ansi.Strip(frame(th, int(w), int(h), scene{r: r, v: v, foot: f, paint: paint})), "\n") {
				if n := ansi.StringWidth(row); n != int(w) {
					t.Fatalf("%dx%d row %d: width %d: %q", w, h, y, n, row)
				}
				for _, c := range row {
					if c < ' ' || c == 0x7f {
						t.Fatalf("control character %q in %q", c, row)
					}
				}
			}
		}
	})
}

func benchmarkFire(b *testing.B, w, h int) {
	th, s := theme.Theme{Profile: theme.Fixed256}, scenes()[0]
	b.ReportAllocs()
	for b.Loop() {
		_ = frame(th, w, h, s)
	}
}

func BenchmarkFire200x60(b *testing.B) { benchmarkFire(b, 200, 60) }
func BenchmarkFire80x24(b *testing.B)  { benchmarkFire(b, 80, 24) }

// Shafts that Fire does not show yet, or seldom: a tall one, a short one, and
// slag and a bloom below the tuyere.
func TestGoldenShaft(t *testing.T) {
	tall := picture.From(midSmelt())
	tall.Mark, tall.Top, tall.Bore, tall.BoreTop, tall.Floor = 110, 118, 40, 30, -25
	tall.Bath, tall.Bloom = -6, 12
	short := picture.From(midSmelt())
	short.Mark, short.Top, short.Bore, short.BoreTop = 35, 39, 20, 20
	short.Slices = short.Slices[2:]
	for name, pic := range map[string]picture.Picture{"tall": tall, "short": short} {
		for _, size := range [][2]int{{31, 19}, {44, 27}, {72, 47}} {
			t.Run(fmt.Sprintf("%s-%dx%d", name, size[0], size[1]), func(t *testing.T) {
				g := theme.Theme{}.Grid(size[0], size[1])
				with(theme.Theme{}).shaft(g, pic, false)
				golden.RequireEqual(t, g.String())
			})
		}
	}
}
