package paint

import (
	"time"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/rule"
	"chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/theme"
)

// TimeLine is the day of a smelt as a replay goes over it. Times are on the
// smelt's clock.
type TimeLine struct {
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
}

// PhaseAt is when a phase began.
type PhaseAt struct {
	At    time.Duration
	Phase entry.Phase
}

// Replay paints Fire, the time line under it, and leaves the foot.
func Replay(g cell.Grid, th theme.Theme, r figure.Reading, v FireView, tl TimeLine) {
	w, h := g.Size()
	if w < MinW || h < MinH {
		TooSmall(g, th)
		return
	}
	if v.Past == "" {
		v.Past = words.ThePast
	}
	p := with(th)
	l, line := ReplayLayout(w, h)
	p.fire(g, l, r, v)
	p.timeLine(g.Sub(line), tl)
}

// ReplayLayout is Fire in what the time line leaves of the window, and the place
// of that.
func ReplayLayout(w, h int) (Layout, cell.Rect) {
	rows := 4
	switch {
	case h < 20:
		rows = 2
	case h < 30:
		rows = 3
	}
	l := LayoutOf(w, h-rows) // its foot's rows move down by the line's
	line := cell.Rect{Y: l.Foot.Y, W: w, H: rows}
	l.Foot.Y += rows
	return l, line
}

// PaintTimeLine paints the line on all of g: 2 to 4 rows.
func PaintTimeLine(g cell.Grid, th theme.Theme, tl TimeLine) { with(th).timeLine(g, tl) }

// timeLine is how it runs, then the phases, then charges, taps and warnings,
// then the hours. Phases give way first, then the hours.
func (p painter) timeLine(g cell.Grid, tl TimeLine) {
	w, h := g.Size()
	if w < 20 || h < 1 {
		return
	}
	row := func(y int) cell.Grid { return g.Sub(cell.Rect{Y: y, W: w, H: 1}) }
	p.running(row(0), tl)
	t := track{painter: p, tl: tl, from: 1, wide: w - 2}
	switch h {
	case 1:
	case 2:
		t.marks(row(1))
	case 3:
		t.marks(row(1))
		t.hours(row(2))
	default:
		t.phases(row(1))
		t.marks(row(2))
		t.hours(row(3))
	}
}

// running says where the replay stands, how it runs and what it shows. That it is
// the past the top line says.
func (p painter) running(g cell.Grid, tl TimeLine) {
	w, _ := g.Size()
	p.line(g)
	way := p.m.Forth
	if tl.Back {
		way = p.m.Back
	}
	if tl.Speed == 0 {
		way = p.m.Dot
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
			g.Text(x, 0, " "+text+" ", p.style(r))
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
		put(words.NotesWorkedOut, theme.Quiet)
	}
	legend := string(p.m.TickCharge) + " " + words.LineCharge + "  " + string(p.m.TickTap) + " " + words.LineTap +
		"  " + string(p.m.TickNote) + " " + words.LineNote + "  " + p.m.Look + " " + words.LineWarning + "  " + p.m.Act + " " + words.LineAct
	if n := g.Width(legend) + 2; x+n <= w-1 {
		g.TextRight(w-1, 0, " "+legend+" ", p.style(theme.Quiet))
	}
}

// track is the line while it is painted.
type track struct {
	painter
	tl         TimeLine
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

// phases writes each phase where it begins, as far as it has room.
func (t track) phases(g cell.Grid) {
	for i, ph := range t.tl.Phases {
		x, end := t.at(ph.At), t.from+t.wide
		if i+1 < len(t.tl.Phases) {
			end = t.at(t.tl.Phases[i+1].At)
		}
		if end <= x {
			continue
		}
		g.Set(x, 0, t.m.VLine, t.style(theme.Frame))
		role := t.role(ph.At)
		if ph.At <= t.tl.Now && (i+1 == len(t.tl.Phases) || t.tl.Now < t.tl.Phases[i+1].At) {
			role = theme.Strong
		}
		if room := end - x - 2; room >= 4 {
			g.TextIn(cell.Rect{X: x + 1, W: room, H: 1}, words.Phase(ph.Phase), t.style(role))
		}
	}
}

// marks draws charges, taps, warnings and where the replay stands. What is
// graver covers what is not.
func (t track) marks(g cell.Grid) {
	now := t.at(t.tl.Now)
	for x := t.from; x < t.from+t.wide; x++ {
		c, r := t.m.BarFull, theme.Text
		if x > now {
			c, r = t.m.BarLine, theme.Frame
		}
		g.Set(x, 0, c, t.style(r))
	}
	for _, at := range t.tl.Charges {
		g.Set(t.at(at), 0, t.m.TickCharge, t.style(t.role(at)))
	}
	for _, w := range t.tl.Warnings {
		if w.Grade == rule.Note {
			g.Set(t.at(w.Onset), 0, t.m.TickNote, t.style(t.role(w.Onset)))
		}
	}
	for _, at := range t.tl.Taps {
		g.Set(t.at(at), 0, t.m.TickTap, t.style(t.role(at)))
	}
	for grade := rule.Look; grade <= rule.Act; grade++ {
		for _, w := range t.tl.Warnings {
			if w.Grade != grade {
				continue
			}
			mark, style := t.m.Look, t.style(theme.Look)
			if grade == rule.Act {
				mark, style = t.m.Act, t.style(theme.Act)
			}
			g.Text(min(t.at(w.Onset), t.from+t.wide-g.Width(mark)), 0, mark, style)
		}
	}
	g.Set(now, 0, t.m.Here, t.style(theme.Now))
}

// hours writes the time of day under the line, and where the replay stands in
// their stead.
func (t track) hours(g cell.Grid) {
	const apart = 9 // columns from one time to the next
	now := t.tl.Lit.Add(t.tl.Now).Format(words.Clock)
	from := min(max(t.at(t.tl.Now)-len(now)/2, t.from), t.from+t.wide-len(now))
	step := time.Hour
	for step < t.tl.Span && t.at(step)-t.from < apart {
		step *= 2
	}
	lit := t.tl.Lit
	first := lit.Add(-time.Duration(lit.Minute())*time.Minute - time.Duration(lit.Second())*time.Second)
	for at := first; at.Sub(lit) <= t.tl.Span; at = at.Add(step) {
		text := at.Format(words.Clock)
		x := t.at(at.Sub(lit))
		if at.Before(lit) || x+len(text) > t.from+t.wide || x < from+len(now)+1 && x+len(text)+1 > from {
			continue
		}
		g.Text(x, 0, text, t.style(theme.Quiet))
	}
	g.Text(from, 0, now, t.style(theme.Now))
}
