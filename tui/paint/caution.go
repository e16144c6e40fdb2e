package paint

import (
	"chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/theme"
)

// CautionText is what a caution says: what may hurt, the fact, the usual care,
// and that local rules come first.
type CautionText struct{ Title, Fact, Care, Local string }

// Caution paints a caution over Fire: over the picture of the shaft, or where
// there is none over the figures and the log. It never hides the timer, the
// next charge or the foot; see CautionShows for warnings.
func Caution(g cell.Grid, th theme.Theme, title, fact, care, local string) {
	w, h := g.Size()
	if w < MinW || h < MinH {
		return
	}
	with(th).caution(g.Sub(cautionRoom(LayoutOf(w, h))), CautionText{title, fact, care, local})
}

// CautionShows tells whether a caution is shown at this size of the window.
// Where it would lie over a warning that stands it is not: the warning comes
// first, and the caution when it has cleared.
func CautionShows(w, h int, far, warned bool) bool {
	if w < MinW || h < MinH {
		return false
	}
	return !warned || !far && !LayoutOf(w, h).Shaft.Empty()
}

// cautionRoom is the part of Fire that a caution may cover.
func cautionRoom(l Layout) cell.Rect {
	if !l.Shaft.Empty() {
		return l.Shaft
	}
	r := l.head()
	return cell.Rect{Y: r.Bottom(), W: r.W, H: l.Foot.Y - r.Bottom()}
}

// most columns of text that are easy to read.
const cautionColumns = 72

// cautionRows is how many rows a caution wants at a width.
func (p painter) cautionRows(w int, c CautionText) int {
	g, inner := cell.New(0, 0, p.th.ASCII), min(w-4, cautionColumns)
	return 2 + g.Rows(c.Fact, inner) + g.Rows(c.Care, inner) + g.Rows(c.Local, inner)
}

// caution paints the card as tall as it needs at the top of g. Where it has too
// few rows the frame goes, then the local rules, then the end of the fact.
func (p painter) caution(g cell.Grid, c CautionText) {
	w, h := g.Size()
	if h < 1 || w < 20 {
		return
	}
	if need := p.cautionRows(w, c); need <= h {
		card := g.Sub(cell.Rect{W: min(w, cautionColumns+4), H: need})
		p.frame(card, c.Title)
		p.say(card.Sub(card.Bounds().Inset(2, 1)), c)
		return
	}
	g.Fill(g.Bounds(), ' ', p.style(theme.Text))
	title := " " + p.m.Look + " " + c.Title + " "
	n := g.Text(1, 0, title, p.style(theme.Look)) + 2
	if h == 1 {
		g.TextIn(cell.Rect{X: n, W: w - n - 1, H: 1}, c.Care, p.style(theme.Strong))
		return
	}
	room := h - 1
	care := min(g.Rows(c.Care, w-2), room)
	local := g.Rows(c.Local, w-2)
	y := 1
	if care+local >= room {
		local = 0
	}
	if fact := room - care - local; fact > 0 {
		y += g.Wrap(cell.Rect{X: 1, Y: y, W: w - 2, H: fact}, c.Fact, p.style(theme.Text))
	}
	y += g.Wrap(cell.Rect{X: 1, Y: y, W: w - 2, H: care}, c.Care, p.style(theme.Strong))
	g.Wrap(cell.Rect{X: 1, Y: y, W: w - 2, H: min(local, h-y)}, c.Local, p.style(theme.Quiet))
}

// say writes the three texts one below the other.
func (p painter) say(g cell.Grid, c CautionText) {
	w, h := g.Size()
	y := g.Wrap(cell.Rect{W: w, H: h}, c.Fact, p.style(theme.Text))
	y += g.Wrap(cell.Rect{Y: y, W: w, H: h - y}, c.Care, p.style(theme.Strong))
	g.Wrap(cell.Rect{Y: y, W: w, H: h - y}, c.Local, p.style(theme.Quiet))
}

// frame draws a blank card with its title in the upper edge.
func (p painter) frame(g cell.Grid, title string) {
	w, h := g.Size()
	s := p.style(theme.Frame)
	g.Fill(g.Bounds(), ' ', p.style(theme.Text))
	for _, y := range []int{0, h - 1} {
		g.Fill(cell.Rect{Y: y, W: w, H: 1}, p.m.HLine, s)
	}
	for _, x := range []int{0, w - 1} {
		g.Fill(cell.Rect{X: x, W: 1, H: h}, p.m.VLine, s)
	}
	g.Set(0, 0, p.m.TopLeft, s)
	g.Set(w-1, 0, p.m.TopRight, s)
	g.Set(0, h-1, p.m.LowLeft, s)
	g.Set(w-1, h-1, p.m.LowRight, s)
	if long := words.CautionMark + ": " + title; g.Width(long) <= w-9 {
		title = long
	}
	g.Text(2, 0, " "+p.m.Look+" "+g.Cut(title, w-9)+" ", p.style(theme.Look))
}
