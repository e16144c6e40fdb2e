package draw

import (
	"chargehand/model/figure"
	"chargehand/model/rule"
	modelwords "chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// speaksOf is the figure that a warning speaks of.
var speaksOf = map[rule.ID]string{
	rule.BurnSlower: modelwords.LineBurn, rule.BurnFaster: modelwords.LineBurn, rule.ChargeOverdue: modelwords.LineBurn, rule.AirShort: modelwords.LineBurn,
	rule.StackLow: modelwords.LineStack, rule.HangUp: modelwords.LineStack, rule.Slip: modelwords.LineStack,
	rule.BlastLost: modelwords.LineBlast, rule.TuyereBlocked: modelwords.LineBlast, rule.TuyereDim: modelwords.LineBlast,
	rule.PressureHigh: modelwords.LinePressure, rule.PressureLow: modelwords.LinePressure, rule.MeterOdd: modelwords.LineBlast,
	rule.RatioOff: modelwords.LineRatio, rule.HearthCold: words.LineHearth, rule.HearthCools: words.LineHearth,
	rule.SlagAt: words.LineSlag, rule.SlagNear: words.LineSlag, rule.SlagThick: words.LineSlag, rule.SlagRises: words.LineSlag,
	rule.SlagStiffens: words.LineSlag, rule.StoresShort: modelwords.LineOre,
	rule.MixRich: modelwords.LineRatio, rule.RatioHigh: modelwords.LineRatio,
	rule.AirWeak: modelwords.LineBlast, rule.AirStrong: modelwords.LineBlast, rule.AirOdd: modelwords.LineBlast,
	rule.OreEarly: words.LineHearth, rule.FireFell: words.LineHearth,
}

func spokenOf(name string, ws []rule.Warning) bool {
	for _, w := range ws {
		if w.Grade > rule.Note && speaksOf[w.Rule] == name {
			return true
		}
	}
	return false
}

// Warned paints the top warning in the rows that are always its own: what is wrong
// and what shows it, then the remedy in full. An act takes them inverse. Where all
// of it does not fit what shows it gives way, and never the remedy.
func (p Pen) Warned(g cell.Grid, r *figure.Reading, ws []rule.Warning, lined bool) {
	w, h := g.Size()
	if lined {
		p.Line(g)
		g = g.Sub(cell.Rect{X: 1, Y: 1, W: w - 1, H: h - 1})
		w, h = g.Size()
	}
	if len(ws) == 0 || h < 1 {
		return
	}
	top := ws[0]
	title, evidence, remedy := p.Units.Warning(top)
	tag, mark := p.Badge(top.Grade)
	strong, plain, quiet := p.Style(theme.Strong), p.Style(theme.Text), p.Style(theme.Quiet)
	if top.Grade == rule.Act {
		g.Fill(g.Bounds(), ' ', tag)
		strong, plain, quiet = tag.With(cell.Bold), tag, tag
	}
	x := 1 + g.Text(1, 0, " "+mark+modelwords.Grade(top.Grade)+" ", tag.With(cell.Bold)) + 1
	since := func(more int) string {
		if w < 60 {
			return modelwords.WarningSeen(top.Acknowledged, more)
		}
		return modelwords.WarningSince(r.Wall(top.Onset), top.Acknowledged, more)
	}
	indent := x
	if w < 90 {
		indent = 1
	}
	said := func(since string) (end int) {
		end = w - 1
		if n := g.TextRight(end, 0, since, quiet); n > 0 {
			end -= n + 2
		}
		return end
	}
	if need := g.Rows(remedy, w-1-indent); need < h {
		what, long := modelwords.Warned(title, evidence), w-3-g.Width(since(len(ws)-1))
		rows := min(g.Rows(what, long-x), h-need)
		also := ws[1:min(1+h-need-rows, len(ws))] // in the rows that are left
		end := said(since(len(ws) - 1 - len(also)))
		g.Wrap(cell.Rect{X: x, W: end - x, H: rows}, InParts(g, what, end-x, rows), strong)
		rows += g.Wrap(cell.Rect{X: indent, Y: rows, W: w - 1 - indent, H: h - rows}, remedy, plain)
		for i, also := range also {
			p.warnedToo(g.Sub(cell.Rect{Y: rows + i, W: w, H: 1}), r, also, top.Grade == rule.Act)
		}
		return
	}
	end := said(modelwords.WarningSeen(false, len(ws)-1))
	x += g.Text(x, 0, modelwords.Titled(title), strong) // the evidence gives way
	first, rest := g.Break(remedy, end-x)
	g.TextIn(cell.Rect{X: x, W: end - x, H: 1}, first, plain)
	g.Wrap(cell.Rect{X: 1, Y: 1, W: w - 2, H: h - 1}, rest, plain)
}

// warnedToo is a warning beside the first, in a row.
func (p Pen) warnedToo(g cell.Grid, r *figure.Reading, also rule.Warning, act bool) {
	w, _ := g.Size()
	tag, mark := p.Badge(also.Grade)
	strong, quiet := p.Style(theme.Text), p.Style(theme.Quiet)
	if act {
		strong, quiet, tag = p.Style(theme.Act), p.Style(theme.Act), p.Style(theme.Act)
	}
	title, evidence, _ := p.Units.Warning(also)
	x := 1 + g.Text(1, 0, " "+mark+modelwords.Grade(also.Grade)+" ", tag) + 1
	end := w - 1
	if n := g.TextRight(end, 0, modelwords.WarningSince(r.Wall(also.Onset), also.Acknowledged, 0), quiet); n > 0 {
		end -= n + 2
	}
	g.TextIn(cell.Rect{X: x, W: end - x, H: 1}, InParts(g, modelwords.Warned(title, evidence), end-x, 1), strong)
}
