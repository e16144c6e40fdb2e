package scene_test

import (
	"fmt"
	"strconv"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"

	"chargehand/model/rule"
	modelwords "chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/draw"
	"chargehand/tui/scene"
	"chargehand/tui/scene/scenes"
	"chargehand/tui/theme"
)

// A remedy cut short could hurt somebody: every rule's remedy stands in full,
// with evidence as long as it gets, under any phase's head. What shows it stands
// in full too, or is cut with an ellipsis, but never its title.
func TestWarningsStandInFull(t *testing.T) {
	for _, size := range [][2]int{{80, 24}, {100, 24}, {100, 30}, {120, 36}, {200, 60}, {250, 80}} {
		for _, s := range []scenes.Scene{scenes.Named("midsmelt"), {R: scenes.ReadyDown(), V: scenes.ViewOf(scenes.ReadyDown())}} {
			for _, ws := range scenes.Worst(func(id rule.ID) rule.Warning { return scenes.Standing(s.R, id, scenes.Longest(id)) }) {
				title, evidence, remedy := modelwords.Units{}.Warning(ws[0])
				if strings.ContainsAny(evidence, "{}") {
					t.Fatalf("%s: evidence %q has a gap", ws[0].Rule, evidence)
				}
				s.V.Warnings = ws
				g := theme.Theme{}.Grid(size[0], size[1])
				whole(g, theme.Theme{}, s.R, s.V)
				l := scene.LayoutOf(size[0], size[1])
				told := rightOf(l, size[0])
				if l.Size > scene.Cramped {
					told = l.Notice
				}
				text := strings.Join(strings.Fields(strings.NewReplacer("│", " ", "├", " ").Replace(g.Sub(told).String())), " ")
				if !strings.Contains(withoutSince(text), remedy) {
					t.Errorf("%v: %q is not in full:\n%s", size, remedy, g)
				}
				if !strings.Contains(text, title) {
					t.Errorf("%v: %q is missing", size, title)
				}
			}
		}
	}
}

// withoutSince leaves out what stands at the end of the first row of a warning.
func withoutSince(text string) string {
	for _, since := range []string{" +1, seen, 14:29", " +1, seen", " +1"} {
		text = strings.Replace(text, since, "", 1)
	}
	return text
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
				text := strings.Join(strings.Fields(ansi.Strip(frame(theme.Theme{}, w, h, s))), " ")
				if !strings.Contains(text, "take the blower off") {
					t.Fatalf("%dx%d:\n%s", w, h, ansi.Strip(frame(theme.Theme{}, w, h, s)))
				}
			}
		}
	}
}

// rightOf is what stands beside the shaft.
func rightOf(l scene.Layout, w int) cell.Rect {
	x := l.Timer.X
	if l.Lined {
		x++
	}
	return cell.Rect{X: x, Y: l.Timer.Y, W: w - x, H: l.Foot.Y - l.Timer.Y}
}

// What is wrong besides the first stands below it where there is room, with what
// shows it; where there is none the first says how many more there are.
func TestOtherWarningsStandBelow(t *testing.T) {
	r, v := scenes.MidSmelt(), scenes.ViewOf(scenes.MidSmelt())
	lost, hot, dim := scenes.Standing(r, rule.BlastLost, scenes.Longest(rule.BlastLost)), scenes.Standing(r, rule.TopHot, scenes.Longest(rule.TopHot)),
		scenes.Standing(r, rule.TuyereDim, rule.Evidence{{Name: "where", Word: "peep"}, {Name: "seen", Word: "dark on one side"}})
	v.Warnings = []rule.Warning{lost, dim, hot}
	for _, c := range []struct{ w, h, shown int }{{70, 40, 3}, {100, 20, 1}, {80, 24, 1}, {120, 36, 1}, {200, 60, 3}} {
		g := theme.Theme{}.Grid(c.w, c.h)
		whole(g, theme.Theme{}, r, v)
		l := scene.LayoutOf(c.w, c.h)
		told := rightOf(l, c.w)
		if l.Size > scene.Cramped {
			told = l.Notice
		}
		text := strings.Join(strings.Fields(g.Sub(told).String()), " ")
		text = strings.ReplaceAll(text, " 14:29", "") // since when it stands, at the end of a row
		for i, w := range v.Warnings {
			title, evidence, remedy := modelwords.Units{}.Warning(w)
			if got, want := strings.Contains(text, title) && (i == 0 || strings.Contains(text, modelwords.Warned(title, evidence))), i < c.shown; got != want {
				t.Errorf("%dx%d: %q is shown: %v\n%s", c.w, c.h, title, got, g)
			}
			if i > 0 && strings.Contains(text, remedy) {
				t.Errorf("%dx%d: the remedy of %q takes the room", c.w, c.h, title)
			}
		}
		if more := strconv.Itoa(3 - c.shown); (strings.Contains(text, "+"+more) || strings.Contains(text, more+" more")) != (c.shown < 3) {
			t.Errorf("%dx%d: %s\n%s", c.w, c.h, more, g)
		}
	}
}

// A frame while every rule stands at once, each with its longest evidence.
func BenchmarkAllWarnings(b *testing.B) {
	r := scenes.MidSmelt()
	v := scenes.ViewOf(r)
	for _, row := range rule.Table {
		v.Warnings = append(v.Warnings, scenes.Standing(r, row.ID, scenes.Longest(row.ID)))
	}
	for _, size := range [][2]int{{200, 60}, {80, 24}} {
		b.Run(fmt.Sprintf("%dx%d", size[0], size[1]), func(b *testing.B) {
			for b.Loop() {
				_ = frame(theme.Theme{Profile: theme.Fixed256}, size[0], size[1], scenes.Scene{R: r, V: v})
			}
		})
	}
}
