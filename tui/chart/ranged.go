package chart

import (
	"math"

	"chargehand/tui/cell"
	"chargehand/tui/theme"
)

// Ranged is a figure in its range: between what and what, where it is good and
// where it stands.
type Ranged struct {
	From, To        float64
	Low, High       string // the ends in words, with no unit where the figure has it
	Good            bool   // there is a good band
	GoodFrom, Until float64
	At              float64
	Outside         bool // the figure is not what it should be
}

// Draw draws the track in w cells from x on, its ends in words on either side. A
// figure beyond an end stands on the end.
func (r Ranged) Draw(g cell.Grid, th theme.Theme, x, y, w int) {
	if w < 3 || r.To <= r.From {
		return
	}
	track, good, at, out := '─', '━', '●', '◆'
	if th.ASCII {
		track, good, at, out = '-', '=', 'O', 'X'
	}
	place := func(v float64) int {
		return min(max(int(math.Round((v-r.From)/(r.To-r.From)*float64(w-1))), 0), w-1)
	}
	for i := range w {
		c, s := track, th.Style(theme.Frame)
		if r.Good && i >= place(r.GoodFrom) && i <= place(r.Until) {
			c, s = good, th.Style(theme.Good)
		}
		g.Set(x+i, y, c, s)
	}
	mark, s := at, th.Style(theme.Strong)
	if r.Outside {
		mark, s = out, th.Style(theme.Warn)
	}
	g.Set(x+place(r.At), y, mark, s)
	g.TextRight(x-1, y, r.Low, th.Style(theme.Quiet))
	g.Text(x+w+1, y, r.High, th.Style(theme.Quiet))
}
