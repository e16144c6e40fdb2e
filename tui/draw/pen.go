package draw

import (
	modelwords "chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/theme"
)

// Pen draws in the styles and marks of a theme, and reads in a person's units.
type Pen struct {
	Theme theme.Theme
	Units modelwords.Units
	M     *theme.Marks
}

// With is the pen of a theme and of units.
func With(th theme.Theme, u modelwords.Units) Pen { return Pen{Theme: th, Units: u, M: th.Marks()} }

// Style is how a role looks.
func (p Pen) Style(r theme.Role) cell.Style { return p.Theme.Style(r) }

// Line draws a line across the top of g.
func (p Pen) Line(g cell.Grid) {
	w, _ := g.Size()
	g.Fill(cell.Rect{W: w, H: 1}, p.M.HLine, p.Style(theme.Frame))
}
