package paint

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/charmbracelet/x/ansi"
	"github.com/charmbracelet/x/exp/golden"

	"chargehand/model/figure"
	"chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/theme"
)

// What a golden view holds was looked at as a picture before it was kept.
func TestGoldenScreens(t *testing.T) {
	for _, size := range [][2]int{{80, 24}, {120, 36}, {200, 60}} {
		for _, s := range screens() {
			name := fmt.Sprintf("%s-%dx%d", s.name, size[0], size[1])
			t.Run(name+"-plain", func(t *testing.T) {
				golden.RequireEqual(t, ansi.Strip(frame(theme.Theme{}, size[0], size[1], s)))
			})
			if size[0] == 80 {
				t.Run(name+"-ascii", func(t *testing.T) {
					golden.RequireEqual(t, ansi.Strip(frame(theme.Theme{ASCII: true}, size[0], size[1], s)))
				})
			}
			if s.name == "far-late" || s.name == "replay" || s.name == "down" {
				t.Run(name+"-256", func(t *testing.T) {
					golden.RequireEqual(t, frame(theme.Theme{Profile: theme.Fixed256}, size[0], size[1], s))
				})
			}
		}
	}
}

// drawn is how many rows of g hold anything.
func drawn(g cell.Grid) int {
	rows := 0
	for _, row := range strings.Split(g.String(), "\n") {
		if strings.TrimSpace(row) != "" {
			rows++
		}
	}
	return rows
}

// The digits of the far view are at least 15 % of the height of the screen, at
// every size, whatever they count and whatever else there is to say, and none
// of them is cut off.
func TestFarDigitsAreTall(t *testing.T) {
	long := midSmelt()
	long.Figures[figure.SinceCharge] = exactly((187 * time.Minute).Seconds())
	all := append(screens(), scene{name: "far-long", r: long, v: viewOf(long), paint: Far})
	for _, s := range all {
		if !strings.HasPrefix(s.name, "far") {
			continue
		}
		for w := MinW; w <= 250; w += 5 {
			for h := MinH; h <= 80; h++ {
				for _, th := range []theme.Theme{{}, {ASCII: true}} {
					p := with(th)
					digits := farTimedBy(s.r, s.v)
					high := p.farHigh(w, h, digits)
					if digitRows(high)*100 < farLeast*h {
						t.Fatalf("%s %dx%d: %d rows of digits", s.name, w, h, digitRows(high))
					}
					if n := dotsWide(digits.class); n > w-4 {
						t.Fatalf("%s %dx%d: %d columns of digits", s.name, w, h, n)
					}
				}
			}
		}
		for w := MinW; w <= 250; w += 21 { // and so they are on the screen
			for h := MinH; h <= 80; h += 4 {
				th := theme.Theme{}
				p, digits := with(th), farTimedBy(s.r, s.v)
				g := th.Grid(w, h)
				Far(g, th, s.r, s.v)
				high := p.farHigh(w, h, digits)
				_, bar := p.notKept(w, h, s.v)
				l := farLayoutOf(w, h, high, bar, 2+digitRows(p.whole(1)), p.farNotice(w, h, high, s.r, s.v))
				wide, _ := p.farWide(w, l.Digits.H, digits, high)
				if n := drawn(g.Sub(cell.Rect{X: 2, Y: l.Digits.Y, W: wide * dotsWide(digits.digits), H: l.Digits.H})); n*100 < farLeast*h {
					t.Fatalf("%s %dx%d: %d rows are drawn:\n%s", s.name, w, h, n, g)
				}
			}
		}
	}
}

func TestFarLayoutTiles(t *testing.T) {
	p := with(theme.Theme{})
	for w := MinW; w <= 250; w += 3 {
		for h := MinH; h <= 80; h++ {
			for _, wants := range [][2]int{{0, 0}, {1, 3}, {9, 0}, {9, 30}} {
				l := farLayoutOf(w, h, p.farHigh(w, h, farTimed{}), wants[0], 5, wants[1])
				y := 0
				for _, r := range l.rects() {
					if r.X != 0 || r.W != w || r.H < 0 {
						t.Fatalf("%dx%d: %+v", w, h, r)
					}
					if r != l.Notice && r != l.Next && r != l.Foot && r.H > 0 {
						if r.Y != y {
							t.Fatalf("%dx%d: %+v does not begin at %d", w, h, r, y)
						}
						y = r.Bottom()
					}
				}
				if l.Next.Y != y || l.Notice.Y != l.Next.Bottom() || l.Foot.Y != l.Notice.Bottom() || l.Foot.Bottom() != h {
					t.Fatalf("%dx%d: %+v", w, h, l)
				}
				if l.Next.H < 2 || l.Label.H != 1 {
					t.Fatalf("%dx%d: too little is left: %+v", w, h, l)
				}
			}
		}
	}
}

// blockRows are the rows of a text in blocks.
func blockRows(th theme.Theme, text string, wide int) []string {
	p := with(th)
	high := p.whole(wide)
	g := th.Grid(dotsWide(text)*wide, digitRows(high))
	p.block(g, 0, 0, text, wide, high, th.Style(theme.Text))
	return strings.Split(g.String(), "\n")
}

// stands tells whether a text stands in blocks somewhere in a frame.
func stands(frame string, th theme.Theme, text string) bool {
	rows := strings.Split(frame, "\n")
	for wide := 12; wide > 0; wide-- {
		block := blockRows(th, text, wide)
		for y := 0; y+len(block) <= len(rows); y++ {
			for from := 0; ; {
				at := strings.Index(rows[y][from:], block[0])
				if at < 0 {
					break
				}
				x := len([]rune(rows[y][:from+at]))
				same := true
				for i, b := range block {
					row := []rune(rows[y+i])
					same = same && x+len([]rune(b)) <= len(row) && string(row[x:x+len([]rune(b))]) == b
				}
				if same {
					return true
				}
				from += at + 1
				for from < len(rows[y]) && rows[y][from]&0xc0 == 0x80 {
					from++
				}
			}
		}
	}
	return false
}

// What is read from five metres stands in blocks.
func TestFarSaysItLarge(t *testing.T) {
	for name, says := range map[string][]string{
		"far":         {"1 BUCKET", "4 SCOOPS"},
		"far-due":     {"MINUTES", "1 BUCKET", "4 SCOOPS"},
		"far-warned":  {"MINUTES", "1 BUCKET", "4 SCOOPS"},
		"far-late":    {"LATE", "1 BUCKET", "4 SCOOPS"},
		"far-notkept": {"!! NOT KEPT 3", "1 BUCKET"},
		"far-adding":  {"+2.5 SCOOPS OF ORE"},
		"far-down":    {"USUAL 27 TO 35"},
		"far-caution": {"1 BUCKET", "4 SCOOPS"},
	} {
		for _, s := range screens() {
			if s.name != name {
				continue
			}
			for _, size := range [][2]int{{80, 24}, {120, 36}, {200, 60}} {
				for _, th := range []theme.Theme{{}, {ASCII: true}} {
					got := ansi.Strip(frame(th, size[0], size[1], s))
					for _, text := range says {
						if th.ASCII && size[1] == 24 && s.v.NotKept > 0 {
							continue // no room for blocks of whole cells: a bar in plain letters, tested below
						}
						if !stands(got, th, text) {
							t.Errorf("%s %v ascii %v: no %q in blocks:\n%s", name, size, th.ASCII, text, got)
						}
					}
				}
			}
		}
	}
	for _, s := range screens() {
		if title := map[string]string{"far-late": "!! BLAST LOST", "far-warned": "!! TUYERE BLOCKED"}[s.name]; title != "" {
			if got := ansi.Strip(frame(theme.Theme{}, 120, 36, s)); !stands(got, theme.Theme{}, title) {
				t.Errorf("%s: no %q in blocks:\n%s", s.name, title, got)
			}
		}
	}
}

// NOT KEPT and its reason are said at every size of the far view.
func TestFarSaysWhatIsNotKept(t *testing.T) {
	for _, s := range screens() {
		if s.name != "far-notkept" {
			continue
		}
		for w := MinW; w <= 250; w += 10 {
			for h := MinH; h <= 80; h += 4 {
				got := ansi.Strip(frame(theme.Theme{}, w, h, s))
				if !strings.Contains(got, "NOT KEPT 3") && !stands(got, theme.Theme{}, "!! NOT KEPT 3") || !strings.Contains(got, "the disk is full") {
					t.Fatalf("%dx%d:\n%s", w, h, got)
				}
			}
		}
	}
}

// A measure in another script, or of a long name, stands in plain letters.
func TestFarNamesAnything(t *testing.T) {
	r := midSmelt()
	r.Next[0].Measure, r.Next[1].Measure = "鉄かご", "wheelbarrow with the broken wheel"
	got := ansi.Strip(frame(theme.Theme{}, 80, 24, scene{r: r, v: viewOf(r), paint: Far}))
	for _, want := range []string{"1 鉄かご", "4 wheelbarrow with the broken wheels"} {
		if !strings.Contains(got, want) {
			t.Errorf("no %q:\n%s", want, got)
		}
	}
	r.Next[0].Measure, r.Next[1].Measure = "bucket", "bucket"
	lines := with(theme.Theme{}).farCharge(r, viewOf(r))
	if fmt.Sprint(lines) != "[1 bucket of charcoal 4 buckets of ore]" {
		t.Errorf("one measure for both says %q", lines)
	}
	if r.OreHeld = true; with(theme.Theme{}).farCharge(r, viewOf(r))[2] != words.OreIsHeld {
		t.Error("held ore is not said")
	}
}

func benchmarkScene(b *testing.B, name string) {
	for _, s := range screens() {
		if s.name != name {
			continue
		}
		for _, size := range [][2]int{{80, 24}, {200, 60}} {
			b.Run(fmt.Sprintf("%dx%d", size[0], size[1]), func(b *testing.B) {
				b.ReportAllocs()
				for b.Loop() {
					_ = frame(theme.Theme{Profile: theme.Fixed256}, size[0], size[1], s)
				}
			})
		}
	}
}

func BenchmarkFar(b *testing.B)      { benchmarkScene(b, "far-late") }
func BenchmarkBurnDown(b *testing.B) { benchmarkScene(b, "down") }
func BenchmarkDecision(b *testing.B) { benchmarkScene(b, "decide") }
func BenchmarkReplay(b *testing.B)   { benchmarkScene(b, "replay") }
func BenchmarkCaution(b *testing.B)  { benchmarkScene(b, "caution-blow") }
