package paint

import (
	"chargehand/model/figure"
	"chargehand/model/rule"
	"chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/theme"
)

// notice paints the top warning, when there is one, those after it that have
// room, and below them the last entries. Without a warning the entries have the place and it is calm.
func (p painter) notice(g cell.Grid, r figure.Reading, v FireView) {
	w, h := g.Size()
	if h < 1 || h == 1 && len(v.Warnings) == 0 {
		return
	}
	y := 0
	if n := p.firstTold(g, w-1, r, v.Warnings); n.rows() < h || n.rows() == 0 { // else the words need the line's row
		p.line(g)
		y = 1
	}
	if len(v.Warnings) > 0 {
		y += p.warnings(g.Sub(cell.Rect{X: 1, Y: y, W: w - 1, H: h - y}), r, v.Warnings)
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

// told is what is said of the top warning and where: its grade, what seems
// wrong, what shows it and what usually helps; since when it stands, whether
// somebody has seen it, and how many more there are.
type told struct {
	badge, what, since, remedy string
	style                      cell.Style
	x, end                     int // columns of what is wrong
	indent                     int // first column of the remedy
	whatRows, remedyRows       int
}

// most rows that a warning takes when it has them.
const mostWhat, mostRemedy = 3, 5

// rows is how many it takes in full.
func (t told) rows() int { return t.whatRows + t.remedyRows }

// told is what is said of a warning in w columns while so many more stand that
// are not shown.
func (p painter) told(g cell.Grid, w int, r figure.Reading, top rule.Warning, more int) told {
	title, evidence, remedy := p.u.Warning(top)
	style, mark := p.badge(top.Grade)
	t := told{badge: " " + mark + words.Grade(top.Grade) + " ", what: words.Warned(title, evidence), remedy: remedy, style: style}
	t.since = words.WarningSince(r.Wall(top.Onset), top.Acknowledged, more)
	if w < 60 {
		t.since = words.WarningSeen(top.Acknowledged, more)
	}
	t.x = 2 + g.Width(t.badge)
	t.end = w - 2 - g.Width(t.since)
	t.indent = t.x
	if w < 60 {
		t.indent = 3
	}
	t.whatRows = min(max(g.Rows(t.what, t.end-t.x), 1), mostWhat)
	t.remedyRows = min(g.Rows(remedy, w-1-t.indent), mostRemedy)
	return t
}

// badge is how a grade looks, with its mark.
func (p painter) badge(grade rule.Grade) (style cell.Style, mark string) {
	switch grade {
	case rule.Look:
		return p.style(theme.Look), p.m.Look + " "
	case rule.Act:
		return p.style(theme.Act), p.m.Act + " "
	}
	return p.style(theme.Strong), ""
}

// firstTold is what is said of the first warning while it is shown alone.
func (p painter) firstTold(g cell.Grid, w int, r figure.Reading, ws []rule.Warning) told {
	if len(ws) == 0 {
		return told{}
	}
	return p.told(g, w, r, ws[0], len(ws)-1)
}

// raisedFor makes room for what is said of the warnings, with a line over it
// and a row of the log under it.
func (p painter) raisedFor(g cell.Grid, l Layout, r figure.Reading, ws []rule.Warning) Layout {
	w, rows := l.Notice.W-1, 2
	stay := leastFigures
	if l.Figures.H+l.Notice.H < 2*leastFigures {
		stay = 0 // there are hardly any rows
	}
	rows += p.firstTold(g, w, r, ws).rows()
	l = l.raised(rows, stay)
	for _, also := range ws[1:] {
		if l.Figures.H <= mostFigures && rows >= l.Notice.H {
			break // there is no more room to be had
		}
		rows += p.told(g, w, r, also, 0).whatRows
		l = l.raised(rows, mostFigures)
	}
	return l
}

// warnings paints the first in full, what is wrong of as many others as leave a
// row to the log, and returns the rows it took.
func (p painter) warnings(g cell.Grid, r figure.Reading, ws []rule.Warning) int {
	w, h := g.Size()
	shown, rows := 1, p.firstTold(g, w, r, ws).rows()
	for ; shown < len(ws); shown++ {
		if rows += p.told(g, w, r, ws[shown], 0).whatRows; rows >= h {
			break
		}
	}
	y := p.warning(g, p.told(g, w, r, ws[0], len(ws)-shown))
	for _, also := range ws[1:shown] {
		t := p.told(g, w, r, also, 0)
		t.remedy, t.remedyRows = "", 0
		y += p.warning(g.Sub(cell.Rect{Y: y, W: w, H: h - y}), t)
	}
	return y
}

// warning paints one of them and returns the rows it took. Where there are too
// few, the evidence is cut and not the remedy: a remedy cut short could hurt
// somebody.
func (p painter) warning(g cell.Grid, t told) int {
	w, h := g.Size()
	g.Text(1, 0, t.badge, t.style)
	g.TextRight(w-1, 0, t.since, p.style(theme.Quiet))
	rows := min(t.whatRows, max(h-t.remedyRows, 1))
	g.Wrap(cell.Rect{X: t.x, W: t.end - t.x, H: rows}, t.what, p.style(theme.Strong))
	return rows + g.Wrap(cell.Rect{X: t.indent, Y: rows, W: w - 1 - t.indent, H: min(mostRemedy, h-rows)}, t.remedy, p.style(theme.Text))
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
