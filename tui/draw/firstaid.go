package draw

import (
	"chargehand/tui/cell"
	"chargehand/tui/letter"
	"chargehand/tui/theme"
)

// firstAidColumns is the most columns of its text.
const firstAidColumns = 100

// FirstAidRows is how many rows what to do first takes at a width, with its title in
// one row.
func (p Pen) FirstAidRows(w int, c CautionText) int {
	g, inner := cell.New(0, 0, p.Theme.ASCII), min(w-3, firstAidColumns)
	return 1 + g.Rows(c.Care, inner) + g.Rows(c.Fact, inner) + g.Rows(c.Local, inner)
}

// FirstAid fills g with what to do first: its fewest words inverse over the whole
// width, in letters as large as the text under them leaves room for, then what to do
// in full. Nobody may have to scroll, and what is too much gives way from the end.
func (p Pen) FirstAid(g cell.Grid, large string, c CautionText) {
	w, h := g.Size()
	if h < 1 || w < 20 {
		return
	}
	g.Fill(g.Bounds(), ' ', p.Style(theme.Text))
	act := p.Style(theme.Act)
	text := p.FirstAidRows(w, c) - 1
	band := max(h-text, 1)
	capital, all := letter.Capitals(large)
	edge := 0 // rows over and under the letters
	if band > 7 {
		edge = 1
	}
	s, fits := letter.Fitting(capital, w-4, band-2*edge)
	if !all || !fits {
		g.Fill(cell.Rect{W: w, H: 1}, ' ', act)
		g.Text(1, 0, p.M.Act+" "+g.Cut(c.Title+": "+large, w-6), act)
		band = 1
	} else {
		wide, high := s.Size(capital)
		band = min(high+2*edge, band)
		g.Fill(cell.Rect{W: w, H: band}, ' ', act)
		s.Text(g, min(2, (w-wide)/2), edge, capital, act, p.Theme.ASCII)
	}
	inner := min(w-3, firstAidColumns)
	y := band
	for _, said := range []struct {
		text string
		role theme.Role
	}{{c.Care, theme.Strong}, {c.Fact, theme.Text}, {c.Local, theme.Quiet}} {
		y += g.Wrap(cell.Rect{X: 2, Y: y, W: inner, H: h - y}, said.text, p.Style(said.role))
	}
}
