package paint

import (
	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/picture"
	"chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/theme"
)

// Fire paints the screen at the fire on all of g but its foot, which is the
// same on every screen (see Foot).
func Fire(g cell.Grid, th theme.Theme, r figure.Reading, v FireView) {
	w, h := g.Size()
	if w < MinW || h < MinH {
		TooSmall(g, th)
		return
	}
	with(th).fire(g, LayoutOf(w, h), r, v)
}

// fire paints Fire in the places of a layout.
func (p painter) fire(g cell.Grid, l Layout, r figure.Reading, v FireView) {
	w, _ := g.Size()
	p.top(g.Sub(l.Top), p.topOf(r, v, w >= 100))
	p.shaft(g.Sub(l.Shaft), picture.From(r), v.Chemistry)
	stay := downFigures
	if len(v.Warnings) > 0 {
		l, stay = p.raisedFor(g, l, r, v.Warnings), 0 // with both the card and a warning there is no room for what else is known
	}
	if r.Phase == entry.BurnsDown {
		l = l.headed(burnDownRows, stay)
	}
	p.head(g, l, r, v)
	p.figures(g.Sub(l.Figures), r)
	p.notice(g.Sub(l.Notice), r, v)
	p.strip(g.Sub(l.Strip), r)
	if l.Lined {
		p.divide(g, l)
	}
	if v.Caution != nil && (len(v.Warnings) == 0 || !l.Shaft.Empty()) {
		p.caution(g.Sub(cautionRoom(l)), *v.Caution)
	}
}

// head paints the time to the charge and the charge, or in their place the
// burn-down card.
func (p painter) head(g cell.Grid, l Layout, r figure.Reading, v FireView) {
	if r.Phase == entry.BurnsDown {
		p.burnDown(g.Sub(l.head()), r, v)
		return
	}
	p.timer(g.Sub(l.Timer), r, v.Due, l.Scale)
	p.next(g.Sub(l.Next), r, v)
}

// topOf is the top line of Fire.
func (p painter) topOf(r figure.Reading, v FireView, wide bool) TopView {
	t := TopView{
		Title: v.Title, By: r.By, Kept: v.Kept, Keeping: v.Keeping, NotKept: v.NotKept, Trouble: v.Trouble, Past: v.Past,
		NoBook: v.NoBook, Phase: phaseOf(r), Clock: v.Now.Format("2 Jan " + words.Clock),
	}
	if name := r.Light.Furnace.Name; name != "" && name != v.Title && wide {
		t.Title += " " + p.m.Dot + " " + name
	}
	if r.Light.Undated || !wide {
		t.Clock = v.Now.Format(words.Clock)
	}
	return t
}

// phaseOf is the phase and how long it has lasted; once the smelt is over, how
// long that took.
func phaseOf(r figure.Reading) string {
	if r.Phase.Over() {
		return words.PhaseAfter(r.Phase, r.Since)
	}
	return words.Phase(r.Phase) + " " + words.Lasted(r.At-r.Since)
}

// divide draws the line between the shaft and the rest and joins it to those
// that run across.
func (p painter) divide(g cell.Grid, l Layout) {
	x, s := l.Timer.X, p.style(theme.Frame)
	for y := l.Shaft.Y; y < l.Shaft.Bottom(); y++ {
		c := p.m.VLine
		if y == l.Figures.Y || (y == l.Notice.Y && l.Notice.H > 1) {
			c = p.m.TeeRight
		}
		g.Set(x, y, c, s)
	}
}

// TooSmall says that the window is too small for any screen.
func TooSmall(g cell.Grid, th theme.Theme) {
	p := with(th)
	w, h := g.Size()
	y := max(h/2-1, 0)
	for i, text := range []string{words.WindowTooSmall, words.ThisBig(MinW, MinH)} {
		g.TextIn(cell.Rect{X: 0, Y: y + i, W: w, H: 1}, text, p.style(theme.Text))
	}
}
