package paint

import (
	"chargehand/model/figure"
	"chargehand/model/rule"
	"chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/theme"
)

// notice paints the top warning, when there is one, and below it the last
// entries. Without a warning the entries have the place and it is calm.
func (p painter) notice(g cell.Grid, r figure.Reading, v FireView) {
	w, h := g.Size()
	if h < 2 {
		return
	}
	p.line(g)
	y := 1
	if len(v.Warnings) > 0 {
		y += p.warning(g.Sub(cell.Rect{X: 1, Y: 1, W: w - 1, H: h - 1}), r, v.Warnings)
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

// warning paints the first of the warnings: its grade, what seems wrong, what
// shows it and what usually helps; since when it stands, whether somebody has
// seen it, and how many more there are. It returns the rows it took.
func (p painter) warning(g cell.Grid, r figure.Reading, ws []rule.Warning) int {
	w, h := g.Size()
	top := ws[0]
	title, evidence, remedy := words.Warning(top)
	style, mark := p.style(theme.Strong), ""
	switch top.Grade {
	case rule.Look:
		style, mark = p.style(theme.Look), p.m.Look+" "
	case rule.Act:
		style, mark = p.style(theme.Act), p.m.Act+" "
	}
	x := 1 + g.Text(1, 0, " "+mark+words.Grade(top.Grade)+" ", style) + 1
	since := words.WarningSince(r.Wall(top.Onset), top.Acknowledged, len(ws)-1)
	if w < 60 {
		since = words.WarningSeen(top.Acknowledged, len(ws)-1)
	}
	end := w - 1 - g.TextRight(w-1, 0, since, p.style(theme.Quiet)) - 1
	if evidence != "" {
		title += ": " + evidence
	}
	rows := max(g.Wrap(cell.Rect{X: x, W: end - x, H: min(3, h-1)}, title, p.style(theme.Strong)), 1)
	return rows + g.Wrap(cell.Rect{X: x, Y: rows, W: w - 1 - x, H: min(5, h-rows)}, remedy, p.style(theme.Text))
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
