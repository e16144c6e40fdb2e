package light

import (
	"github.com/charmbracelet/x/ansi"

	"chargehand/tui/cell"
	"chargehand/tui/screen"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// labels are the labels and units of the form's fields.
var labels = [fields]struct{ label, unit string }{
	furnaceName:  {words.FormFurnace, ""},
	boreCm:       {words.FormBore, "cm"},
	stackCm:      {words.FormStack, "cm"},
	rimCm:        {words.FormRim, "cm"},
	charcoalName: {words.FormCharcoalName, ""},
	charcoalKg:   {words.FormCharcoalKg, "kg"},
	oreName:      {words.FormOreName, ""},
	oreKg:        {words.FormOreKg, "kg"},
	oreCount:     {words.FormOreCount, ""},
	initials:     {words.FormInitials, ""},
}

// Paint shows the rows, scrolled so that the chosen one is seen.
func (f Screen) Paint(g cell.Grid, sh screen.Shared) {
	screen.Top(g, sh, words.DoSmelt, words.LightAsks)
	body := screen.Body(g)
	n := f.last() + 1
	first := 0 // scrolled so that the row is seen
	if body.H < n {
		first = max(0, min(f.row-body.H/2, n-body.H))
	}
	blank := 0
	if body.H >= n+4 {
		blank = 1
	}
	label := 2
	for _, l := range labels {
		label = max(label, g.Width(l.label))
	}
	for i := first; i < n && i-first < body.H; i++ {
		y := body.Y + i - first
		if i > 0 {
			y += blank
		}
		if i == f.last() {
			y += blank
		}
		f.paintRow(g.Sub(cell.Rect{X: 1, Y: y, W: body.W - 2, H: 1}), sh, i, label)
	}
}

// Columns that a field being typed into may take, and that its remark keeps.
const fieldCells, remarkCells = 40, 24

func (f Screen) paintRow(g cell.Grid, sh screen.Shared, i, label int) {
	th := sh.Theme
	mark := " "
	if i == f.row {
		mark = th.Marks().Picked
	}
	g.Text(0, 0, mark, th.Style(theme.Now))
	switch {
	case i == 0:
		g.Text(2, 0, words.FormStarter, th.Style(theme.Quiet))
		name := f.starters[f.starter].Name
		x := label + 4 + g.Text(label+4, 0, name, th.Style(theme.Strong))
		g.Text(x+2, 0, words.StarterOf(f.starter+1, len(f.starters)), th.Style(theme.Quiet))
	case i == f.last():
		style := th.Style(theme.Strong)
		if i == f.row {
			style = th.Style(theme.Picked)
		}
		g.Text(2, 0, " "+words.DoLight+" ", style)
	default:
		r := f.rows[i-1]
		l := labels[r.id]
		g.Text(2, 0, l.label, th.Style(theme.Quiet))
		x := label + 4
		if i == f.row {
			w, _ := g.Size()
			field := cell.Rect{X: x, W: max(min(fieldCells, w-x-remarkCells), 8), H: 1}
			typed := r.input.Draw(th, field.W)
			g.Sub(field).Lay(typed, th.Style(theme.Text))
			x += ansi.StringWidth(typed)
		} else {
			x += g.Text(x, 0, r.input.Text(), th.Style(theme.Strong))
		}
		x += 1 + g.Text(x+1, 0, sh.Units.Name(l.unit), th.Style(theme.Quiet))
		switch {
		case i-1 == f.bad:
			g.Text(x+2, 0, th.Marks().Look+" "+words.FormWrong, th.Style(theme.Look))
		case r.input.Text() == "" && r.id != initials:
			g.Text(x+2, 0, words.FormBlank, th.Style(theme.Quiet))
		case f.isGuess(f.starters[f.starter], r.id):
			g.Text(x+2, 0, words.FormGuess, th.Style(theme.Quiet))
		}
	}
}
