package fire

import (
	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/tui/cell"
	"chargehand/tui/draw"
	"chargehand/tui/scene"
	"chargehand/tui/theme"
)

// pen draws the far view and the decision card.
type pen struct{ draw.Pen }

// paintFar paints the far view on all of g but its foot: what is read from five
// metres. The time to the charge, what the charge is, and what is wrong, each
// as large as it fits; figures and history stay at the near view.
func paintFar(g cell.Grid, p pen, r *figure.Reading, v scene.View) {
	w, h := g.Size()
	roomy := farRoomy(w, h)
	g = p.farLost(g, v)
	w, h = g.Size()
	if r.Phase.Over() && v.Result != nil {
		paintFarResult(g, p, r, v)
		return
	}
	if roomy {
		paintFarRoomy(g, p, r, v)
		return
	}
	t := farTimedBy(r, v)
	bar, barRows := p.notKept(w, h, v)
	high := p.farHigh(w, h, t)
	l := farLayoutOf(w, h, high, barRows, 2+draw.DigitRows(p.Whole(1)), p.farNotice(w, h, high, r, v))
	p.farNotKept(g.Sub(l.Bar), bar, v)
	p.farLabel(g.Sub(l.Label), t, v)
	p.farDigits(g.Sub(l.Digits), t, high)
	p.farNext(g.Sub(l.Next), r, v, high)
	switch {
	case len(v.Warnings) > 0:
		p.farWarning(g.Sub(l.Notice), v.Warnings, high)
	case v.Caution != nil:
		p.Caution(g.Sub(l.Notice), *v.Caution)
	case r.Phase == entry.BurnsDown:
		p.farDown(g.Sub(l.Notice), r, v)
	}
}

// farLost says in a row of its own over all else that entries of the smelt are lost,
// and gives what is left of g.
func (p pen) farLost(g cell.Grid, v scene.View) cell.Grid {
	if v.Lost == "" {
		return g
	}
	row, rest := g.Bounds().CutTop(1)
	style := p.Style(theme.Look)
	g.Fill(row, ' ', style)
	g.TextIn(cell.Rect{X: 2, W: row.W - 3, H: 1}, p.M.Look+" "+v.Lost, style)
	return g.Sub(rest)
}

// farLayout says where the parts of the far view stand. They tile the window.
type farLayout struct {
	Bar    cell.Rect // entries are NOT kept
	Label  cell.Rect // what the digits count
	Digits cell.Rect
	Next   cell.Rect
	Notice cell.Rect // the top warning
	Foot   cell.Rect
}

func (l farLayout) rects() []cell.Rect {
	return []cell.Rect{l.Bar, l.Label, l.Digits, l.Next, l.Notice, l.Foot}
}

// farLayoutOf lays out a window around digits whose size depends on it alone:
// they stay as they are whatever else there is to say. The next charge keeps so
// many rows, which is one line of draw.Blocks, or where there are hardly any, two.
func farLayoutOf(w, h, high, bar, next, notice int) farLayout {
	var l farLayout
	body := cell.Rect{W: w, H: h}
	l.Foot, body = body.CutBottom(draw.FootRows)
	digits := draw.DigitRows(high)
	l.Bar, body = body.CutTop(min(bar, body.H-digits-3))
	l.Label, body = body.CutTop(1)
	l.Digits, body = body.CutTop(digits)
	if body.H < next+3 {
		next = 2
	}
	l.Notice, l.Next = body.CutBottom(min(notice, body.H-next))
	return l
}

// farLabel says what the digits count, whether this is now, and how safe the
// log is.
func (p pen) farLabel(g cell.Grid, t farTimed, v scene.View) {
	w, _ := g.Size()
	end := w - 1
	if v.NotKept == 0 && w >= 60 {
		end -= p.Safety(g, end, draw.TopView{Kept: v.Kept, Keeping: v.Keeping, NoBook: v.NoBook}) + 2
	}
	x := 2
	for _, is := range []string{v.Tag, v.Past} {
		if is != "" {
			x += g.Text(x, 0, " "+g.Cut(is, end-x-2)+" ", p.Style(theme.Look)) + 2
		}
	}
	style := p.Style(theme.Text)
	if t.Late {
		style = p.Style(theme.Look)
	}
	label := t.Label
	if v.Fire != "" {
		label = v.Fire + ": " + label
	}
	g.TextIn(cell.Rect{X: x, W: end - x, H: 1}, label, style)
}
