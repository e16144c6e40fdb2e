package draw

import (
	"time"

	"chargehand/model/entry"
	"chargehand/model/rule"
	"chargehand/model/session"
	modelwords "chargehand/model/words"
	"chargehand/physics"
	"chargehand/tui/cell"
	"chargehand/tui/chart"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// Day is the day of a smelt as a replay goes over it. Times are on the
// smelt's clock.
type Day struct {
	Lit      time.Time     // wall time of light
	Span     time.Duration // from light to the end
	Now      time.Duration // where the replay stands
	Charges  []time.Duration
	Taps     []time.Duration
	Warnings []rule.Warning // every one, standing or cleared
	Phases   []PhaseAt      // in order
	Speed    int            // times as fast as the day; 0 stands still
	Back     bool           // backwards
	Steps    string         // what the arrows move by, in a word
	AsSeen   bool           // as we saw it, else as we know it
	Only     bool           // there is no other view
	Solving  bool           // the solver's own notes are still to come
	Ores     []bool         // of each charge, whether it held ore
	Hearth   []chart.Heat   // how hot the hearth was, as far as that is reckoned
	Undated  bool           // the hours are not known
}

// PhaseAt is when a phase began.
type PhaseAt struct {
	At    time.Duration
	Phase entry.Phase
}

// DayOf is the day of a whole smelt, its hearth as far as that was solved.
func DayOf(o session.Overview) Day {
	r := o.Whole.Reading()
	tl := Day{Lit: r.Lit, Span: o.Span, Now: o.Span, Charges: o.Charges, Taps: o.Taps, Warnings: o.Whole.Warnings(), Only: o.Only, Solving: !o.Whole.IsSolved(), Undated: o.Whole.Light().Undated}
	for _, ch := range r.Charges {
		tl.Ores = append(tl.Ores, ch.Ore.Known() && ch.Ore.P50 > 0)
	}
	for _, h := range o.Whole.Hearths() {
		tl.Hearth = append(tl.Hearth, chart.Heat{At: h.At, Celsius: h.Celsius})
	}
	for _, t := range o.Turns {
		tl.Phases = append(tl.Phases, PhaseAt{At: t.At, Phase: t.Phase})
	}
	return tl
}

// Heats paints how hot the hearth was over the day, and where it was hot enough for slag to run.
func (p Pen) Heats(g cell.Grid, tl Day) {
	p.dayOf(tl).Heats(g, p.Theme, physics.SlagFreezes, words.SlagRunsFrom(p.Units.Value(physics.SlagFreezes, "°C", 0)))
}

// TimeLine paints the day of a smelt in 1 to 4 rows: how it runs, then the phases, then charges, taps and warnings,
// then the hours. Phases give way first, then the hours.
func (p Pen) TimeLine(g cell.Grid, tl Day) {
	w, h := g.Size()
	if w < 20 || h < 1 {
		return
	}
	row := func(y int) cell.Grid { return g.Sub(cell.Rect{Y: y, W: w, H: 1}) }
	p.running(row(0), tl, h >= 4)
	t := track{Pen: p, tl: tl, from: 1, wide: w - 2}
	switch h {
	case 1:
	case 2:
		t.marks(row(1))
	case 3:
		t.marks(row(1))
		t.hours(row(2))
	default:
		p.dayOf(tl).Draw(g.Sub(cell.Rect{Y: 1, W: w, H: h - 1}), p.Theme)
	}
}

// dayOf is the day as it is drawn where there is room.
func (p Pen) dayOf(tl Day) chart.Day {
	d := chart.Day{Lit: tl.Lit, Undated: tl.Undated, Span: tl.Span, Now: tl.Now, Hearth: tl.Hearth, Taps: tl.Taps}
	for i, at := range tl.Charges {
		d.Charges = append(d.Charges, chart.Charge{At: at, Ore: i < len(tl.Ores) && tl.Ores[i]})
	}
	for _, w := range tl.Warnings {
		d.Warnings = append(d.Warnings, chart.Alarm{At: w.Onset, Act: w.Grade == rule.Act, Note: w.Grade == rule.Note})
	}
	for _, ph := range tl.Phases {
		d.Phases = append(d.Phases, chart.Phase{At: ph.At, Word: modelwords.Phase(ph.Phase)})
	}
	return d
}

// running says where the replay stands, how it runs and what it shows. That it is
// the past the top line says.
func (p Pen) running(g cell.Grid, tl Day, day bool) {
	w, _ := g.Size()
	p.Line(g)
	way := p.M.Forth
	if tl.Back {
		way = p.M.Back
	}
	if tl.Speed == 0 {
		way = p.M.Dot
	}
	shows := words.AsWeKnow
	switch {
	case tl.AsSeen:
		shows = words.AsWeSaw
	case tl.Only && w >= 150:
		shows = words.OnlyAsWeKnow
	}
	x := 1
	put := func(text string, r theme.Role) {
		if n := g.Width(text) + 2; x+n <= w-1 {
			g.Text(x, 0, " "+text+" ", p.Style(r))
			x += n + 1
		}
	}
	put(words.NowOf(tl.Lit.Add(tl.Now), tl.Lit.Add(tl.Span)), theme.Strong)
	put(shows, theme.Text)
	put(way+" "+words.SpeedOf(tl.Speed, tl.Back), theme.Text)
	if tl.Steps != "" {
		put(tl.Steps, theme.Text)
	}
	if tl.Solving {
		put(modelwords.NotesWorkedOut, theme.Quiet)
	}
	legend := string(p.M.TickCharge) + " " + words.LineCharge + "  " + string(p.M.TickTap) + " " + words.LineTap +
		"  " + string(p.M.TickNote) + " " + words.LineNote + "  " + p.M.Look + " " + words.LineWarning + "  " + p.M.Act + " " + words.LineAct
	if day {
		m := chart.MarksOf(p.Theme)
		legend = string(m.Charge) + " " + words.LineCharge + "  " + string(m.Tap) + " " + words.LineTap + "  " + string(m.Note) + " " + words.LineNote +
			"  " + string(m.Warning) + " " + words.LineWarning + "  " + string(m.Act) + " " + words.LineAct
	}
	if n := g.Width(legend) + 2; x+n <= w-1 {
		g.TextRight(w-1, 0, " "+legend+" ", p.Style(theme.Quiet))
	}
}

// track is the line while it is painted.
type track struct {
	Pen
	tl         Day
	from, wide int // first column, columns
}

// at is the column of a moment.
func (t track) at(d time.Duration) int {
	if t.tl.Span <= 0 {
		return t.from
	}
	share := float64(d) / float64(t.tl.Span)
	return t.from + min(max(int(share*float64(t.wide)), 0), t.wide-1)
}

// role is bright for what has been and quiet for what is still to come.
func (t track) role(d time.Duration) theme.Role {
	if d <= t.tl.Now {
		return theme.Text
	}
	return theme.Quiet
}

// marks draws charges, taps, warnings and where the replay stands. What is
// graver covers what is not.
func (t track) marks(g cell.Grid) {
	now := t.at(t.tl.Now)
	for x := t.from; x < t.from+t.wide; x++ {
		c, r := t.M.BarFull, theme.Text
		if x > now {
			c, r = t.M.BarLine, theme.Frame
		}
		g.Set(x, 0, c, t.Style(r))
	}
	for _, at := range t.tl.Charges {
		g.Set(t.at(at), 0, t.M.TickCharge, t.Style(t.role(at)))
	}
	for _, w := range t.tl.Warnings {
		if w.Grade == rule.Note {
			g.Set(t.at(w.Onset), 0, t.M.TickNote, t.Style(t.role(w.Onset)))
		}
	}
	for _, at := range t.tl.Taps {
		g.Set(t.at(at), 0, t.M.TickTap, t.Style(t.role(at)))
	}
	for grade := rule.Look; grade <= rule.Act; grade++ {
		for _, w := range t.tl.Warnings {
			if w.Grade != grade {
				continue
			}
			mark, style := t.M.Look, t.Style(theme.Look)
			if grade == rule.Act {
				mark, style = t.M.Act, t.Style(theme.Act)
			}
			g.Text(min(t.at(w.Onset), t.from+t.wide-g.Width(mark)), 0, mark, style)
		}
	}
	g.Set(now, 0, t.M.Here, t.Style(theme.Now))
}

// hours writes the time of day under the line, and where the replay stands in
// their stead.
func (t track) hours(g cell.Grid) {
	const apart = 9 // columns from one time to the next
	now := t.tl.Lit.Add(t.tl.Now).Format(modelwords.Clock)
	from := min(max(t.at(t.tl.Now)-len(now)/2, t.from), t.from+t.wide-len(now))
	step := time.Hour
	for step < t.tl.Span && t.at(step)-t.from < apart {
		step *= 2
	}
	lit := t.tl.Lit
	first := lit.Add(-time.Duration(lit.Minute())*time.Minute - time.Duration(lit.Second())*time.Second)
	for at := first; at.Sub(lit) <= t.tl.Span; at = at.Add(step) {
		text := at.Format(modelwords.Clock)
		x := t.at(at.Sub(lit))
		if at.Before(lit) || x+len(text) > t.from+t.wide || x < from+len(now)+1 && x+len(text)+1 > from {
			continue
		}
		g.Text(x, 0, text, t.Style(theme.Quiet))
	}
	g.Text(from, 0, now, t.Style(theme.Now))
}
