package scene_test

import (
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"

	"chargehand/model/figure"
	"chargehand/model/rule"
	"chargehand/tui/cell"
	"chargehand/tui/draw"
	"chargehand/tui/scene"
	"chargehand/tui/scene/scenes"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

func TestBurnDownCardSaysWhatTheEndIsJudgedBy(t *testing.T) {
	for _, s := range nearScenes() {
		if s.Name != "down" {
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
			for _, th := range []theme.Theme{{}, {ASCII: true}} { // read from across a yard, in any signs
				if rows := minuteRows(frame(th, size[0], size[1], s), scene.LayoutOf(size[0], size[1]).Timer); rows < size[1]/4 {
					t.Errorf("%v, ASCII %v: the minutes are %d rows high", size, th.ASCII, rows)
				}
			}
			if strings.Count(text, "[x]") != 3 || strings.Count(text, "[ ]") != 2 {
				t.Errorf("%v: the ticks are not those of the list:\n%s", size, text)
			}
		}
		s.V.Ending.Flame, s.V.Ending.Closer, s.V.Ending.Ready = nil, "", nil
		s.R.Figures[figure.StackHeight] = figure.Figure{Basis: figure.Unknown}
		text := ansi.Strip(frame(theme.Theme{}, 120, 36, s))
		for _, want := range []string{words.CardNoFlame, words.CardNobody, words.CardUnknown} {
			if !strings.Contains(text, want) {
				t.Errorf("no %q:\n%s", want, text)
			}
		}
		text = ansi.Strip(frame(theme.Theme{}, 80, 24, s))
		for _, want := range []string{words.CardNoFlameBrief, words.CardNobodyBrief, words.CardUnknownBrief} {
			if !strings.Contains(text, want) {
				t.Errorf("no %q:\n%s", want, text)
			}
		}
		if strings.Contains(text, "[ ]") {
			t.Error("boxes that nobody can tick")
		}
	}
}

// minuteRows is in how many rows there is a bar of the digits.
func minuteRows(picture string, timer cell.Rect) (rows int) {
	for y, line := range strings.Split(ansi.Strip(picture), "\n") {
		if cells := []rune(line); y > timer.Y && y < timer.Bottom() && len(cells) > timer.X+16 && strings.ContainsAny(string(cells[timer.X+2:timer.X+16]), "█▀▄#") {
			rows++
		}
	}
	return rows
}

// A caution hides neither the timer, nor the next charge, nor a warning, nor
// the foot: outside of its own room every cell is as it was.
func TestCautionHidesNothingThatMatters(t *testing.T) {
	for _, warned := range []bool{false, true} {
		for w := draw.MinW; w <= 250; w += 9 {
			for h := draw.MinH; h <= 80; h += 3 {
				r, v := scenes.MidSmelt(), scenes.ViewOf(scenes.MidSmelt())
				if warned {
					v.Warnings = []rule.Warning{scenes.Standing(r, rule.BlastLost, scenes.Longest(rule.BlastLost))}
				}
				th := theme.Theme{}
				without, with := th.Grid(w, h), th.Grid(w, h)
				whole(without, th, r, v)
				v.Caution = scenes.CautionOf(rule.BlowBack)
				whole(with, th, r, v)
				if shows := scene.CautionShows(w, h, false, warned); shows == (with.String() == without.String()) {
					t.Fatalf("%dx%d warned %v: shows %v:\n%s", w, h, warned, shows, with)
				}
				l := scene.LayoutOf(w, h)
				rooms := []cell.Rect{l.Top, l.Timer, l.Next, l.Foot}
				if l.Size > scene.Cramped {
					rooms = append(rooms, l.Shaft)
				}
				for _, room := range rooms {
					if a, b := without.Sub(room).String(), with.Sub(room).String(); a != b {
						t.Fatalf("%dx%d: the caution covers %+v:\n%s", w, h, room, with)
					}
				}
				told := rightOf(l, w)
				if l.Size > scene.Cramped {
					told = l.Notice
				}
				if warned && without.Sub(told).String() != with.Sub(told).String() {
					t.Fatalf("%dx%d: the caution covers the warning:\n%s", w, h, with)
				}
			}
		}
	}
}

// Every caution stands in full where the shaft is drawn, with what puts it away, and
// wherever it is cut the care outlives the fact.
func TestCautionsStandInFull(t *testing.T) {
	for _, c := range rule.Cautions {
		v := scenes.ViewOf(scenes.JustLit())
		v.Caution = scenes.CautionOf(c.ID)
		for _, size := range [][2]int{{80, 24}, {100, 30}, {120, 36}, {200, 60}} {
			l := scene.LayoutOf(size[0], size[1])
			th := theme.Theme{}
			g := th.Grid(size[0], size[1])
			whole(g, th, scenes.JustLit(), v)
			shaft := g.Sub(scene.CautionRoom(l)).String()
			for where, text := range map[string]string{"fire": shaft} {
				text = strings.Join(strings.Fields(strings.NewReplacer("│", " ", "─", " ").Replace(text)), " ")
				for _, want := range []string{v.Caution.Title, v.Caution.Fact, v.Caution.Care, v.Caution.Local} {
					if !strings.Contains(text, want) {
						t.Errorf("%s %v: no %q in\n%s", where, size, want, text)
					}
				}
				if !strings.Contains(text, words.CautionGoes) && !strings.Contains(text, words.CautionEnds) {
					t.Errorf("%s %v: nothing says what puts it away in\n%s", where, size, text)
				}
			}
		}
	}
}

// All that has to be ready stands on the card, a warning beside it or not.
func TestAWarningLeavesTheReadyList(t *testing.T) {
	r := scenes.ReadyDown()
	for _, size := range [][2]int{{80, 24}, {100, 30}, {120, 36}, {200, 60}} {
		for _, ws := range [][]rule.Warning{nil, {scenes.Standing(r, rule.BlastLost, scenes.Longest(rule.BlastLost))}} {
			v := scenes.ViewOf(r)
			v.Warnings, v.Ending.Ready = ws, make([]bool, len(words.ReadyChecks))
			g := theme.Theme{}.Grid(size[0], size[1])
			whole(g, theme.Theme{}, r, v)
			for _, check := range words.ReadyChecks {
				if !strings.Contains(g.String(), check) {
					t.Errorf("%v, %d warnings: %q is missing\n%s", size, len(ws), check, g)
				}
			}
		}
	}
}
