package draw

import (
	"math"

	"chargehand/tui/cell"
	"chargehand/tui/theme"
)

// bar is where a figure stands between nought and to, with the good band
// marked when there is one.
type bar struct {
	low, to     float64
	good        bool
	from, until float64 // the good band
	at          float64
}

// bar draws one line of w cells: an end, the line with the good band heavier,
// the figure on it, an end. A figure beyond the end stands on the end.
func (p Pen) bar(g cell.Grid, x, w int, b bar) {
	inner := w - 2
	if inner < 3 || b.to <= 0 {
		return
	}
	place := func(v float64) int {
		return min(max(int(math.Round(v/b.to*float64(inner-1))), 0), inner-1)
	}
	frame := p.Style(theme.Frame)
	g.Set(x, 0, p.M.BarEnd, frame)
	g.Set(x+w-1, 0, p.M.BarEnd, frame)
	for i := range inner {
		c, s := p.M.BarLine, frame
		if b.good && i >= place(b.from) && i <= place(b.until) {
			c, s = p.M.BarGood, p.Style(theme.Text)
		}
		g.Set(x+1+i, 0, c, s)
	}
	at := x + 1 + place(b.at)
	if b.at > b.to {
		at = x + w - 1
	}
	g.Set(at, 0, p.M.BarAt, p.Style(theme.Now))
}
