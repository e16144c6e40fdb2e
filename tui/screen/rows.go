package screen

import (
	modelwords "chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/draw"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// Rows is a place in painted rows, about one smelt, that do not all fit.
type Rows struct{ top int }

// PaintRows paints everything from a row on, above the window too, and gives how many
// rows it takes.
type PaintRows func(g cell.Grid, sh *Shared, from int) int

// Paint shows the rows under the smelt's top line, and how many more there are.
func (r Rows) Paint(g cell.Grid, sh *Shared, title string, paint PaintRows) {
	Top(g, sh, title, modelwords.Marked(sh.Smelt.ID(), modelwords.Mark(sh.Smelt.Light())))
	body := Body(g)
	all := paint(g.Sub(body), sh, -r.top)
	if more := all - r.top - body.H; more > 0 {
		row := cell.Rect{X: body.X, Y: body.Y + body.H - 1, W: body.W, H: 1}
		g.Fill(row, ' ', sh.Theme.Style(theme.Text))
		g.Text(2, row.Y, words.MoreRows(more+1), sh.Theme.Style(theme.Now))
	}
}

// Moved is the place after a key, and whether the key moves at all.
func (r Rows) Moved(sh *Shared, t Typed, paint PaintRows) (Rows, bool) {
	h := sh.H - draw.TopRows - draw.FootRows
	all := paint(cell.New(sh.W, 0, sh.Theme.ASCII), sh, 0)
	to, ok := Move.Moved(t, r.top, max(all-h, 0)+1, h)
	if !ok {
		return r, false
	}
	return Rows{to}, true
}
