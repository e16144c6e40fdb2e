package fire

import (
	"chargehand/model/figure"
	"chargehand/model/rule"
	modelwords "chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/draw"
	"chargehand/tui/scene"
	"chargehand/tui/screen"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// farOther paints, at the top of the far view, the other fire that burns: its minutes as
// tall as those of the first have to be at least, and beside them the gravest warning and
// what its next charge is. It gives what is left of g, and nothing where no other burns.
func farOther(g cell.Grid, sh *screen.Shared) cell.Grid {
	if !sh.Other.Is() {
		return g
	}
	w, h := g.Size()
	rows := (h*farLeast + 99) / 100
	band, rest := g.Bounds().CutTop(rows + 2)
	if rest.H < 12 { // hardly a window: one row says it
		screen.RowOf(g.Sub(cell.Rect{Y: -1, W: w, H: 2}), sh, sh.Other)
		_, rest = g.Bounds().CutTop(1)
		return g.Sub(rest)
	}
	s := sh.Other
	r := s.Reading()
	v := scene.View{Warnings: s.Standing()}
	if r.HasDue {
		v.Due = &r.Due
	}
	p := pen{sh.Pen()}
	in := g.Sub(band)
	t := draw.TimedBy(r, v.Due)
	label := t.Label
	if t.Minutes {
		label = modelwords.NextChargeIn
	}
	style := p.Style(theme.Text)
	if t.Late {
		style = p.Style(theme.Look)
	}
	x := 2 + in.Text(2, 0, in.Cut(screen.NameOf(sh, s), w/3), p.Style(theme.Strong))
	in.Text(x, 0, ": "+label+", "+modelwords.MinutesShort, style)
	in.TextRight(w-1, 0, screen.Global.Other.Help().Key+" "+words.ToThat, p.Style(theme.Quiet))
	p.farMinutes(in, t, rows, w*46/100-4)
	p.farOtherSays(in.Sub(cell.Rect{X: w * 52 / 100, Y: 1, W: w - w*52/100, H: rows}), r, v.Warnings)
	in.Fill(cell.Rect{Y: rows + 1, W: w, H: 1}, p.M.HLine, p.Style(theme.Frame))
	return g.Sub(rest)
}

// farOtherSays is what there is to know of it besides: a warning before all else.
func (p pen) farOtherSays(g cell.Grid, r *figure.Reading, ws []rule.Warning) {
	w, h := g.Size()
	y := 0
	if len(ws) > 0 {
		title, _, _ := p.Units.Warning(ws[0])
		style, mark := p.Badge(ws[0].Grade)
		x := g.Text(0, 0, " "+mark+modelwords.Grade(ws[0].Grade)+" ", style)
		y += g.Wrap(cell.Rect{X: x + 1, W: w - x - 2, H: min(2, h)}, title, p.Style(theme.Strong))
	}
	if over, why := draw.NoMore(r); over {
		g.TextIn(cell.Rect{Y: y, W: w - 1, H: 1}, why, p.Style(theme.Text))
		return
	}
	for _, part := range r.Next {
		if y >= h {
			return
		}
		g.TextIn(cell.Rect{Y: y, W: w - 1, H: 1}, p.Units.OnePart(draw.Counting(part)), p.Style(theme.Strong))
		y++
	}
}
