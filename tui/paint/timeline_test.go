package paint

import (
	"strings"
	"testing"
	"time"

	"github.com/charmbracelet/x/ansi"

	"chargehand/model/entry"
	"chargehand/model/rule"
	"chargehand/model/words"
	"chargehand/tui/theme"
)

// tenHours is a line of 100 columns for ten hours: a column is six minutes.
func tenHours() TimeLine {
	return TimeLine{
		Lit: time.Date(2026, 5, 9, 9, 30, 0, 0, time.UTC), Span: 10 * time.Hour, Now: 5 * time.Hour, AsSeen: true, Speed: 600,
		Charges: []time.Duration{3 * time.Hour, 4 * time.Hour, 6 * time.Hour},
		Taps:    []time.Duration{7 * time.Hour},
		Warnings: []rule.Warning{
			{Rule: rule.BlastLost, Grade: rule.Act, Onset: 8 * time.Hour}, {Rule: rule.TuyereDim, Grade: rule.Look, Onset: 4 * time.Hour},
			{Rule: rule.MeterOdd, Grade: rule.Note, Onset: time.Hour}},
		Phases: []PhaseAt{{0, entry.Preheat}, {2 * time.Hour, entry.MainBurn}, {9 * time.Hour, entry.BurnsDown}},
	}
}

// Everything stands in the column of its time, and a warning before a charge.
func TestTimeLineIsToScale(t *testing.T) {
	for _, th := range []theme.Theme{{}, {ASCII: true}} {
		m := th.Marks()
		g := th.Grid(102, 4)
		PaintTimeLine(g, th, tenHours())
		lines := strings.Split(g.String(), "\n")
		at := func(row, column int) string { return string([]rune(lines[row])[column:]) }
		for _, c := range []struct {
			row, column int
			want        string
		}{
			{1, 1, string(m.VLine) + "preheat"}, {1, 21, string(m.VLine) + "main burn"}, {1, 91, string(m.VLine) + "burn-"},
			{2, 31, string(m.TickCharge)}, {2, 41, m.Look}, {2, 61, string(m.TickCharge)}, {2, 71, string(m.TickTap)}, {2, 81, m.Act},
			{2, 51, string(m.Here)}, {2, 55, string(m.BarLine)}, {2, 13, string(m.BarFull)}, {2, 11, string(m.TickNote)},
			{3, 6, "10:00"}, {3, 26, "12:00"}, {3, 49, "14:30"}, {3, 86, "18:00"},
		} {
			if !strings.HasPrefix(at(c.row, c.column), c.want) {
				t.Errorf("ascii %v: row %d column %d is %q, want %q:\n%s", th.ASCII, c.row, c.column, at(c.row, c.column), c.want, g)
			}
		}
		if n := strings.Count(lines[2], m.Look); n != 3 { // one look, and the two of act
			t.Errorf("%d marks of what is graver than a note\n%s", n, g)
		}
	}
}

// The row that says how it runs tells the two views and the two ways apart
// without colour.
func TestTimeLineSaysWhatItShows(t *testing.T) {
	for name, c := range map[string]struct {
		change func(*TimeLine)
		wants  []string
	}{
		"as seen":  {func(*TimeLine) {}, []string{"14:30 of 19:30", words.AsWeSaw, "600 times, forwards"}},
		"as known": {func(tl *TimeLine) { tl.AsSeen = false }, []string{words.AsWeKnow}},
		"backward": {func(tl *TimeLine) { tl.Back = true }, []string{"600 times, backwards"}},
		"still":    {func(tl *TimeLine) { tl.Speed = 0 }, []string{words.StandsStill}},
		"live":     {func(tl *TimeLine) { tl.Speed = 1 }, []string{words.OwnSpeed}},
		"solving":  {func(tl *TimeLine) { tl.Solving, tl.Speed = true, 0 }, []string{words.NotesWorkedOut}},
		"steps":    {func(tl *TimeLine) { tl.Steps = "by entry" }, []string{"by entry"}},
	} {
		tl := tenHours()
		c.change(&tl)
		g := theme.Theme{}.Grid(110, 4)
		PaintTimeLine(g, theme.Theme{}, tl)
		for _, want := range c.wants {
			if !strings.Contains(g.String(), want) {
				t.Errorf("%s: no %q:\n%s", name, want, g)
			}
		}
	}
	for w := MinW; w <= 250; w++ { // what matters most stands at every width
		g := theme.Theme{}.Grid(w, 2)
		PaintTimeLine(g, theme.Theme{}, tenHours())
		if !strings.Contains(g.String(), "14:30") {
			t.Fatalf("width %d:\n%s", w, g)
		}
		r := midSmelt()
		g = theme.Theme{}.Grid(w, 24)
		Replay(g, theme.Theme{}, r, viewOf(r), tenHours())
		if n := strings.Count(g.String(), words.ThePast); n != 1 {
			t.Fatalf("width %d says %d times that it is the past:\n%s", w, n, g)
		}
	}
}

// Replay is Fire with the line below: what Fire says stands there too.
func TestReplayShowsFire(t *testing.T) {
	for _, s := range screens() {
		if s.name != "replay" {
			continue
		}
		for w := MinW; w <= 250; w += 7 {
			for h := MinH; h <= 80; h += 3 {
				text := ansi.Strip(frame(theme.Theme{}, w, h, s))
				for _, want := range []string{words.SinceLastCharge[:10], words.NextCharge, "bucket", "14:32"} {
					if !strings.Contains(text, want) {
						t.Fatalf("%dx%d: no %q:\n%s", w, h, want, text)
					}
				}
				if strings.Count(text, words.ThePast) < 1 {
					t.Fatalf("%dx%d: it does not say that this is the past:\n%s", w, h, text)
				}
			}
		}
		if text := ansi.Strip(frame(theme.Theme{}, 80, 24, s)); strings.Contains(text, words.StripMinutes+" ") {
			t.Errorf("the strip stands at 80x24:\n%s", text)
		}
		if text := ansi.Strip(frame(theme.Theme{}, 120, 36, s)); !strings.Contains(text, words.StripMinutes+" ") {
			t.Errorf("no strip at 120x36:\n%s", text)
		}
	}
}

func TestTimeLineOfNothing(t *testing.T) {
	for _, tl := range []TimeLine{{}, {Now: time.Hour}, {Span: time.Minute, Now: time.Hour, Phases: []PhaseAt{{2 * time.Hour, entry.Closed}}}, {Span: 9000 * time.Hour, Now: time.Hour}} {
		g := theme.Theme{}.Grid(60, 4)
		PaintTimeLine(g, theme.Theme{}, tl)
		if !strings.Contains(g.String(), words.AsWeKnow) {
			t.Errorf("%+v:\n%s", tl, g)
		}
	}
}
