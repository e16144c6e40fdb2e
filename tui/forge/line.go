package forge

import (
	"chargehand/tui/cell"
	"chargehand/tui/screen"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// Paint draws the line of a session at the lower end of the grid: beside each other where
// there is room, else one under the other; the field at hand in the one accent.
func (f session) Paint(g cell.Grid, sh *screen.Shared) {
	th := sh.Theme
	w, h := g.Size()
	columns, wide := 1, w-16
	if w >= 110 {
		columns = 5
		wide = (w - 16) / columns
	}
	lines := (int(fields) + columns) / columns // the line that keeps counts
	each := 1
	if columns > 1 {
		each = 2
	}
	rows := lines*each + 1
	band := cell.Rect{Y: h - rows, W: w, H: rows}
	g.Fill(band, ' ', th.Style(theme.Text))
	rule, in := band.CutTop(1)
	g.Fill(rule, th.Marks().HLine, th.Style(theme.Frame))
	g.TextIn(cell.Rect{X: 2, Y: rule.Y, W: w - 4, H: 1}, " "+words.SessionOf+f.name+" ", th.Style(theme.Now))
	if columns > 1 {
		g.TextIn(cell.Rect{X: 2, Y: in.Y, W: 14, H: 1}, words.AllOptional, th.Style(theme.Quiet))
	}
	for id := range fields + 1 {
		x, y := 15+int(id)%columns*wide, in.Y+int(id)/columns*each
		label, value := words.SessionKeep, words.SessionEnds
		if id < fields {
			label, value = typed[id].label, f.value(id)
			if unit := sh.Units.Name(typed[id].Unit); unit != "" {
				label += ", " + unit
			}
		}
		style := th.Style(theme.Strong)
		if id == fields {
			value, style = words.DoKeepIt, th.Style(theme.Quiet)
		}
		if value == "" {
			value, style = words.NotSaid, th.Style(theme.Quiet)
		}
		mark := "  "
		if id == f.at {
			style, mark = th.Style(theme.Now), th.Marks().Picked+" "
		}
		if columns == 1 {
			g.Text(2, y, mark, th.Style(theme.Now))
			g.TextIn(cell.Rect{X: 4, Y: y, W: 20, H: 1}, label, th.Style(theme.Quiet))
			g.TextIn(cell.Rect{X: 25, Y: y, W: w - 26, H: 1}, value, style)
			continue
		}
		g.TextIn(cell.Rect{X: x + 2, Y: y, W: wide - 3, H: 1}, label, th.Style(theme.Quiet))
		g.Text(x, y+1, mark, th.Style(theme.Now))
		g.TextIn(cell.Rect{X: x + 2, Y: y + 1, W: wide - 3, H: 1}, value, style)
	}
}
