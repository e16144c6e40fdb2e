package fire

import (
	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/rule"
	modelwords "chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/draw"
	"chargehand/tui/scene"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// notKept is the bar that says that entries are NOT kept, else what is asked, as large as a third
// of the screen lets it be.
func (p pen) notKept(w, h int, v scene.View) (draw.Blocks, int) {
	text := p.M.Act + " " + modelwords.EntriesNotKept(v.NotKept)
	switch {
	case v.NotKept == 0 && v.Asked == "":
		return draw.Blocks{}, 0
	case v.NotKept == 0: // a list that is open waits for a key
		text = p.M.Ask + " " + v.Asked
	}
	b, rows := p.PanelOf(text, w-4, h/5, max(h/16, 1))
	if v.Trouble != "" && b.Wide > 0 {
		rows++
	}
	return b, rows
}

func (p pen) farNotKept(g cell.Grid, b draw.Blocks, v scene.View) {
	w, h := g.Size()
	if h == 0 {
		return
	}
	style := p.Style(theme.Act)
	if v.NotKept == 0 {
		if style = p.Style(theme.Picked); b.Wide == 0 {
			b = draw.Blocks{Lines: []string{p.M.Ask + " " + v.Asked}}
		}
		p.Panel(g, b, style)
		return
	}
	if b.Wide == 0 || h <= b.Rows() && v.Trouble != "" { // no room for draw.Blocks and the reason
		b = draw.Blocks{Lines: []string{p.M.Act + " " + modelwords.EntriesNotKept(v.NotKept)}}
		if v.Trouble != "" {
			b.Lines[0] += ": " + v.Trouble
		}
		p.Panel(g, b, style)
		return
	}
	p.Panel(g, b, style)
	if v.Trouble != "" {
		g.TextIn(cell.Rect{X: 2, Y: h - 1, W: w - 3, H: 1}, v.Trouble, style)
	}
}

// farNotice is how many rows the place below the charge wants.
func (p pen) farNotice(w, h, high int, r *figure.Reading, v scene.View) int {
	switch {
	case len(v.Warnings) > 0:
		_, rows := p.farTitle(w, h/2, high, v.Warnings[0])
		_, evidence, remedy := p.Units.Warning(v.Warnings[0])
		g := cell.New(0, 0, p.Theme.ASCII)
		rows += g.Rows(remedy, w-4)
		if h >= 30 {
			rows += g.Rows(evidence, w-4)
		}
		return rows
	case v.Caution != nil:
		return p.CautionRows(w, *v.Caution)
	case r.Phase == entry.BurnsDown:
		return min(6, h/3) + min(len(words.ReadyChecks), h/12)
	}
	return 0
}

// farTitle is how large the title of a warning can be, with its mark: a quarter
// of the digits, since the charge comes first.
func (p pen) farTitle(w, h, high int, warning rule.Warning) (draw.Blocks, int) {
	title, _, _ := p.Units.Warning(warning)
	_, mark := p.Badge(warning.Grade)
	return p.PanelOf(mark+title, w-4, h, max(high/4, 1))
}

// farWarning draws the title of the top warning as large as its remedy lets
// it, on the paper of its grade, and the remedy below in plain letters.
func (p pen) farWarning(g cell.Grid, ws []rule.Warning, high int) {
	w, h := g.Size()
	if h == 0 {
		return
	}
	top := ws[0]
	_, evidence, remedy := p.Units.Warning(top)
	style, _ := p.Badge(top.Grade)
	need := g.Rows(remedy, w-4)
	b, rows := p.farTitle(w, max(h-need, 1), high, top)
	p.Panel(g.Sub(cell.Rect{W: w, H: rows}), b, style)
	more := modelwords.WarningSeen(top.Acknowledged, len(ws)-1)
	if n := g.Width(more) + 2; b.Wide > 0 && 2+b.Width()+n <= w || b.Wide == 0 && 2+g.Width(b.Lines[0])+n <= w {
		g.TextRight(w-1, rows-1, more, style)
	}
	if spare := h - rows - need; spare > 0 {
		rows += g.Wrap(cell.Rect{X: 2, Y: rows, W: w - 4, H: spare}, draw.InParts(g, evidence, w-4, spare), p.Style(theme.Text))
	}
	g.Wrap(cell.Rect{X: 2, Y: rows, W: w - 4, H: h - rows}, remedy, p.Style(theme.Strong))
}

// farDown lists what the end of burn-down is judged by.
func (p pen) farDown(g cell.Grid, r *figure.Reading, v scene.View) {
	w, h := g.Size()
	y := p.Facts(g, r, v.Ending)
	if y+len(words.ReadyChecks) < h {
		y++
	}
	p.Ready(g.Sub(cell.Rect{X: 2, Y: y, W: w - 3, H: h - y}), v.Ending.Ready)
}
