package fire

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/charmbracelet/x/ansi"
	"github.com/charmbracelet/x/exp/golden"
	"github.com/google/go-cmp/cmp"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/rule"
	modelwords "chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/draw"
	"chargehand/tui/letter"
	"chargehand/tui/scene"
	"chargehand/tui/scene/scenes"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

func penOf(th theme.Theme) pen { return pen{draw.With(th, modelwords.Units{})} }

func far(g cell.Grid, th theme.Theme, r *figure.Reading, v scene.View) { paintFar(g, penOf(th), r, v) }

func farFrame(th theme.Theme, w, h int, s scenes.Scene) string {
	return s.Frame(th, w, h, func(g cell.Grid, p draw.Pen, r *figure.Reading, v scene.View) { paintFar(g, pen{p}, r, v) })
}

func farScenes() []scenes.Scene {
	var far []scenes.Scene
	for _, s := range scenes.All() {
		if strings.HasPrefix(s.Name, "far") {
			far = append(far, s)
		}
	}
	return far
}

// A smelt of which entries are lost says so from afar too, in a row of its own, and
// nothing that was there gives way.
func TestFarSaysWhatIsLost(t *testing.T) {
	lost := words.EntriesLost([]entry.Gap{{After: 7, Before: 9}})
	for _, s := range farScenes() {
		for _, size := range [][2]int{{120, 36}, {80, 24}, {60, 20}, {40, 14}} {
			w, h := size[0], size[1]
			without := strings.Split(ansi.Strip(farFrame(theme.Theme{}, w, h-1, s)), "\n")
			holed := s
			holed.V.Lost = lost
			with := strings.Split(ansi.Strip(farFrame(theme.Theme{}, w, h, holed)), "\n")
			if !strings.Contains(with[0], lost[:min(len(lost), w-8)]) {
				t.Errorf("%s at %dx%d begins with %q", s.Name, w, h, with[0])
			}
			if d := cmp.Diff(without, with[1:]); d != "" && scene.SizeOf(w, h) == scene.SizeOf(w, h-1) {
				t.Errorf("%s at %dx%d shows the rest otherwise:\n%s", s.Name, w, h, d)
			}
		}
	}
}

// What a golden view holds was looked at as a picture before it was kept.
func TestGoldenFar(t *testing.T) {
	for _, s := range farScenes() {
		for _, size := range [][2]int{{80, 24}, {120, 36}} {
			if size[0] == 80 && s.Name != "far-late" && s.Name != "far-warned" {
				continue
			}
			t.Run(fmt.Sprintf("%s-%dx%d-plain", s.Name, size[0], size[1]), func(t *testing.T) {
				golden.RequireEqual(t, ansi.Strip(farFrame(theme.Theme{}, size[0], size[1], s)))
			})
		}
	}
	t.Run("far-late-80x24-ascii", func(t *testing.T) {
		golden.RequireEqual(t, ansi.Strip(farFrame(theme.Theme{ASCII: true}, 80, 24, scenes.Named("far-late"))))
	})
	t.Run("far-late-200x60-256", func(t *testing.T) {
		golden.RequireEqual(t, farFrame(theme.Theme{Profile: theme.Fixed256}, 200, 60, scenes.Named("far-late")))
	})
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
	long := scenes.MidSmelt()
	long.Figures[figure.SinceCharge] = scenes.Exactly((187 * time.Minute).Seconds())
	all := append(farScenes(), scenes.Scene{Name: "far-long", R: long, V: scenes.ViewOf(long)})
	for _, s := range all {
		if !strings.HasPrefix(s.Name, "far") {
			continue
		}
		for w := draw.MinW; w <= 250; w += 5 {
			for h := draw.MinH; h <= 80; h++ {
				for _, th := range []theme.Theme{{}, {ASCII: true}} {
					p := penOf(th)
					digits := farTimedBy(s.R, s.V)
					high := p.farHigh(w, h, digits)
					if draw.DigitRows(high)*100 < farLeast*h {
						t.Fatalf("%s %dx%d: %d rows of digits", s.Name, w, h, draw.DigitRows(high))
					}
					if n := draw.DotsWide(digits.class); n > w-4 {
						t.Fatalf("%s %dx%d: %d columns of digits", s.Name, w, h, n)
					}
				}
			}
		}
		for w := draw.MinW; w <= 250; w += 21 { // and so they are on the screen
			for h := draw.MinH; h <= 80; h += 4 {
				th := theme.Theme{}
				p, digits := penOf(th), farTimedBy(s.R, s.V)
				g := th.Grid(w, h)
				far(g, th, s.R, s.V)
				if farRoomy(w, h) {
					continue // its layout gives them their share
				}
				high := p.farHigh(w, h, digits)
				_, bar := p.notKept(w, h, s.V)
				l := farLayoutOf(w, h, high, bar, 2+draw.DigitRows(p.Whole(1)), p.farNotice(w, h, high, s.R, s.V))
				wide, _ := p.farWide(w, l.Digits.H, digits, high)
				if n := drawn(g.Sub(cell.Rect{X: 2, Y: l.Digits.Y, W: wide * draw.DotsWide(digits.Digits), H: l.Digits.H})); n*100 < farLeast*h {
					t.Fatalf("%s %dx%d: %d rows are drawn:\n%s", s.Name, w, h, n, g)
				}
			}
		}
	}
}

func TestFarLayoutTiles(t *testing.T) {
	p := penOf(theme.Theme{})
	for w := draw.MinW; w <= 250; w += 3 {
		for h := draw.MinH; h <= 80; h++ {
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
	p := penOf(th)
	high := p.Whole(wide)
	g := th.Grid(draw.DotsWide(text)*wide, draw.DigitRows(high))
	p.Block(g, 0, 0, text, wide, high, th.Style(theme.Text))
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

// lettered tells whether a text stands somewhere in a frame in letters of any scale. A part of a charge has its
// number and its word apart.
func lettered(frame string, th theme.Theme, text string) bool {
	var cells [][]rune
	for row := range strings.SplitSeq(frame, "\n") {
		cells = append(cells, []rune(row))
	}
	for _, word := range strings.Fields(text) {
		found := false
		for wide := 1; wide <= 9 && !found; wide++ {
			for high := wide; high <= 2*wide && !found; high++ {
				s := letter.Scale{Wide: wide, High: high}
				w, h := s.Size(word)
				g := th.Grid(w, h)
				s.Text(g, 0, 0, word, th.Style(theme.Text), th.ASCII)
				found = holds(cells, strings.Split(g.String(), "\n"))
			}
		}
		if !found {
			return false
		}
	}
	return true
}

// holds tells whether a block of rows stands in a frame, its blank rows left out.
func holds(frame [][]rune, block []string) bool {
	for len(block) > 0 && strings.TrimSpace(block[0]) == "" {
		block = block[1:]
	}
	for len(block) > 0 && strings.TrimSpace(block[len(block)-1]) == "" {
		block = block[:len(block)-1]
	}
	if len(block) == 0 {
		return false
	}
	lines := make([][]rune, len(block))
	for i, b := range block {
		lines[i] = []rune(strings.TrimRight(b, " "))
	}
	for y := 0; y+len(lines) <= len(frame); y++ {
		for x := 0; x+len(lines[0]) <= len(frame[y]); x++ {
			same := true
			for i, line := range lines {
				row := frame[y+i]
				if same = x+len(line) <= len(row) && slices.Equal(row[x:x+len(line)], line); !same {
					break
				}
			}
			if same {
				return true
			}
		}
	}
	return false
}

// What is read from five metres stands in blocks or letters.
func TestFarSaysItLarge(t *testing.T) {
	for name, says := range map[string][]string{
		"far":         {"1 BUCKET", "4 SCOOPS"},
		"far-due":     {"MINUTES", "1 BUCKET", "4 SCOOPS"},
		"far-warned":  {"MINUTES", "1 BUCKET", "4 SCOOPS"},
		"far-late":    {"LATE", "1 BUCKET", "4 SCOOPS"},
		"far-notkept": {"NOT KEPT 3", "1 BUCKET"},
		"far-adding":  {"2.5 SCOOPS OF ORE"},
		"far-down":    {"USUAL 27 TO 35"},
		"far-caution": {"1 BUCKET", "4 SCOOPS"},
	} {
		for _, s := range farScenes() {
			if s.Name != name {
				continue
			}
			for _, size := range [][2]int{{80, 24}, {120, 36}, {200, 60}} {
				for _, th := range []theme.Theme{{}, {ASCII: true}} {
					got := ansi.Strip(farFrame(th, size[0], size[1], s))
					for _, text := range says {
						if th.ASCII && size[1] == 24 && s.V.NotKept > 0 {
							continue // no room for blocks of whole cells: a bar in plain letters, tested below
						}
						if text == "MINUTES" || text == "LATE" {
							continue // the caption says it
						}
						if !stands(got, th, text) && !lettered(got, th, text) && (name != "far-adding" || !strings.Contains(strings.ToUpper(got), "SCOOPS OF ORE")) {
							t.Errorf("%s %v ascii %v: no %q in blocks:\n%s", name, size, th.ASCII, text, got)
						}
					}
				}
			}
		}
	}
	for _, s := range farScenes() {
		if title := map[string]string{"far-late": "BLAST LOST", "far-warned": "TUYERE BLOCKED"}[s.Name]; title != "" {
			if got := ansi.Strip(farFrame(theme.Theme{}, 120, 36, s)); !lettered(got, theme.Theme{}, title) {
				t.Errorf("%s: no %q in letters:\n%s", s.Name, title, got)
			}
		}
	}
}

// NOT KEPT and its reason are said at every size of the far view.
func TestFarSaysWhatIsNotKept(t *testing.T) {
	for _, s := range farScenes() {
		if s.Name != "far-notkept" {
			continue
		}
		for w := draw.MinW; w <= 250; w += 10 {
			for h := draw.MinH; h <= 80; h += 4 {
				got := ansi.Strip(farFrame(theme.Theme{}, w, h, s))
				if !strings.Contains(got, "NOT KEPT 3") && !stands(got, theme.Theme{}, "!! NOT KEPT 3") && !lettered(got, theme.Theme{}, "NOT KEPT 3") || !strings.Contains(got, "make room on the disk") {
					t.Fatalf("%dx%d:\n%s", w, h, got)
				}
			}
		}
	}
}

// A measure in another script, or of a long name, stands in plain letters.
func TestFarNamesAnything(t *testing.T) {
	r := scenes.MidSmelt()
	r.Next[0].Measure, r.Next[1].Measure = "鉄かご", "wheelbarrow with the broken wheel"
	got := ansi.Strip(farFrame(theme.Theme{}, 80, 24, scenes.Scene{R: r, V: scenes.ViewOf(r)}))
	for _, want := range []string{"1 鉄かご", "wheelbarrow with the broken wheels"} {
		if !strings.Contains(got, want) {
			t.Errorf("no %q:\n%s", want, got)
		}
	}
	r.Next[0].Measure, r.Next[1].Measure = "bucket", "bucket"
	lines := penOf(theme.Theme{}).farCharge(r, scenes.ViewOf(r))
	if fmt.Sprint(lines) != "[1 bucket of charcoal 4 buckets of ore]" {
		t.Errorf("one measure for both says %q", lines)
	}
	if r.OreHeld = true; penOf(theme.Theme{}).farCharge(r, scenes.ViewOf(r))[2] != modelwords.OreIsHeld {
		t.Error("held ore is not said")
	}
}

// In the far view titles are at most three words and the remedy stands in full.
func TestFarWarningsStandInFull(t *testing.T) {
	for _, size := range [][2]int{{80, 24}, {120, 36}, {200, 60}} {
		for _, ascii := range []bool{false, true} {
			r, v := scenes.MidSmelt(), scenes.ViewOf(scenes.MidSmelt())
			for _, ws := range scenes.Worst(func(id rule.ID) rule.Warning { return scenes.Standing(r, id, scenes.Longest(id)) }) {
				v.Warnings = ws
				title, _, remedy := modelwords.Units{}.Warning(ws[0])
				if n := len(strings.Fields(title)); n > 3 {
					t.Errorf("%q has %d words", title, n)
				}
				th := theme.Theme{ASCII: ascii}
				text := strings.Join(strings.Fields(ansi.Strip(farFrame(th, size[0], size[1], scenes.Scene{R: r, V: v}))), " ")
				for _, since := range []string{" +1, seen, 14:29", " +1"} {
					text = strings.Replace(text, since, "", 1)
				}
				if !strings.Contains(text, remedy) {
					t.Errorf("%v ascii %v: %q is not in full", size, ascii, remedy)
				}
			}
		}
	}
}

// Where there is room for a line or two only, what is wrong is said and the
// remedy begins: no size hides a warning.
func TestNoWindowHidesAWarning(t *testing.T) {
	for w := draw.MinW; w <= 250; w += 14 {
		for h := draw.MinH; h <= 80; h += 2 {
			{
				r, v := scenes.MidSmelt(), scenes.ViewOf(scenes.MidSmelt())
				warning := scenes.Standing(r, rule.BlastLost, scenes.Longest(rule.BlastLost))
				v.Warnings = []rule.Warning{warning, warning}
				s := scenes.Scene{R: r, V: v}
				text := strings.Join(strings.Fields(ansi.Strip(farFrame(theme.Theme{}, w, h, s))), " ")
				if !strings.Contains(text, "take the blower off") {
					t.Fatalf("%dx%d:\n%s", w, h, ansi.Strip(farFrame(theme.Theme{}, w, h, s)))
				}
			}
		}
	}
}

// The far view keeps its minutes and its charge under a caution, in a cramped
// window its digits as they are; in a roomy one the card takes the place of the
// spread and the letters get smaller.
func TestFarCautionLeavesDigitsAndCharge(t *testing.T) {
	for w := draw.MinW; w <= 250; w += 15 {
		for h := draw.MinH; h <= 80; h += 4 {
			r, v := scenes.MidSmelt(), scenes.ViewOf(scenes.MidSmelt())
			th := theme.Theme{}
			without, with := th.Grid(w, h), th.Grid(w, h)
			far(without, th, r, v)
			v.Caution = scenes.CautionOf(rule.MoltenSlag)
			far(with, th, r, v)
			l := farLayoutOf(w, h, penOf(th).farHigh(w, h, farTimedBy(r, v)), 0, 5, 0)
			if a, b := without.Sub(l.Digits).String(), with.Sub(l.Digits).String(); a != b && scene.SizeOf(w, h) == scene.Cramped {
				t.Fatalf("%dx%d: the digits changed:\n%s", w, h, with)
			}
			text := with.String()
			if !stands(text, th, "1 BUCKET") && !lettered(text, th, "1 BUCKET") && !strings.Contains(text, "1 bucket") {
				t.Fatalf("%dx%d: no charge:\n%s", w, h, text)
			}
		}
	}
}

// Every caution stands in full in the far view,
// and wherever it is cut the care outlives the fact.
func TestCautionsStandInFull(t *testing.T) {
	for _, c := range rule.Cautions {
		v := scenes.ViewOf(scenes.JustLit())
		v.Caution = scenes.CautionOf(c.ID)
		for _, size := range [][2]int{{80, 24}, {100, 30}, {120, 36}, {200, 60}} {
			th := theme.Theme{}
			g := th.Grid(size[0], size[1])
			far(g, th, scenes.JustLit(), v)
			for where, text := range map[string]string{"far": g.String()} {
				text = strings.Join(strings.Fields(strings.NewReplacer("│", " ", "─", " ").Replace(text)), " ")
				for _, want := range []string{v.Caution.Title, v.Caution.Fact, v.Caution.Care, v.Caution.Local} {
					if !strings.Contains(text, want) {
						t.Errorf("%s %v: no %q in\n%s", where, size, want, text)
					}
				}
			}
		}
	}
}

func TestEveryFrameFitsItsWindow(t *testing.T) {
	for w := draw.MinW - 8; w <= 250; w += 11 {
		for h := draw.MinH - 3; h <= 80; h += 5 {
			for i, s := range farScenes() {
				th := theme.Theme{Profile: theme.Profile(i % 4), Light: i%2 == 0, ASCII: i%3 == 0}
				rows := strings.Split(farFrame(th, w, h, s), "\n")
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

func TestAsciiThemePrintsAscii(t *testing.T) {
	for _, s := range farScenes() {
		s.V.Title, s.R.By = "Ørkenæs 鉄 –", "Åse"
		for i, c := range farFrame(theme.Theme{ASCII: true}, 120, 36, s) {
			if c > 0x7e {
				t.Fatalf("%s: %q at %d", s.Name, c, i)
			}
		}
	}
}

// Without colour the same characters stand: a state that only a colour told
// would be lost.
func TestColourChangesNoCharacter(t *testing.T) {
	for _, s := range farScenes() {
		plain := ansi.Strip(farFrame(theme.Theme{}, 120, 36, s))
		for p := theme.Base16; p <= theme.True; p++ {
			if got := ansi.Strip(farFrame(theme.Theme{Profile: p}, 120, 36, s)); got != plain {
				t.Errorf("%s: profile %d shows other characters", s.Name, p)
			}
		}
	}
}

func FuzzFar(f *testing.F) {
	scenes.Fuzz(f, func(g cell.Grid, p draw.Pen, r *figure.Reading, v scene.View) { paintFar(g, pen{p}, r, v) })
}

func FuzzDecision(f *testing.F) {
	scenes.Fuzz(f, func(g cell.Grid, p draw.Pen, r *figure.Reading, v scene.View) { paintDecision(g, pen{p}, r, v) })
}

func benchmarkScene(b *testing.B, name string) {
	for _, s := range farScenes() {
		if s.Name != name {
			continue
		}
		for _, size := range [][2]int{{80, 24}, {200, 60}} {
			b.Run(fmt.Sprintf("%dx%d", size[0], size[1]), func(b *testing.B) {
				b.ReportAllocs()
				for b.Loop() {
					_ = farFrame(theme.Theme{Profile: theme.Fixed256}, size[0], size[1], s)
				}
			})
		}
	}
}

func BenchmarkFar(b *testing.B) { benchmarkScene(b, "far-late") }

func BenchmarkDecision(b *testing.B) { benchmarkScene(b, "decide") }

// What must be acted on says what to do in letters that a window of 120 columns has
// room for.
func TestStepsOfEveryAct(t *testing.T) {
	for _, row := range rule.Table {
		steps := words.FarSteps(row.ID)
		if (row.Grade == rule.Act) != (len(steps) > 0) {
			t.Errorf("%s is %s and has %d steps", row.ID, row.Grade, len(steps))
		}
		for _, s := range steps {
			capital, all := letter.Capitals(s)
			if w, _ := letter.Small.Size(capital); !all || w > 120-9 {
				t.Errorf("%s: %q takes %d columns, all letters known: %v", row.ID, s, w, all)
			}
		}
	}
}
