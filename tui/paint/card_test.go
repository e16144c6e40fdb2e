package paint

import (
	"strings"
	"testing"
	"time"

	"github.com/charmbracelet/x/ansi"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/rule"
	"chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/theme"
)

// sayings are the reasons of each way, as the decision card orders them.
func sayings(r figure.Reading, v FireView) (said [3]string) {
	for i, w := range with(theme.Theme{}).ways(r, v) {
		said[i] = strings.Join(w.reasons, "; ")
	}
	return said
}

// Each figure speaks for the way that it speaks for, and for no other.
func TestDecisionPutsFiguresWhereTheySpeak(t *testing.T) {
	down := readyDown()
	yellow := &Sight{Sees: entry.FlameYellow, At: down.At}
	gone := readyDown()
	gone.Figures[figure.StackHeight] = known(0, 2, 4, figure.Measured)
	gone.Layers = []figure.Layer{{Charge: 24, Top: 2, Ore: exactly(0.2)}}
	early := readyDown()
	early.Since = early.At - 12*time.Minute
	little := readyDown()
	little.Figures[figure.OreCharged] = known(4.8, 5, 5.2, figure.Measured)
	oreless := readyDown()
	for i := range oreless.Charges {
		oreless.Charges[i].Ore = exactly(0)
	}
	blown := midSmelt()
	blown.BlastOff, blown.BlastAt = true, blown.At-14*time.Minute
	cold := FireView{Warnings: []rule.Warning{standing(down, rule.HearthCold, rule.Evidence{{Name: "seen", Word: "red"}})}}
	for name, c := range map[string]struct {
		r    figure.Reading
		v    FireView
		way  int
		says string
	}{
		"long enough":   {down, FireView{}, toExtract, words.BurnDownFor(29*time.Minute, figure.BurnDownLeast, figure.BurnDownMost)},
		"too short":     {early, FireView{}, toWait, words.BurnDownFor(12*time.Minute, figure.BurnDownLeast, figure.BurnDownMost)},
		"not begun":     {midSmelt(), FireView{}, toWait, words.NotBurningDown},
		"burden stands": {down, FireView{}, toWait, "burden 11 cm above the tuyere"},
		"burden down":   {gone, FireView{}, toExtract, "burden 2 cm above the tuyere, measured"},
		"ore stands":    {down, FireView{}, toWait, "ore of charge 24 still 6 cm above the tuyere, last ore 44 min ago"},
		"ore through":   {gone, FireView{}, toExtract, words.OreAllThrough},
		"flame yellow":  {down, FireView{Flame: yellow}, toExtract, words.FlameUsedUp},
		"flame pale":    {down, FireView{Flame: &Sight{Sees: entry.FlamePale}}, toWait, words.FlameWorks},
		"flame unseen":  {down, FireView{}, toWait, words.FlameUnseen},
		"ore enough":    {down, FireView{}, toExtract, "30 kg of ore is in"},
		"ore little":    {little, FireView{}, toGiveUp, "only 5 kg of ore is in"},
		"no ore":        {oreless, FireView{}, toGiveUp, words.NoOreForBloom},
		"blast off":     {blown, FireView{}, toGiveUp, "blast off for 14 min"},
		"hearth cold":   {down, cold, toGiveUp, "hearth cold: peep red"},
	} {
		for way, said := range sayings(c.r, c.v) {
			if has := strings.Contains(said, c.says); has != (way == c.way) {
				t.Errorf("%s: way %d says %q; %q belongs to way %d", name, way, said, c.says, c.way)
			}
		}
	}
}

// The ways stand in the same order and in the same look whatever speaks for
// them, each with its key.
func TestDecisionDecidesNothing(t *testing.T) {
	for _, s := range screens() {
		if !strings.HasPrefix(s.name, "decide") {
			continue
		}
		for _, size := range [][2]int{{40, 12}, {80, 24}, {120, 36}, {200, 60}} {
			text := ansi.Strip(frame(theme.Theme{}, size[0], size[1], s))
			at := -1
			for _, head := range []string{"(e) extract", "(w) wait", "(g) give up"} {
				i := strings.Index(text, head)
				if i <= at {
					t.Errorf("%s %v: %q stands at %d after %d:\n%s", s.name, size, head, i, at, text)
				}
				at = i
			}
		}
	}
}

func TestBurnDownCardSaysWhatTheEndIsJudgedBy(t *testing.T) {
	for _, s := range screens() {
		if s.name != "down" {
			continue
		}
		for _, size := range [][2]int{{80, 24}, {120, 36}, {200, 60}} {
			text := ansi.Strip(frame(theme.Theme{}, size[0], size[1], s))
			wants := append([]string{"burning down for", "usual 27 to 35 min", "44 min ago", "11 ±3 cm", "yellow, 14:28", "MK"}, words.ReadyChecks...)
			for _, want := range wants {
				if !strings.Contains(text, want) {
					t.Errorf("%v: no %q:\n%s", size, want, text)
				}
			}
			if strings.Count(text, "[x]") != 3 || strings.Count(text, "[ ]") != 2 {
				t.Errorf("%v: the ticks are not those of the list:\n%s", size, text)
			}
		}
		s.v.Flame, s.v.Closer, s.v.Ready = nil, "", nil
		s.r.Figures[figure.StackHeight] = figure.Figure{Basis: figure.Unknown}
		text := ansi.Strip(frame(theme.Theme{}, 80, 24, s))
		for _, want := range []string{words.CardNoFlame, words.CardNobody, words.CardUnknown} {
			if !strings.Contains(text, want) {
				t.Errorf("no %q:\n%s", want, text)
			}
		}
		if strings.Contains(text, "[ ]") {
			t.Error("boxes that nobody can tick")
		}
	}
}

func TestBurnDownStandsToTheUsual(t *testing.T) {
	for minutes, want := range map[int]string{0: "27 min short of it", 26: "1 min short of it", 27: words.CardUsualDone, 35: words.CardUsualDone, 36: "1 min past it"} {
		if got := words.BurnDownStands(time.Duration(minutes)*time.Minute+59*time.Second, figure.BurnDownLeast, figure.BurnDownMost); got != want {
			t.Errorf("%d min: %q, want %q", minutes, got, want)
		}
	}
}

// A caution hides neither the timer, nor the next charge, nor a warning, nor
// the foot: outside of its own room every cell is as it was.
func TestCautionHidesNothingThatMatters(t *testing.T) {
	for _, warned := range []bool{false, true} {
		for w := MinW; w <= 250; w += 9 {
			for h := MinH; h <= 80; h += 3 {
				r, v := midSmelt(), viewOf(midSmelt())
				if warned {
					v.Warnings = []rule.Warning{standing(r, rule.BlastLost, longest(rule.BlastLost))}
				}
				th := theme.Theme{}
				without, with := th.Grid(w, h), th.Grid(w, h)
				Fire(without, th, r, v)
				v.Caution = cautionOf(rule.BlowBack)
				Fire(with, th, r, v)
				if shows := CautionShows(w, h, false, warned); shows == (with.String() == without.String()) {
					t.Fatalf("%dx%d warned %v: shows %v:\n%s", w, h, warned, shows, with)
				}
				l := LayoutOf(w, h)
				for _, room := range []cell.Rect{l.Top, l.Timer, l.Next, l.Foot} {
					if a, b := without.Sub(room).String(), with.Sub(room).String(); a != b {
						t.Fatalf("%dx%d: the caution covers %+v:\n%s", w, h, room, with)
					}
				}
				if warned && without.Sub(rightOf(l, w)).String() != with.Sub(rightOf(l, w)).String() {
					t.Fatalf("%dx%d: the caution covers the warning:\n%s", w, h, with)
				}
			}
		}
	}
}

// Every caution stands in full where the shaft is drawn and in the far view,
// and wherever it is cut the care outlives the fact.
func TestCautionsStandInFull(t *testing.T) {
	for _, c := range rule.Cautions {
		v := viewOf(justLit())
		v.Caution = cautionOf(c.ID)
		for _, size := range [][2]int{{80, 24}, {100, 30}, {120, 36}, {200, 60}} {
			l := LayoutOf(size[0], size[1])
			th := theme.Theme{}
			g := th.Grid(size[0], size[1])
			Fire(g, th, justLit(), v)
			shaft := g.Sub(l.Shaft).String()
			g = th.Grid(size[0], size[1])
			Far(g, th, justLit(), v)
			for where, text := range map[string]string{"fire": shaft, "far": g.String()} {
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

// The far view keeps its digits and its charge under a caution.
func TestFarCautionLeavesDigitsAndCharge(t *testing.T) {
	for w := MinW; w <= 250; w += 15 {
		for h := MinH; h <= 80; h += 4 {
			r, v := midSmelt(), viewOf(midSmelt())
			th := theme.Theme{}
			without, with := th.Grid(w, h), th.Grid(w, h)
			Far(without, th, r, v)
			v.Caution = cautionOf(rule.MoltenSlag)
			Far(with, th, r, v)
			l := farLayoutOf(w, h, painter{th: th, m: th.Marks()}.farHigh(w, h, farTimedBy(r, v)), 0, 5, 0)
			if a, b := without.Sub(l.Digits).String(), with.Sub(l.Digits).String(); a != b {
				t.Fatalf("%dx%d: the digits changed:\n%s", w, h, with)
			}
			text := with.String()
			if !stands(text, th, "1 BUCKET") && !strings.Contains(text, "1 bucket") {
				t.Fatalf("%dx%d: no charge:\n%s", w, h, text)
			}
		}
	}
}

// All that has to be ready stands on the card, a warning beside it or not.
func TestAWarningLeavesTheReadyList(t *testing.T) {
	r := readyDown()
	for _, size := range [][2]int{{80, 24}, {100, 30}, {120, 36}, {200, 60}} {
		for _, ws := range [][]rule.Warning{nil, {standing(r, rule.BlastLost, longest(rule.BlastLost))}} {
			v := viewOf(r)
			v.Warnings, v.Ready = ws, make([]bool, len(words.ReadyChecks))
			g := theme.Theme{}.Grid(size[0], size[1])
			Fire(g, theme.Theme{}, r, v)
			for _, check := range words.ReadyChecks {
				if !strings.Contains(g.String(), check) {
					t.Errorf("%v, %d warnings: %q is missing\n%s", size, len(ws), check, g)
				}
			}
		}
	}
}
