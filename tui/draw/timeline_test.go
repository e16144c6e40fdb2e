package draw_test

import (
	"strings"
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/model/rule"
	modelwords "chargehand/model/words"
	"chargehand/tui/chart"
	"chargehand/tui/draw"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// tenHours is a line of 100 columns for ten hours: a column is six minutes.
func tenHours() draw.Day {
	return draw.Day{
		Lit: time.Date(2026, 5, 9, 9, 30, 0, 0, time.UTC), Span: 10 * time.Hour, Now: 5 * time.Hour, AsSeen: true, Speed: 600,
		Charges: []time.Duration{3 * time.Hour, 4 * time.Hour, 6 * time.Hour},
		Taps:    []time.Duration{7 * time.Hour},
		Warnings: []rule.Warning{
			{Rule: rule.BlastLost, Grade: rule.Act, Onset: 8 * time.Hour}, {Rule: rule.TuyereDim, Grade: rule.Look, Onset: 4 * time.Hour},
			{Rule: rule.MeterOdd, Grade: rule.Note, Onset: time.Hour}},
		Phases: []draw.PhaseAt{{0, entry.Preheat}, {2 * time.Hour, entry.MainBurn}, {9 * time.Hour, entry.BurnsDown}},
	}
}

// Everything stands in the column of its time, and a warning before a charge.
func TestTimeLineIsToScale(t *testing.T) {
	for _, th := range []theme.Theme{{}, {ASCII: true}} {
		m := chart.MarksOf(th)
		g := th.Grid(102, 4)
		draw.With(th, modelwords.Units{}).TimeLine(g, tenHours())
		lines := strings.Split(g.String(), "\n")
		at := func(row, column int) string { return string([]rune(lines[row])[column:]) }
		for _, c := range []struct {
			row, column int
			want        string
		}{
			{2, 31, string(m.Charge)}, {2, 41, string(m.Warning)}, {2, 61, string(m.Charge)}, {2, 71, string(m.Tap)}, {2, 81, string(m.Act)},
			{2, 51, string(m.Here)}, {2, 11, string(m.Note)}, {3, 1, "09:30 preheat"}, {3, 21, "11:30 main burn"}, {3, 86, "18:30 burn-"},
		} {
			if !strings.HasPrefix(at(c.row, c.column), c.want) {
				t.Errorf("ascii %v: row %d column %d is %q, want %q:\n%s", th.ASCII, c.row, c.column, at(c.row, c.column), c.want, g)
			}
		}
	}
}

// The row that says how it runs tells the two views and the two ways apart
// without colour.
func TestTimeLineSaysWhatItShows(t *testing.T) {
	for name, c := range map[string]struct {
		change func(*draw.Day)
		wants  []string
	}{
		"as seen":  {func(*draw.Day) {}, []string{"14:30 of 19:30", words.AsWeSaw, "600 times, forwards"}},
		"as known": {func(tl *draw.Day) { tl.AsSeen = false }, []string{words.AsWeKnow}},
		"backward": {func(tl *draw.Day) { tl.Back = true }, []string{"600 times, backwards"}},
		"still":    {func(tl *draw.Day) { tl.Speed = 0 }, []string{words.StandsStill}},
		"live":     {func(tl *draw.Day) { tl.Speed = 1 }, []string{words.OwnSpeed}},
		"solving":  {func(tl *draw.Day) { tl.Solving, tl.Speed = true, 0 }, []string{modelwords.NotesWorkedOut}},
		"steps":    {func(tl *draw.Day) { tl.Steps = "by entry" }, []string{"by entry"}},
	} {
		tl := tenHours()
		c.change(&tl)
		g := theme.Theme{}.Grid(110, 4)
		draw.With(theme.Theme{}, modelwords.Units{}).TimeLine(g, tl)
		for _, want := range c.wants {
			if !strings.Contains(g.String(), want) {
				t.Errorf("%s: no %q:\n%s", name, want, g)
			}
		}
	}
	for w := draw.MinW; w <= 250; w++ { // what matters most stands at every width
		g := theme.Theme{}.Grid(w, 2)
		draw.With(theme.Theme{}, modelwords.Units{}).TimeLine(g, tenHours())
		if !strings.Contains(g.String(), "14:30") {
			t.Fatalf("width %d:\n%s", w, g)
		}
	}
}

func TestTimeLineOfNothing(t *testing.T) {
	for _, tl := range []draw.Day{{}, {Now: time.Hour}, {Span: time.Minute, Now: time.Hour, Phases: []draw.PhaseAt{{2 * time.Hour, entry.Closed}}}, {Span: 9000 * time.Hour, Now: time.Hour}} {
		g := theme.Theme{}.Grid(60, 4)
		draw.With(theme.Theme{}, modelwords.Units{}).TimeLine(g, tl)
		if !strings.Contains(g.String(), words.AsWeKnow) {
			t.Errorf("%+v:\n%s", tl, g)
		}
	}
}
