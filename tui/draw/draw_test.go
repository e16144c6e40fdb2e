package draw_test

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/charmbracelet/x/exp/golden"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/picture"
	"chargehand/model/rule"
	modelwords "chargehand/model/words"
	"chargehand/physics"
	"chargehand/tui/draw"
	"chargehand/tui/scene/scenes"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// A digit taken for another is a charge at the wrong time, a letter taken for a
// digit a wrong charge: no two look alike at any size.
func TestDigitsAndLettersDiffer(t *testing.T) {
	for _, th := range []theme.Theme{{}, {ASCII: true}} {
		p := draw.With(th, modelwords.Units{})
		for wide := 1; wide <= 9; wide++ {
			for high := p.Whole(wide); high <= 2*wide; high += p.Whole(1) {
				seen := map[string]rune{}
				for _, font := range []map[rune][5]string{draw.Dots, draw.BigLetters} {
					for c := range font {
						if c == ' ' {
							continue
						}
						g := th.Grid(draw.DotsWide(string(c))*wide+1, draw.DigitRows(high))
						p.Block(g, 0, 0, string(c), wide, high, th.Style(theme.Now))
						if other, twice := seen[g.String()]; twice {
							t.Errorf("%+v %d by %d: %q looks like %q", th, wide, high, c, other)
						}
						seen[g.String()] = c
					}
				}
			}
		}
		for scale := 1; scale <= 5; scale++ { // as the timer of Fire draws its digits
			seen := map[string]rune{}
			for c := range draw.Dots {
				if c == ' ' {
					continue
				}
				w, h := draw.BigSize(string(c), scale)
				g := th.Grid(w+1, h)
				p.Big(g, 0, 0, string(c), scale, th.Style(theme.Now))
				if other, twice := seen[g.String()]; twice {
					t.Errorf("%+v scale %d: %q looks like %q", th, scale, c, other)
				}
				seen[g.String()] = c
			}
		}
	}
}

// Every word of the far view has its letters.
func TestTheAlphabetIsWhole(t *testing.T) {
	for c := 'A'; c <= 'Z'; c++ {
		if _, ok := draw.BigLetters[c]; !ok {
			t.Errorf("no %c", c)
		}
	}
	for _, row := range rule.Table {
		title, _, _ := modelwords.Units{}.Warning(rule.Warning{Rule: row.ID})
		if _, ok := draw.Capitals(title); !ok {
			t.Errorf("%q has no Blocks", title)
		}
	}
	if text, ok := draw.Capitals("4 Körbe"); !ok || text != "4 KORBE" {
		t.Errorf("%q %v", text, ok)
	}
	if _, ok := draw.Capitals("4 鉄"); ok {
		t.Error("a sign without a block is said to have one")
	}
}

// The shaft is to scale: the labels of its scale, the charging mark and the
// number of each charge stand where their heights are, to half a row.
func TestShaftIsToScale(t *testing.T) {
	pic := picture.From(scenes.MidSmelt())
	for _, size := range [][2]int{{38, 18}, {52, 26}, {103, 43}} {
		g := theme.Theme{}.Grid(size[0], size[1])
		draw.With(theme.Theme{}, modelwords.Units{}).Shaft(g, pic, draw.ShaftView{})
		place, numbers := draw.ShaftPlace(pic, size[0], size[1])
		numbered := 0
		for y, row := range strings.Split(g.String(), "\n")[1 : size[1]-1] {
			cells := []rune(row)
			at := place.CM(y + 1)
			scale := strings.TrimSpace(strings.ReplaceAll(string(cells[:3]), "−", "-"))
			if cm, err := strconv.ParseFloat(scale, 64); err == nil && math.Abs(at-cm) > place.PerRow/2+1e-9 {
				t.Errorf("%v: %v cm stands at %.1f", size, cm, at)
			}
			if strings.Contains(row, modelwords.MarkWord) && math.Abs(at-pic.Mark) > place.PerRow/2+1e-9 {
				t.Errorf("%v: the mark stands at %.1f", size, at)
			}
			for _, s := range pic.Slices {
				if strings.TrimSpace(string(cells[numbers:numbers+2])) == strconv.Itoa(s.Charge) && s.Charge > 0 {
					numbered++
					if below := s.Top - at; below < -1e-9 || below > 1.01*place.PerRow {
						t.Errorf("%v: charge %d stands at %.1f, its top at %.1f", size, s.Charge, at, s.Top)
					}
				}
			}
		}
		if numbered < 5 {
			t.Errorf("%v: only %d charges have a number:\n%s", size, numbered, g)
		}
	}
}

// Where names crowd each other there is one row for each, and where that has no room
// for a temperature with its spread it has none: a bare number reads as measured.
func TestNoTemperatureStandsWithoutItsSpread(t *testing.T) {
	pic := picture.From(scenes.MidSmelt())
	for i := range pic.Labels { // all of them within a third of the burden
		l := &pic.Labels[i]
		l.Top, l.Bottom = l.Top/3+20, l.Bottom/3+20
		l.Spread = physics.Band{P10: l.Degrees - 200, P50: l.Degrees, P90: l.Degrees + 200}
	}
	for _, size := range [][2]int{{38, 18}, {52, 26}, {103, 43}} {
		g := theme.Theme{}.Grid(size[0], size[1])
		draw.With(theme.Theme{}, modelwords.Units{}).Shaft(g, pic, draw.ShaftView{})
		said, bare := 0, false
		for _, row := range strings.Split(g.String(), "\n")[1:] {
			for _, l := range pic.Labels {
				_, after, is := strings.Cut(row, modelwords.Process(l.What))
				if is {
					said++
					bare = bare || strings.ContainsAny(after, "0123456789") && !strings.Contains(after, "±") && !strings.Contains(after, "under ")
				}
			}
		}
		if said < 4 || bare {
			t.Errorf("%v: %d names, a temperature without its spread: %v\n%s", size, said, bare, g)
		}
	}
}

// Where the meter is not believed the zones, which rest on its blast, say so over them in
// every window.
func TestZonesSayThatTheMeterIsNotBelieved(t *testing.T) {
	pic := picture.From(scenes.MidSmelt())
	for _, size := range [][2]int{{24, 12}, {38, 18}, {52, 26}, {103, 43}} {
		head := func() string {
			g := theme.Theme{}.Grid(size[0], size[1])
			draw.With(theme.Theme{}, modelwords.Units{}).Shaft(g, pic, draw.ShaftView{})
			first, _, _ := strings.Cut(g.String(), "\n")
			return first
		}
		says := func(head string) bool {
			return strings.Contains(head, words.MeterNotBelieved) || strings.Contains(head, words.MeterDoubted)
		}
		if pic.Doubted = false; says(head()) {
			t.Errorf("%v: %q of a meter that is believed", size, head())
		}
		if pic.Doubted = true; !says(head()) {
			t.Errorf("%v: %q", size, head())
		}
	}
}

// Shafts that Fire does not show yet, or seldom: a tall one, a short one, and
// slag and a bloom below the tuyere.
func TestGoldenShaft(t *testing.T) {
	tall := picture.From(scenes.MidSmelt())
	tall.Mark, tall.Top, tall.Bore, tall.BoreTop, tall.Floor = 110, 118, 40, 30, -25
	tall.Bath, tall.Bloom = -6, 12
	short := picture.From(scenes.MidSmelt())
	short.Mark, short.Top, short.Bore, short.BoreTop = 35, 39, 20, 20
	short.Slices = short.Slices[2:]
	for name, pic := range map[string]picture.Picture{"tall": tall, "short": short} {
		for _, size := range [][2]int{{38, 18}, {103, 43}} {
			t.Run(fmt.Sprintf("%s-%dx%d", name, size[0], size[1]), func(t *testing.T) {
				g := theme.Theme{}.Grid(size[0], size[1])
				draw.With(theme.Theme{}, modelwords.Units{}).Shaft(g, pic, draw.ShaftView{})
				golden.RequireEqual(t, g.String())
			})
		}
	}
}

func TestTimerSaysWhatItCounts(t *testing.T) {
	mid, paused := scenes.MidSmelt(), scenes.MidSmelt()
	paused.Paused = true
	for name, c := range map[string]struct {
		got           draw.Timed
		label, digits string
	}{
		"lit":        {draw.TimedBy(scenes.JustLit(), nil), modelwords.SinceLit, "14:00"},
		"since":      {draw.TimedBy(mid, nil), modelwords.SinceLastCharge, "8:40"},
		"due":        {draw.TimedBy(mid, scenes.Ahead(mid, 12.3)), modelwords.NextChargeIn + ", last 8:40 ago", "4"},
		"now":        {draw.TimedBy(mid, scenes.Ahead(mid, 8.5)), modelwords.NextChargeIn + ", last 8:40 ago", "0"},
		"late":       {draw.TimedBy(mid, scenes.Ahead(mid, 4.5)), modelwords.ChargeLate, "4:10"},
		"paused":     {draw.TimedBy(paused, scenes.Ahead(mid, 4.5)), modelwords.SinceLastCharge, "8:40"},
		"burns down": {draw.TimedBy(scenes.BurnDown(), nil), modelwords.BurningDown, "11:00"},
	} {
		if c.got.Label != c.label || c.got.Digits != c.digits {
			t.Errorf("%s: %q %q, want %q %q", name, c.got.Label, c.got.Digits, c.label, c.digits)
		}
	}
	mid.Figures[figure.SinceCharge] = scenes.Exactly((14*time.Minute + 30*time.Second).Seconds())
	if got := draw.TimedBy(mid, nil).Below; got != "3 min past the usual 11" {
		t.Errorf("past the usual: %q", got)
	}
}

// The eye learns the place of a figure: whatever is known, the same names
// stand in the same order.
func TestFiguresKeepTheirPlaces(t *testing.T) {
	all := scenes.MidSmelt()
	all.Figures[figure.BackPressure] = scenes.Exactly(900)
	want := draw.With(theme.Theme{}, modelwords.Units{}).FigureLines(all)
	for _, s := range scenes.All() {
		for i, l := range draw.With(theme.Theme{}, modelwords.Units{}).FigureLines(s.R) {
			if l.Name != want[i].Name || l.Value == "" {
				t.Errorf("%s: line %d is %q %q, not %q", s.Name, i, l.Name, l.Value, want[i].Name)
			}
		}
	}
}

// The longest interval is the tallest bar, and a charge without ore has none
// below.
func TestStripShowsMinutesAndOre(t *testing.T) {
	r := scenes.MidSmelt()
	r.Charges = []figure.Charge{
		{Number: 1, Ore: scenes.Exactly(0)}, {Number: 2, Minutes: 5, Ore: scenes.Exactly(1)}, {Number: 3, Minutes: 10, Ore: scenes.Exactly(2)}, {Number: 4, Minutes: 20, Ore: scenes.Exactly(0)},
	}
	r.Usual, r.Phase = 10*time.Minute, entry.BurnsDown
	th := theme.Theme{}
	g := th.Grid(80, 12)
	draw.With(th, modelwords.Units{}).Strip(g, r)
	m := th.Marks()
	var up, down [4]int // whole cells, half cells
	axis := 6
	for y, row := range strings.Split(g.String(), "\n")[1:] {
		cells := []rune(row)
		for i := range up {
			switch c := cells[13+6*i]; {
			case y+1 < axis && c == m.Full:
				up[i]++
			case y+1 > axis && c == m.HangFull:
				down[i] += 2
			case y+1 > axis && c == m.Hang:
				down[i]++
			}
		}
	}
	if up != [4]int{0, 1, 2, 5} || down != [4]int{0, 5, 10, 0} {
		t.Errorf("up %v, down %v:\n%s", up, down, g)
	}
}

func TestBurnDownStandsToTheUsual(t *testing.T) {
	for minutes, want := range map[int]string{0: "27 min short of it", 26: "1 min short of it", 27: words.CardUsualDone, 35: words.CardUsualDone, 36: "1 min past it"} {
		if got := words.BurnDownStands(time.Duration(minutes)*time.Minute+59*time.Second, figure.BurnDownLeast, figure.BurnDownMost); got != want {
			t.Errorf("%d min: %q, want %q", minutes, got, want)
		}
	}
}

// A little iron to come is not told as none.
func TestSmallBloomIsNotToldAsNone(t *testing.T) {
	for _, c := range []struct {
		low, high float64
		says      string
	}{{0.05, 0.34, "0.1 to 0.3 kg"}, {0.6, 1.9, "0.6 to 1.9 kg"}, {1.2, 8.7, "1 to 9 kg"}} {
		r := scenes.MidSmelt()
		r.Bloom = entry.None[float64]()
		r.Figures[figure.BloomEnd] = figure.Figure{Band: physics.Band{P10: c.low, P50: (c.low + c.high) / 2, P90: c.high}, Basis: figure.Guessed}
		if l := draw.With(theme.Theme{}, modelwords.Units{}).BloomLine(r); !strings.Contains(l.Value, c.says) {
			t.Errorf("%g to %g kg reads %q, want %q", c.low, c.high, l.Value, c.says)
		}
	}
}

// A charge keyed while a list is open is not booked: the foot says so where it
// asks, whatever the list.
func TestRefusedKeyIsAnsweredInAnOpenList(t *testing.T) {
	th := theme.Theme{}
	ask := &draw.Ask{Label: words.LookWhere, Hint: words.EscCloses}
	foot := func(a draw.Answer) string {
		g := th.Grid(80, draw.FootRows)
		draw.With(th, modelwords.Units{}).Foot(g, a, ask, nil, draw.KeyHint{})
		return g.String()
	}
	why := words.NotInList("c")
	if said := foot(draw.Answer{Text: why, State: draw.Refused}); !strings.Contains(said, words.LookWhere) || !strings.Contains(said, "none on c") {
		t.Errorf("a refused key is not answered:\n%s", said)
	}
	if said := foot(draw.Answer{Text: "charge 1", State: draw.IsKept}); !strings.Contains(said, words.EscCloses) || strings.Contains(said, "charge 1") {
		t.Errorf("the answer to an earlier act stands beside the question:\n%s", said)
	}
}
