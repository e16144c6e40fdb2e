package draw

import (
	"strconv"
	"time"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/forecast"
	modelwords "chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/theme"
)

// counted is what the big digits count up, and from when.
func counted(r *figure.Reading) (what string, lasted time.Duration) {
	since := r.Figure(figure.SinceCharge)
	switch {
	case r.Phase == entry.BurnsDown:
		return modelwords.BurningDown, r.At - r.Since
	case r.Phase.Over():
		return modelwords.SmeltTook, r.Since
	case since.Known():
		return modelwords.SinceLastCharge, time.Duration(since.P50 * float64(time.Second))
	case r.Phase == entry.Filling:
		return modelwords.SinceFill, r.At - r.Since
	case r.Phase == entry.MainBurn:
		return modelwords.SinceMainBurn, r.At - r.Since
	}
	return modelwords.SinceLit, r.At
}

// Timed is what the timer says: a label, the digits, and a line below them.
type Timed struct {
	Label, Digits, Below string
	Brief                []string // the line below where there is less room, the longest first
	Doubt                string   // why the time that is due may be wrong
	Minutes              bool     // the digits are whole minutes to come
	Late                 bool
	AgainstUsual         bool // the time since the last charge stands against the usual
	Lasted               time.Duration
}

// TimedBy is what the timer says while a charge is due, or nothing is forecast.
func TimedBy(r *figure.Reading, due *forecast.Due) Timed {
	what, lasted := counted(r)
	t := Timed{Label: what, Digits: modelwords.Stopwatch(lasted), Lasted: lasted}
	if what != modelwords.SinceLastCharge {
		return t
	}
	t.AgainstUsual = r.Usual > 0
	if t.AgainstUsual {
		t.Below, t.Brief = modelwords.Usual(r.Usual, lasted), modelwords.UsualBrief(r.Usual, lasted)
	}
	if due == nil || r.Paused {
		return t
	}
	if len(due.Doubts) > 0 {
		t.Doubt = modelwords.Doubt(due.Doubts[0])
	}
	_, middle, latest := due.Next.At()
	if r.At > latest {
		t.Late = true
		t.Label, t.Digits = modelwords.ChargeLate, modelwords.Stopwatch(r.At-middle)
		t.Below, t.Brief = modelwords.WasDue(r.Wall(middle)), nil // the usual reckons otherwise: it would say another lateness
		return t
	}
	low, mid, high := due.Next.Left(r.At)
	t.Minutes = true
	t.Label = modelwords.NextChargeIn + ", " + modelwords.LastAgo(t.Digits)
	t.Digits, t.Below, t.Brief = strconv.Itoa(max(mid, 0)), modelwords.Between(low, high), nil
	return t
}

// Timer paints the largest thing on the screen: the time to the next charge,
// or as long as nothing forecasts it, the time since the last.
func (p Pen) Timer(g cell.Grid, r *figure.Reading, due *forecast.Due, scale int) {
	w, h := g.Size()
	t := TimedBy(r, due)
	label, digits := p.Style(theme.Quiet), p.Style(theme.Now)
	if t.Late {
		label, digits = p.Style(theme.Look), p.Style(theme.Strong)
	}
	x := 2
	if r.Paused {
		x += g.Text(x, 0, modelwords.WorkPaused+", ", p.Style(theme.Look))
	}
	x += g.Text(x, 0, g.Cut(t.Label, w-x), label)
	p.Big(g, 2, 1, t.Digits, scale, digits)
	n, rows := BigSize(t.Digits, scale)
	beside := 3 + n
	if t.Minutes {
		beside += g.Text(beside, rows, modelwords.MinutesShort, digits) + 2
	}
	switch {
	case w-beside > 16:
		g.Wrap(cell.Rect{X: beside, Y: 1, W: w - beside - 1, H: rows}, t.Doubt, p.Style(theme.Text))
	case t.Doubt != "" && DigitRows(scale)+2 < h:
		g.TextIn(cell.Rect{X: 2, Y: h - 2, W: w - 2, H: 1}, t.Doubt, p.Style(theme.Text))
	case t.Doubt != "": // that the time may be wrong says more than the time
		t.Below, t.Brief, t.AgainstUsual = t.Doubt, nil, false
	}
	switch {
	case DigitRows(scale)+1 < h:
		p.againstUsual(g, h-1, t, r.Usual)
	case t.Below != "" && w > x+3+g.Width(t.Below):
		g.Text(x+1, 0, p.M.Dot+" "+t.Below, p.Style(theme.Quiet))
	}
}

// againstUsual writes the line below the digits, and draws how the time stands to the
// usual: a bar twice the usual long, with the usual marked in its middle.
func (p Pen) againstUsual(g cell.Grid, y int, t Timed, usual time.Duration) {
	w, _ := g.Size()
	x := 2
	if t.Below != "" {
		x += g.Text(x, y, g.Cut(fitting(g, w-x-1, t.Below, t.Brief...), w-x-1), p.Style(theme.Text)) + 2
	}
	if !t.AgainstUsual || w-x-2 < 8 {
		return
	}
	long := w - x - 2
	filled := min(int(float64(long)*t.Lasted.Seconds()/(2*usual.Seconds())), long)
	for i := range long {
		c, s := p.M.BarLine, p.Style(theme.Frame)
		if i < filled {
			c, s = p.M.BarFull, p.Style(theme.Now)
		}
		if i == long/2 {
			c, s = p.M.BarTick, p.Style(theme.Strong)
		}
		g.Set(x+i, y, c, s)
	}
}
