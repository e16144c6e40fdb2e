package paint

import (
	"math"
	"strconv"
	"time"

	"chargehand/model/entry"
	"chargehand/model/figure"
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
	case r.Phase == entry.Extracted || r.Phase == entry.Closed:
		return words.SmeltTook, r.Since
	case since.Known():
		return words.SinceLastCharge, time.Duration(since.P50 * float64(time.Second))
	case r.Phase == entry.Filling:
		return words.SinceFill, r.At - r.Since
	}
	return words.SinceLit, r.At
}

// timer paints the largest thing on the screen: the time to the next charge,
// or as long as nothing forecasts it, the time since the last.
func (p painter) timer(g cell.Grid, r figure.Reading, due *Due, scale int) {
	_, h := g.Size()
	what, lasted := counted(r)
	digits, below := words.Stopwatch(lasted), ""
	style, label := p.style(theme.Now), p.style(theme.Quiet)
	charging := what == words.SinceLastCharge
	switch {
	case charging && due != nil && due.Late():
		what, style, label = words.ChargeLateBy, p.style(theme.Strong), p.style(theme.Look)
		digits = words.Stopwatch(time.Duration(-due.Minutes.P50 * float64(time.Minute)))
	case charging && due != nil:
		what = words.NextChargeIn + " " + p.m.Dot + " " + digits + " " + words.SinceTheLast
		digits = strconv.Itoa(int(math.Floor(due.Minutes.P50)))
		below = words.Between(due.Minutes.P10, due.Minutes.P90)
	}
	if r.Paused {
		what, label = words.WorkPaused+", "+what, p.style(theme.Look)
	}
	n := g.Text(2, 0, what, label)
	p.big(g, 2, 1, digits, scale, style)
	if charging && due != nil && !due.Late() {
		w, rows := BigSize(digits, scale)
		g.Text(3+w, rows, words.MinutesShort, p.style(theme.Now))
	}
	if !charging || (due == nil && r.Usual <= 0) {
		return
	}
	if due == nil {
		below = words.Usual(r.Usual, lasted)
	}
	if row := digitRows(scale) + 1; row < h {
		p.pace(g, h-1, below, lasted, r.Usual)
	} else if w, _ := g.Size(); w > n+5+g.Width(below) {
		g.Text(n+3, 0, p.m.Dot+" "+below, p.style(theme.Quiet))
	}
}

// pace writes how the time stands to the usual, and draws it: a bar twice the
// usual long, with the usual marked in its middle.
func (p painter) pace(g cell.Grid, y int, text string, lasted, usual time.Duration) {
	w, _ := g.Size()
	x := 2
	if text != "" {
		x += g.Text(x, y, text, p.style(theme.Text)) + 2
	}
	if usual <= 0 || w-x-2 < 8 {
		return
	}
	long := w - x - 2
	filled := min(int(float64(long)*lasted.Seconds()/(2*usual.Seconds())), long)
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
