package paint

import (
	"math"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/charmbracelet/x/ansi"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/forecast"
	"chargehand/model/picture"
	"chargehand/model/rule"
	"chargehand/model/words"
	"chargehand/tui/theme"
)

// A digit taken for another is a charge at the wrong time, a letter taken for a
// digit a wrong charge: no two look alike at any size.
func TestDigitsAndLettersDiffer(t *testing.T) {
	for _, th := range []theme.Theme{{}, {ASCII: true}} {
		p := with(th)
		for wide := 1; wide <= 9; wide++ {
			for high := p.whole(wide); high <= 2*wide; high += p.whole(1) {
				seen := map[string]rune{}
				for _, font := range []map[rune][5]string{dots, letters} {
					for c := range font {
						if c == ' ' {
							continue
						}
						g := th.Grid(dotsWide(string(c))*wide+1, digitRows(high))
						p.block(g, 0, 0, string(c), wide, high, th.Style(theme.Now))
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
			for c := range dots {
				if c == ' ' {
					continue
				}
				w, h := BigSize(string(c), scale)
				g := th.Grid(w+1, h)
				Big(g, th, 0, 0, string(c), scale, th.Style(theme.Now))
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
		if _, ok := letters[c]; !ok {
			t.Errorf("no %c", c)
		}
	}
	for _, row := range rule.Table {
		title, _, _ := words.Units{}.Warning(rule.Warning{Rule: row.ID})
		if _, ok := capitals(title); !ok {
			t.Errorf("%q has no blocks", title)
		}
	}
	if text, ok := capitals("4 Körbe"); !ok || text != "4 KORBE" {
		t.Errorf("%q %v", text, ok)
	}
	if _, ok := capitals("4 鉄"); ok {
		t.Error("a sign without a block is said to have one")
	}
}

// The shaft is to scale: the labels of its scale, the charging mark and the
// number of each charge stand where their heights are, to half a row.
func TestShaftIsToScale(t *testing.T) {
	pic := picture.From(midSmelt())
	for _, size := range [][2]int{{31, 19}, {44, 27}, {72, 47}} {
		g := theme.Theme{}.Grid(size[0], size[1])
		with(theme.Theme{}).shaft(g, pic, false)
		rows := strings.Split(g.String(), "\n")
		perRow := (pic.Top - pic.Floor) / float64(len(rows)-2)
		at := func(row int) float64 { return pic.Top - (float64(row-1)+0.5)*perRow }
		numbered := 0
		for y, row := range rows[1:] {
			scale, inside, _ := strings.Cut(row, string(theme.Theme{}.Marks().Wall))
			if cm, err := strconv.ParseFloat(strings.Fields(scale + " none")[0], 64); err == nil && math.Abs(at(y+1)-cm) > perRow/2+1e-9 {
				t.Errorf("%v: %v cm stands at %.1f", size, cm, at(y+1))
			}
			if strings.Contains(row, words.MarkWord) && math.Abs(at(y+1)-pic.Mark) > perRow/2+1e-9 {
				t.Errorf("%v: the mark stands at %.1f", size, at(y+1))
			}
			for _, s := range pic.Slices {
				if strings.Contains(inside, " "+strconv.Itoa(s.Charge)+" ") {
					numbered++
					if math.Abs(at(y+1)-s.Top) > perRow/2+1e-9 {
						t.Errorf("%v: charge %d stands at %.1f, not %.1f", size, s.Charge, at(y+1), s.Top)
					}
				}
			}
		}
		if numbered < 5 {
			t.Errorf("%v: only %d charges have a number:\n%s", size, numbered, g)
		}
	}
}

func TestTuyereStandsOnItsSide(t *testing.T) {
	m := theme.Theme{}.Marks()
	for right, mouth := range map[bool]rune{false: m.Nozzle, true: m.NozzleR} {
		r := midSmelt()
		r.Light.Furnace.TuyereRight = right
		text := ansi.Strip(frame(theme.Theme{}, 120, 36, scene{r: r}))
		if !strings.ContainsRune(text, mouth) {
			t.Errorf("right %v: no %q", right, mouth)
		}
		r.BlastOff = true
		if text := ansi.Strip(frame(theme.Theme{}, 120, 36, scene{r: r})); strings.ContainsRune(text, mouth) {
			t.Errorf("right %v: the mouth is open without blast", right)
		}
	}
}

func TestTimerSaysWhatItCounts(t *testing.T) {
	mid, paused := midSmelt(), midSmelt()
	paused.Paused = true
	for name, c := range map[string]struct {
		got           timed
		label, digits string
	}{
		"lit":        {timedBy(justLit(), nil), words.SinceLit, "14:00"},
		"since":      {timedBy(mid, nil), words.SinceLastCharge, "8:40"},
		"due":        {timedBy(mid, ahead(mid, 12.3)), words.NextChargeIn + ", last 8:40 ago", "4"},
		"now":        {timedBy(mid, ahead(mid, 8.5)), words.NextChargeIn + ", last 8:40 ago", "0"},
		"late":       {timedBy(mid, ahead(mid, 4.5)), words.ChargeLate, "4:10"},
		"paused":     {timedBy(paused, ahead(mid, 4.5)), words.SinceLastCharge, "8:40"},
		"burns down": {timedBy(burnDown(), nil), words.BurningDown, "11:00"},
	} {
		if c.got.label != c.label || c.got.digits != c.digits {
			t.Errorf("%s: %q %q, want %q %q", name, c.got.label, c.got.digits, c.label, c.digits)
		}
	}
	mid.Figures[figure.SinceCharge] = exactly((14*time.Minute + 30*time.Second).Seconds())
	if got := timedBy(mid, nil).below; got != "3 min past the usual 11" {
		t.Errorf("past the usual: %q", got)
	}
}

// The eye learns the place of a figure: whatever is known, the same names
// stand in the same order.
func TestFiguresKeepTheirPlaces(t *testing.T) {
	all := midSmelt()
	all.Figures[figure.BackPressure] = exactly(900)
	want := with(theme.Theme{}).figureLines(all)
	for _, s := range scenes() {
		for i, l := range with(theme.Theme{}).figureLines(s.r) {
			if l.name != want[i].name || l.value == "" {
				t.Errorf("%s: line %d is %q %q, not %q", s.name, i, l.name, l.value, want[i].name)
			}
		}
	}
}

// The longest interval is the tallest bar, and a charge without ore has none
// below.
func TestStripShowsMinutesAndOre(t *testing.T) {
	r := midSmelt()
	r.Charges = []figure.Charge{
		{Number: 1, Ore: exactly(0)}, {Number: 2, Minutes: 5, Ore: exactly(1)}, {Number: 3, Minutes: 10, Ore: exactly(2)}, {Number: 4, Minutes: 20, Ore: exactly(0)},
	}
	r.Usual, r.Phase = 10*time.Minute, entry.BurnsDown
	th := theme.Theme{}
	g := th.Grid(80, 12)
	with(th).strip(g, r)
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

// Why the time may be wrong is said in full beside or below it, also while the
// charge is late; and no time to come is said to be nought to nought.
func TestEveryDoubtIsSaidInFull(t *testing.T) {
	for _, size := range [][2]int{{80, 24}, {120, 36}, {200, 60}} {
		for _, minutes := range []float64{2.5, 9.5, 12.3} { // late, nearly due, to come
			for doubt := range forecast.Doubts {
				r, v := midSmelt(), viewOf(midSmelt())
				v.Due = ahead(r, minutes, doubt)
				g := theme.Theme{}.Grid(size[0], size[1])
				Fire(g, theme.Theme{}, r, v)
				l := LayoutOf(size[0], size[1])
				timer := l.Timer
				timer.X++
				text := strings.Join(strings.FieldsFunc(g.Sub(timer).String(), func(c rune) bool { return strings.ContainsRune(" \n█▀▄", c) }), " ")
				if !strings.Contains(strings.ReplaceAll(text, " min ", " "), words.Doubt(doubt)) {
					t.Errorf("%v, %v min: %q is not in full:\n%s", size, minutes, words.Doubt(doubt), g.Sub(timer))
				}
				if all := g.String(); strings.Contains(all, "0 to 0") || strings.Contains(all, "0 and 0") {
					t.Errorf("%v, %v min:\n%s", size, minutes, g)
				}
			}
		}
	}
}
