package paint

import (
	"chargehand/tui/cell"
	"chargehand/tui/theme"
)

// notice paints the top warning, when there is one, and below it the last
// entries. Without a warning the entries have the place and it is calm.
func (p painter) notice(g cell.Grid, v FireView) {
	w, h := g.Size()
	if h < 2 {
		return
	}
	p.line(g)
	y := 1
	if v.Warning != nil {
		y += p.warning(g.Sub(cell.Rect{X: 1, Y: 1, W: w - 1, H: h - 1}), *v.Warning)
		if y < h-2 {
			p.line(g.Sub(cell.Rect{Y: y, W: w, H: 1}))
			y++
		}
	}
	for _, l := range v.Log {
		if y >= h {
			return
		}
		p.logLine(g.Sub(cell.Rect{X: 1, Y: y, W: w - 1, H: 1}), l)
		y++
	}
}

// warning paints a warning and returns the rows it took.
func (p painter) warning(g cell.Grid, v Warning) int {
	w, h := g.Size()
	style, mark := p.style(theme.Strong), ""
	switch v.Grade {
	case Look:
		style, mark = p.style(theme.Look), p.m.Look+" "
	case Act:
		style, mark = p.style(theme.Act), p.m.Act+" "
	}
	x := 1 + g.Text(1, 0, " "+mark+v.Name+" ", style) + 1
	end := w - 1 - g.Text(w-1-g.Width(v.At), 0, v.At, p.style(theme.Quiet)) - 1
	text := v.Title
	if v.Evidence != "" {
		text += ": " + v.Evidence
	}
	rows := g.Wrap(cell.Rect{X: x, W: end - x, H: min(2, h-1)}, text, p.style(theme.Strong))
	rows = max(rows, 1)
	return rows + g.Wrap(cell.Rect{X: x, Y: rows, W: w - 1 - x, H: min(3, h-rows)}, v.Remedy, p.style(theme.Text))
}

func (p painter) logLine(g cell.Grid, l LogLine) {
	w, _ := g.Size()
	style := p.style(theme.Text)
	if l.Struck {
		style = p.style(theme.Struck)
	}
	x := 1 + g.Text(1, 0, l.At, p.style(theme.Quiet)) + 1
	switch {
	case l.Struck:
		g.Text(x, 0, p.m.Struck, p.style(theme.Struck))
	case l.Late:
		x += g.Text(x, 0, p.m.Late, p.style(theme.Quiet)) - 1
	}
	g.TextIn(cell.Rect{X: x + 2, W: w - x - 2, H: 1}, l.Text, style)
}
