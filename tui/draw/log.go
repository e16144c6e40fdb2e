package draw

import (
	"chargehand/tui/cell"
	"chargehand/tui/theme"
)

// Log paints the last entries, the newest lowest and bold, so that the eye finds
// it where the answer is.
func (p Pen) Log(g cell.Grid, log []LogLine, lined bool) {
	_, h := g.Size()
	y := 0
	if lined && h > 1 {
		p.Line(g)
		y = 1
	}
	n := min(len(log), h-y)
	w, _ := g.Size()
	for i := range max(n, 0) {
		p.logLine(g.Sub(cell.Rect{X: 1, Y: h - 1 - i, W: w - 1, H: 1}), log[i], i == 0)
	}
}

func (p Pen) logLine(g cell.Grid, l LogLine, newest bool) {
	w, _ := g.Size()
	style := p.Style(theme.Text)
	if newest {
		style = p.Style(theme.Strong)
	}
	if l.Struck {
		style = p.Style(theme.Struck)
	}
	x := 1 + g.Text(1, 0, l.At, p.Style(theme.Quiet)) + 1
	switch {
	case l.Struck:
		g.Text(x, 0, p.M.Struck, p.Style(theme.Struck))
	case l.Late:
		x += g.Text(x, 0, p.M.Late, p.Style(theme.Quiet)) - 1
	}
	text := l.Text
	if l.Brief != "" && g.Width(text) > w-x-2 {
		text = l.Brief
	}
	g.TextIn(cell.Rect{X: x + 2, W: w - x - 2, H: 1}, text, style)
}

// LogLine is one entry as the log shows it.
type LogLine struct {
	At, Text     string
	Brief        string // for where the text has no room; "" for none
	Struck, Late bool
}
