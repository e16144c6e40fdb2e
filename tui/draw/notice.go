package draw

import (
	"chargehand/model/figure"
	"chargehand/model/rule"
	modelwords "chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/theme"
)

// Notice paints the top warning, when there is one, those after it that have
// room, and below them the last entries. Without a warning the entries have the
// place and it is calm.
func (p Pen) Notice(g cell.Grid, r *figure.Reading, ws []rule.Warning, log []LogLine) {
	w, h := g.Size()
	if h < 1 || h == 1 && len(ws) == 0 {
		return
	}
	y := 0
	if n := p.FirstTold(g, w-1, r, ws); n.Rows() < h || n.Rows() == 0 { // else the words need the line's row
		p.Line(g)
		y = 1
	}
	if len(ws) > 0 {
		y += p.warnings(g.Sub(cell.Rect{X: 1, Y: y, W: w - 1, H: h - y}), r, ws)
		if y < h-2 {
			p.Line(g.Sub(cell.Rect{Y: y, W: w, H: 1}))
			y++
		}
	}
	for _, l := range log {
		if y >= h {
			return
		}
		p.logLine(g.Sub(cell.Rect{X: 1, Y: y, W: w - 1, H: 1}), l, false)
		y++
	}
}

// Told is what is said of the top warning and where: its grade, what seems
// wrong, what shows it and what usually helps; since when it stands, whether
// somebody has seen it, and how many more there are.
type Told struct {
	badge, what, since, remedy string
	style                      cell.Style
	x, end                     int // columns of what is wrong
	indent                     int // first column of the remedy
	WhatRows, remedyRows       int
}

// most rows that a warning takes when it has them.
const mostWhat, mostRemedy = 3, 5

// Rows is how many it takes in full, WhatRows how many of them say what is wrong.
func (t Told) Rows() int { return t.WhatRows + t.remedyRows }

// Told is what is said of a warning in w columns while so many more stand that
// are not shown.
func (p Pen) Told(g cell.Grid, w int, r *figure.Reading, top rule.Warning, more int) Told {
	title, evidence, remedy := p.Units.Warning(top)
	style, mark := p.Badge(top.Grade)
	t := Told{badge: " " + mark + modelwords.Grade(top.Grade) + " ", what: modelwords.Warned(title, evidence), remedy: remedy, style: style}
	t.since = modelwords.WarningSince(r.Wall(top.Onset), top.Acknowledged, more)
	if w < 60 {
		t.since = modelwords.WarningSeen(top.Acknowledged, more)
	}
	t.x = 2 + g.Width(t.badge)
	t.end = w - 2 - g.Width(t.since)
	t.indent = t.x
	if w < 60 {
		t.indent = 3
	}
	t.WhatRows = min(max(g.Rows(t.what, t.end-t.x), 1), mostWhat)
	t.remedyRows = min(g.Rows(remedy, w-1-t.indent), mostRemedy)
	return t
}

// Badge is how a grade looks, with its mark.
func (p Pen) Badge(grade rule.Grade) (style cell.Style, mark string) {
	switch grade {
	case rule.Look:
		return p.Style(theme.Look), p.M.Look + " "
	case rule.Act:
		return p.Style(theme.Act), p.M.Act + " "
	}
	return p.Style(theme.Strong), ""
}

// FirstTold is what is said of the first warning while it is shown alone.
func (p Pen) FirstTold(g cell.Grid, w int, r *figure.Reading, ws []rule.Warning) Told {
	if len(ws) == 0 {
		return Told{}
	}
	return p.Told(g, w, r, ws[0], len(ws)-1)
}

// warnings paints the first in full, what is wrong of as many others as leave a
// row to the log, and returns the rows it took.
func (p Pen) warnings(g cell.Grid, r *figure.Reading, ws []rule.Warning) int {
	w, h := g.Size()
	shown, rows := 1, p.FirstTold(g, w, r, ws).Rows()
	for ; shown < len(ws); shown++ {
		if rows += p.Told(g, w, r, ws[shown], 0).WhatRows; rows >= h {
			break
		}
	}
	y := p.warning(g, p.Told(g, w, r, ws[0], len(ws)-shown))
	for _, also := range ws[1:shown] {
		t := p.Told(g, w, r, also, 0)
		t.remedy, t.remedyRows = "", 0
		y += p.warning(g.Sub(cell.Rect{Y: y, W: w, H: h - y}), t)
	}
	return y
}

// warning paints one of them and returns the rows it took. Where there are too
// few, the evidence is cut and not the remedy: a remedy cut short could hurt
// somebody.
func (p Pen) warning(g cell.Grid, t Told) int {
	w, h := g.Size()
	g.Text(1, 0, t.badge, t.style)
	g.TextRight(w-1, 0, t.since, p.Style(theme.Quiet))
	rows := min(t.WhatRows, max(h-t.remedyRows, 1))
	g.Wrap(cell.Rect{X: t.x, W: t.end - t.x, H: rows}, InParts(g, t.what, t.end-t.x, rows), p.Style(theme.Strong))
	return rows + g.Wrap(cell.Rect{X: t.indent, Y: rows, W: w - 1 - t.indent, H: min(mostRemedy, h-rows)}, t.remedy, p.Style(theme.Text))
}
