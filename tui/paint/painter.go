package paint

import (
	"chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/theme"
)

// painter holds the styles and marks of a theme while one frame is painted.
type painter struct {
	th theme.Theme
	m  *theme.Marks
	u  words.Units
}

func with(th theme.Theme) painter { return painter{th: th, m: th.Marks(), u: th.Units} }

func (p painter) style(r theme.Role) cell.Style { return p.th.Style(r) }

// line draws a line across the top of g.
func (p painter) line(g cell.Grid) {
	w, _ := g.Size()
	g.Fill(cell.Rect{W: w, H: 1}, p.m.HLine, p.style(theme.Frame))
}

// Big draws a text in blocks: digits, capital letters and a few signs.
func Big(g cell.Grid, th theme.Theme, x, y int, text string, scale int, s cell.Style) {
	with(th).big(g, x, y, text, scale, s)
}
