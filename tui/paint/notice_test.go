package paint

import (
	"fmt"
	"strconv"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"

	"chargehand/model/entry"
	"chargehand/model/rule"
	"chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/theme"
)

// longest holds evidence as long as it can well get: every value any rule
// names, in its unit.
func longest(id rule.ID) rule.Evidence {
	e := rule.Evidence{
		{Name: "seen", Word: entry.SlagGlassy}, {Name: "where", Word: string(entry.AtSound)}, {Name: "measure", Word: "wheelbarrow, heaped"}, {Name: "what", Word: string(entry.Charcoal)},
		{Name: "since", Number: 1439, Unit: rule.Minutes}, {Name: "usual", Number: 128, Unit: rule.Minutes}, {Name: "apart", Number: 128, Unit: rule.Minutes},
		{Name: "before", Number: 128, Unit: rule.Minutes}, {Name: "last", Number: 128, Unit: rule.Minutes}, {Name: "by", Number: -1439, Unit: rule.Minutes},
		{Name: "height", Number: 118, Unit: rule.Centimetres}, {Name: "mark", Number: 118, Unit: rule.Centimetres}, {Name: "expected", Number: 118, Unit: rule.Centimetres},
		{Name: "ratio", Number: 11.25, Unit: rule.Ratio}, {Name: "plan", Number: 11.25, Unit: rule.Ratio}, {Name: "factor", Number: 11.25, Unit: rule.Count},
		{Name: "number", Number: 128, Unit: rule.Count}, {Name: "left", Number: 128.5, Unit: rule.Kilograms}, {Name: "needed", Number: 128.5, Unit: rule.Kilograms},
		{Name: "slag", Number: 28.55, Unit: rule.Kilograms}, {Name: "hearth", Number: 1145, Unit: rule.Degrees}, {Name: "least", Number: 1150, Unit: rule.Degrees},
		{Name: "iron", Number: 15, Unit: rule.Percent}, {Name: "top", Number: 1028, Unit: rule.Degrees}, {Name: "for", Number: 20, Unit: rule.Minutes},
		{Name: "carbon", Number: 1.95, Unit: rule.Count}, {Name: "pressure", Number: 2500, Unit: rule.Pascals}, {Name: "clear", Number: 1200, Unit: rule.Pascals},
		{Name: "slag", Number: 28.55, Unit: rule.Kilograms}, {Name: "weighed", Number: 28.55, Unit: rule.Kilograms}, {Name: "believed", Number: 28.55, Unit: rule.Kilograms},
	}
	off, band := rule.Minutes, rule.Minutes
	switch id {
	case rule.MeasureDoubtful:
		off = rule.Percent
	case rule.HangUp, rule.Slip, rule.StackLow:
		band = rule.Centimetres
	case rule.MeterOdd:
		band = rule.Count
	}
	return append(e, rule.Value{Name: "off", Number: 1439, Unit: off},
		rule.Value{Name: "low", Number: 118, Unit: band}, rule.Value{Name: "high", Number: 128, Unit: band})
}

// worst are the warnings of every rule with the longest evidence, acknowledged
// and not the only one. A cold hearth is read or seen; a charge is waited for
// with the blast on, or partly without.
func worst(at func(rule.ID) rule.Warning) [][]rule.Warning {
	var all [][]rule.Warning
	for _, row := range rule.Table {
		w := at(row.ID)
		w.Acknowledged = true
		all = append(all, []rule.Warning{w, w})
		if row.ID == rule.HearthCold {
			w.Evidence = append(rule.Evidence{{Name: "fire", Number: 1145, Unit: rule.Degrees}, {Name: "least", Number: 1150, Unit: rule.Degrees}}, w.Evidence...)
			all = append(all, []rule.Warning{w, w})
		}
		if row.ID == rule.ChargeOverdue || row.ID == rule.EntryMissing {
			w.Evidence = append(rule.Evidence{{Name: "unblown", Number: 1439, Unit: rule.Minutes}}, w.Evidence...)
			all = append(all, []rule.Warning{w, w})
		}
	}
	return all
}

// A remedy cut short could hurt somebody: every rule's remedy stands in full,
// with evidence as long as it gets, under any phase's head. What shows it stands
// in full too, or is cut with an ellipsis, but never its title.
func TestWarningsStandInFull(t *testing.T) {
	for _, size := range [][2]int{{80, 24}, {100, 24}, {100, 30}, {120, 36}, {200, 60}, {250, 80}} {
		for _, s := range []scene{scenes()[0], {r: readyDown(), v: viewOf(readyDown())}} {
			for _, ws := range worst(func(id rule.ID) rule.Warning { return standing(s.r, id, longest(id)) }) {
				title, evidence, remedy := words.Units{}.Warning(ws[0])
				if strings.ContainsAny(evidence, "{}") {
					t.Fatalf("%s: evidence %q has a gap", ws[0].Rule, evidence)
				}
				s.v.Warnings = ws
				g := theme.Theme{}.Grid(size[0], size[1])
				Fire(g, theme.Theme{}, s.r, s.v)
				l := LayoutOf(size[0], size[1])
				text := strings.Join(strings.Fields(g.Sub(rightOf(l, size[0])).String()), " ")
				if !strings.Contains(text, remedy) {
					t.Errorf("%v: %q is not in full:\n%s", size, remedy, g)
				}
				if !strings.Contains(text, title) {
					t.Errorf("%v: %q is missing", size, title)
				}
			}
		}
	}
}

// Where there is room for a line or two only, what is wrong is said and the
// remedy begins: no size hides a warning.
func TestNoWindowHidesAWarning(t *testing.T) {
	for w := MinW; w <= 250; w += 14 {
		for h := MinH; h <= 80; h += 2 {
			for _, far := range []bool{false, true} {
				r, v := midSmelt(), viewOf(midSmelt())
				warning := standing(r, rule.BlastLost, longest(rule.BlastLost))
				v.Warnings = []rule.Warning{warning, warning}
				s := scene{r: r, v: v}
				if far {
					s.paint = Far
				}
				text := strings.Join(strings.Fields(ansi.Strip(frame(theme.Theme{}, w, h, s))), " ")
				if !strings.Contains(text, "take the blower off") {
					t.Fatalf("far %v %dx%d:\n%s", far, w, h, ansi.Strip(frame(theme.Theme{}, w, h, s)))
				}
			}
		}
	}
}

// In the far view titles are at most three words and the remedy stands in full.
func TestFarWarningsStandInFull(t *testing.T) {
	for _, size := range [][2]int{{80, 24}, {120, 36}, {200, 60}} {
		for _, ascii := range []bool{false, true} {
			r, v := midSmelt(), viewOf(midSmelt())
			for _, ws := range worst(func(id rule.ID) rule.Warning { return standing(r, id, longest(id)) }) {
				v.Warnings = ws
				title, _, remedy := words.Units{}.Warning(ws[0])
				if n := len(strings.Fields(title)); n > 3 {
					t.Errorf("%q has %d words", title, n)
				}
				th := theme.Theme{ASCII: ascii}
				text := strings.Join(strings.Fields(ansi.Strip(frame(th, size[0], size[1], scene{r: r, v: v, paint: Far}))), " ")
				if !strings.Contains(text, remedy) {
					t.Errorf("%v ascii %v: %q is not in full", size, ascii, remedy)
				}
			}
		}
	}
}

// rightOf is what stands beside the shaft.
func rightOf(l Layout, w int) cell.Rect {
	x := l.Timer.X
	if l.Lined {
		x++
	}
	return cell.Rect{X: x, Y: l.Timer.Y, W: w - x, H: l.Foot.Y - l.Timer.Y}
}

// What is wrong besides the first stands below it where there is room, with what
// shows it; where there is none the first says how many more there are.
func TestOtherWarningsStandBelow(t *testing.T) {
	r, v := midSmelt(), viewOf(midSmelt())
	lost, hot, dim := standing(r, rule.BlastLost, longest(rule.BlastLost)), standing(r, rule.TopHot, longest(rule.TopHot)),
		standing(r, rule.TuyereDim, rule.Evidence{{Name: "where", Word: "peep"}, {Name: "seen", Word: "dark on one side"}})
	v.Warnings = []rule.Warning{lost, dim, hot}
	for _, c := range []struct{ w, h, shown int }{{80, 24, 1}, {120, 36, 3}, {200, 60, 3}} {
		g := theme.Theme{}.Grid(c.w, c.h)
		Fire(g, theme.Theme{}, r, v)
		text := strings.Join(strings.Fields(g.Sub(rightOf(LayoutOf(c.w, c.h), c.w)).String()), " ")
		text = strings.ReplaceAll(text, " 14:29", "") // since when it stands, at the end of a row
		for i, w := range v.Warnings {
			title, evidence, remedy := words.Units{}.Warning(w)
			if got, want := strings.Contains(text, title) && (i == 0 || strings.Contains(text, words.Warned(title, evidence))), i < c.shown; got != want {
				t.Errorf("%dx%d: %q is shown: %v\n%s", c.w, c.h, title, got, g)
			}
			if i > 0 && strings.Contains(text, remedy) {
				t.Errorf("%dx%d: the remedy of %q takes the room", c.w, c.h, title)
			}
		}
		if more := "+" + strconv.Itoa(3-c.shown); strings.Contains(text, more) != (c.shown < 3) {
			t.Errorf("%dx%d: %s\n%s", c.w, c.h, more, g)
		}
	}
}

// A frame while every rule stands at once, each with its longest evidence.
func BenchmarkAllWarnings(b *testing.B) {
	r := midSmelt()
	v := viewOf(r)
	for _, row := range rule.Table {
		v.Warnings = append(v.Warnings, standing(r, row.ID, longest(row.ID)))
	}
	for _, size := range [][2]int{{200, 60}, {80, 24}} {
		b.Run(fmt.Sprintf("%dx%d", size[0], size[1]), func(b *testing.B) {
			for b.Loop() {
				_ = frame(theme.Theme{Profile: theme.Fixed256}, size[0], size[1], scene{r: r, v: v})
			}
		})
	}
}
