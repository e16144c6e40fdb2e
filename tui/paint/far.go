package paint

import (
	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/tui/cell"
	"chargehand/tui/theme"
)

// Far paints the far view on all of g but its foot: what is read from five
// metres. The time to the charge, what the charge is, and what is wrong, each
// as large as it fits; figures and history stay at Fire.
func Far(g cell.Grid, th theme.Theme, r figure.Reading, v FireView) {
	w, h := g.Size()
	if w < MinW || h < MinH {
		TooSmall(g, th)
		return
	}
	p := with(th)
	t := farTimedBy(r, v)
	bar, barRows := p.notKept(w, h, v)
	high := p.farHigh(w, h, t)
	l := farLayoutOf(w, h, high, barRows, 2+digitRows(p.whole(1)), p.farNotice(w, h, high, r, v))
	p.farNotKept(g.Sub(l.Bar), bar, v)
	p.farLabel(g.Sub(l.Label), t, v)
	p.farDigits(g.Sub(l.Digits), t, high)
	p.farNext(g.Sub(l.Next), r, v, high)
	switch {
	case len(v.Warnings) > 0:
		p.farWarning(g.Sub(l.Notice), v.Warnings, high)
	case v.Caution != nil:
		p.caution(g.Sub(l.Notice), *v.Caution)
	case r.Phase == entry.BurnsDown:
		p.farDown(g.Sub(l.Notice), r, v)
	}
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
// many rows, which is one line of blocks, or where there are hardly any, two.
func farLayoutOf(w, h, high, bar, next, notice int) farLayout {
	var l farLayout
	body := cell.Rect{W: w, H: h}
	l.Foot, body = body.CutBottom(FootRows)
	digits := digitRows(high)
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
func (p painter) farLabel(g cell.Grid, t farTimed, v FireView) {
	w, _ := g.Size()
	end := w - 1
	if v.NotKept == 0 && w >= 60 {
		end -= p.safety(g, end, TopView{Kept: v.Kept, Keeping: v.Keeping, NoBook: v.NoBook}) + 2
	}
	x := 2
	if v.Past != "" {
		x += g.Text(x, 0, " "+g.Cut(v.Past, end-x-2)+" ", p.style(theme.Look)) + 2
	}
	style := p.style(theme.Text)
	if t.late {
		style = p.style(theme.Look)
	}
	g.TextIn(cell.Rect{X: x, W: end - x, H: 1}, t.label, style)
}
