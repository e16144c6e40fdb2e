package paint

import (
	"strconv"
	"time"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/forecast"
	"chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/theme"
)

// counted is what the big digits count up, and from when.
func counted(r figure.Reading) (what string, lasted time.Duration) {
	since := r.Figure(figure.SinceCharge)
	switch {
	case r.Phase == entry.BurnsDown:
		return words.BurningDown, r.At - r.Since
	case r.Phase.Over():
		return words.SmeltTook, r.Since
	case since.Known():
		return words.SinceLastCharge, time.Duration(since.P50 * float64(time.Second))
	case r.Phase == entry.Filling:
		return words.SinceFill, r.At - r.Since
	}
	return words.SinceLit, r.At
}

// timed is what the timer says: a label, the digits, and a line below them.
type timed struct {
	label, digits, below string
	doubt                string // why the time that is due may be wrong
	minutes              bool   // the digits are whole minutes to come
	late                 bool
	pace                 bool // the time since the last charge stands against the usual
	lasted               time.Duration
}

func timedBy(r figure.Reading, due *forecast.Due) timed {
	what, lasted := counted(r)
	t := timed{label: what, digits: words.Stopwatch(lasted), lasted: lasted}
	if what != words.SinceLastCharge {
		return t
	}
	t.pace = r.Usual > 0
	if t.pace {
		t.below = words.Usual(r.Usual, lasted)
	}
	if due == nil || r.Paused {
		return t
	}
	if len(due.Doubts) > 0 {
		t.doubt = words.Doubt(due.Doubts[0])
	}
	_, middle, latest := due.Next.At()
	if r.At > latest {
		t.late = true
		t.label, t.digits = words.ChargeLate, words.Stopwatch(r.At-middle)
		return t
	}
	low, mid, high := due.Next.Left(r.At)
	t.minutes = true
	t.label = words.NextChargeIn + ", " + words.LastAgo(t.digits)
	t.digits, t.below = strconv.Itoa(max(mid, 0)), words.Between(low, high)
	return t
}

// timer paints the largest thing on the screen: the time to the next charge,
// or as long as nothing forecasts it, the time since the last.
func (p painter) timer(g cell.Grid, r figure.Reading, due *forecast.Due, scale int) {
	w, h := g.Size()
	t := timedBy(r, due)
	label, digits := p.style(theme.Quiet), p.style(theme.Now)
	if t.late {
		label, digits = p.style(theme.Look), p.style(theme.Strong)
	}
	x := 2
	if r.Paused {
		x += g.Text(x, 0, words.WorkPaused+", ", p.style(theme.Look))
	}
	x += g.Text(x, 0, g.Cut(t.label, w-x), label)
	p.big(g, 2, 1, t.digits, scale, digits)
	n, rows := BigSize(t.digits, scale)
	beside := 3 + n
	if t.minutes {
		beside += g.Text(beside, rows, words.MinutesShort, digits) + 2
	}
	switch {
	case w-beside > 16:
		g.Wrap(cell.Rect{X: beside, Y: 1, W: w - beside - 1, H: rows}, t.doubt, p.style(theme.Text))
	case t.doubt != "" && digitRows(scale)+2 < h:
		g.TextIn(cell.Rect{X: 2, Y: h - 2, W: w - 2, H: 1}, t.doubt, p.style(theme.Text))
	case t.doubt != "": // that the time may be wrong says more than the time
		t.below, t.pace = t.doubt, false
	}
	switch {
	case digitRows(scale)+1 < h:
		p.pace(g, h-1, t, r.Usual)
	case t.below != "" && w > x+3+g.Width(t.below):
		g.Text(x+1, 0, p.m.Dot+" "+t.below, p.style(theme.Quiet))
	}
}

// pace writes the line below the digits, and draws how the time stands to the
// usual: a bar twice the usual long, with the usual marked in its middle.
func (p painter) pace(g cell.Grid, y int, t timed, usual time.Duration) {
	w, _ := g.Size()
	x := 2
	if t.below != "" {
		x += g.Text(x, y, g.Cut(t.below, w-x-1), p.style(theme.Text)) + 2
	}
	if !t.pace || w-x-2 < 8 {
		return
	}
	long := w - x - 2
	filled := min(int(float64(long)*t.lasted.Seconds()/(2*usual.Seconds())), long)
	for i := range long {
		c, s := p.m.BarLine, p.style(theme.Frame)
		if i < filled {
			c, s = p.m.BarFull, p.style(theme.Now)
		}
		if i == long/2 {
			c, s = p.m.BarTick, p.style(theme.Strong)
		}
		g.Set(x+i, y, c, s)
	}
}
