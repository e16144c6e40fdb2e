package draw

import (
	"chargehand/tui/cell"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// CautionText is what a caution says: what may hurt, the fact, the usual care,
// that local rules come first, and what takes it away, "" where that is said elsewhere.
type CautionText struct{ Title, Fact, Care, Local, Goes string }

// most columns of text that are easy to read.
const cautionColumns = 72

// CautionRows is how many rows a caution wants at a width.
func (p Pen) CautionRows(w int, c CautionText) int {
	g, inner := cell.New(0, 0, p.Theme.ASCII), min(w-4, cautionColumns)
	return 2 + g.Rows(c.Fact, inner) + g.Rows(c.Care, inner) + g.Rows(c.Local, inner)
}

// Caution paints the card as tall as it needs at the top of g. Where it has too
// few rows the frame goes, then the local rules, then the end of the fact.
func (p Pen) Caution(g cell.Grid, c CautionText) {
	w, h := g.Size()
	if h < 1 || w < 20 {
		return
	}
	if need := p.CautionRows(w, c); need <= h {
		g.Fill(cell.Rect{W: w, H: need}, ' ', p.Style(theme.Text)) // beside the card too: half a remark says nothing
		card := g.Sub(cell.Rect{W: min(w, cautionColumns+4), H: need})
		p.Frame(card, c.Title)
		p.say(card.Sub(card.Bounds().Inset(2, 1)), c)
		if cw, ch := card.Size(); c.Goes != "" && g.Width(c.Goes) <= cw-6 {
			card.TextRight(cw-2, ch-1, " "+c.Goes+" ", p.Style(theme.Quiet))
		}
		return
	}
	g.Fill(g.Bounds(), ' ', p.Style(theme.Text))
	title := " " + p.M.Look + " " + c.Title + " "
	n := g.Text(1, 0, title, p.Style(theme.Look)) + 2
	if h == 1 {
		g.TextIn(cell.Rect{X: n, W: w - n - 1, H: 1}, c.Care, p.Style(theme.Strong))
		return
	}
	for _, goes := range []string{c.Goes, words.CautionEnds} {
		if c.Goes != "" && n+g.Width(goes)+1 < w {
			g.TextRight(w-1, 0, goes, p.Style(theme.Quiet))
			break
		}
	}
	room := h - 1
	care := min(g.Rows(c.Care, w-2), room)
	local := g.Rows(c.Local, w-2)
	y := 1
	if care+local >= room {
		local = 0
	}
	if fact := room - care - local; fact > 0 {
		y += g.Wrap(cell.Rect{X: 1, Y: y, W: w - 2, H: fact}, c.Fact, p.Style(theme.Text))
	}
	y += g.Wrap(cell.Rect{X: 1, Y: y, W: w - 2, H: care}, c.Care, p.Style(theme.Strong))
	g.Wrap(cell.Rect{X: 1, Y: y, W: w - 2, H: min(local, h-y)}, c.Local, p.Style(theme.Quiet))
}

// say writes the three texts one below the other.
func (p Pen) say(g cell.Grid, c CautionText) {
	w, h := g.Size()
	y := g.Wrap(cell.Rect{W: w, H: h}, c.Fact, p.Style(theme.Text))
	y += g.Wrap(cell.Rect{Y: y, W: w, H: h - y}, c.Care, p.Style(theme.Strong))
	g.Wrap(cell.Rect{Y: y, W: w, H: h - y}, c.Local, p.Style(theme.Quiet))
}

// frame draws a blank card with its title in the upper edge.
func (p Pen) Frame(g cell.Grid, title string) {
	w, h := g.Size()
	s := p.Style(theme.Frame)
	g.Fill(g.Bounds(), ' ', p.Style(theme.Text))
	for _, y := range []int{0, h - 1} {
		g.Fill(cell.Rect{Y: y, W: w, H: 1}, p.M.HLine, s)
	}
	for _, x := range []int{0, w - 1} {
		g.Fill(cell.Rect{X: x, W: 1, H: h}, p.M.VLine, s)
	}
	g.Set(0, 0, p.M.TopLeft, s)
	g.Set(w-1, 0, p.M.TopRight, s)
	g.Set(0, h-1, p.M.LowLeft, s)
	g.Set(w-1, h-1, p.M.LowRight, s)
	if long := words.CautionMark + ": " + title; g.Width(long) <= w-9 {
		title = long
	}
	g.Text(2, 0, " "+p.M.Look+" "+g.Cut(title, w-9)+" ", p.Style(theme.Look))
}
