package paint

import (
	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/rule"
	"chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/theme"
)

// notKept is the bar that says that entries are NOT kept, as large as a third
// of the screen lets it be.
func (p painter) notKept(w, h int, v FireView) (blocks, int) {
	if v.NotKept == 0 {
		return blocks{}, 0
	}
	text := p.m.Act + " " + words.EntriesNotKept(v.NotKept)
	b, rows := p.panelOf(text, w-4, h/5, max(h/16, 1))
	if v.Trouble != "" && b.wide > 0 {
		rows++
	}
	return b, rows
}

func (p painter) farNotKept(g cell.Grid, b blocks, v FireView) {
	w, h := g.Size()
	if h == 0 {
		return
	}
	style := p.style(theme.Act)
	if b.wide == 0 || h <= b.rows() && v.Trouble != "" { // no room for blocks and the reason
		b = blocks{lines: []string{p.m.Act + " " + words.EntriesNotKept(v.NotKept)}}
		if v.Trouble != "" {
			b.lines[0] += ": " + v.Trouble
		}
		p.panel(g, b, style)
		return
	}
	p.panel(g, b, style)
	if v.Trouble != "" {
		g.TextIn(cell.Rect{X: 2, Y: h - 1, W: w - 3, H: 1}, v.Trouble, style)
	}
}

// farNotice is how many rows the place below the charge wants.
func (p painter) farNotice(w, h, high int, r figure.Reading, v FireView) int {
	switch {
	case len(v.Warnings) > 0:
		_, rows := p.farTitle(w, h/2, high, v.Warnings[0])
		_, evidence, remedy := p.u.Warning(v.Warnings[0])
		g := cell.New(0, 0, p.th.ASCII)
		rows += g.Rows(remedy, w-4)
		if h >= 30 {
			rows += g.Rows(evidence, w-4)
		}
		return rows
	case v.Caution != nil:
		return p.cautionRows(w, *v.Caution)
	case r.Phase == entry.BurnsDown:
		return min(6, h/3) + min(len(words.ReadyChecks), h/12)
	}
	return 0
}

// farTitle is how large the title of a warning can be, with its mark: a quarter
// of the digits, since the charge comes first.
func (p painter) farTitle(w, h, high int, warning rule.Warning) (blocks, int) {
	title, _, _ := p.u.Warning(warning)
	_, mark := p.badge(warning.Grade)
	return p.panelOf(mark+title, w-4, h, max(high/4, 1))
}

// farWarning draws the title of the top warning as large as its remedy lets
// it, on the paper of its grade, and the remedy below in plain letters.
func (p painter) farWarning(g cell.Grid, ws []rule.Warning, high int) {
	w, h := g.Size()
	if h == 0 {
		return
	}
	top := ws[0]
	_, evidence, remedy := p.u.Warning(top)
	style, _ := p.badge(top.Grade)
	need := g.Rows(remedy, w-4)
	b, rows := p.farTitle(w, max(h-need, 1), high, top)
	p.panel(g.Sub(cell.Rect{W: w, H: rows}), b, style)
	more := words.WarningSeen(top.Acknowledged, len(ws)-1)
	if n := g.Width(more) + 2; b.wide > 0 && 2+b.width()+n <= w || b.wide == 0 && 2+g.Width(b.lines[0])+n <= w {
		g.TextRight(w-1, rows-1, more, style)
	}
	if spare := h - rows - need; spare > 0 {
		rows += g.Wrap(cell.Rect{X: 2, Y: rows, W: w - 4, H: spare}, evidence, p.style(theme.Text))
	}
	g.Wrap(cell.Rect{X: 2, Y: rows, W: w - 4, H: h - rows}, remedy, p.style(theme.Strong))
}

// farDown lists what the end of burn-down is judged by.
func (p painter) farDown(g cell.Grid, r figure.Reading, v FireView) {
	w, h := g.Size()
	y := p.facts(g, 0, p.downFacts(r, v))
	if y+len(words.ReadyChecks) < h {
		y++
	}
	p.ready(g.Sub(cell.Rect{X: 2, Y: y, W: w - 3, H: h - y}), v.Ready)
}
