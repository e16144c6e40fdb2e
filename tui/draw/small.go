package draw

import (
	modelwords "chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/theme"
)

// MinW and MinH are the smallest window that screens are laid out for.
const (
	MinW = 40
	MinH = 12
)

// TooSmall says that the window is too small for any screen, and whether it is.
func (p Pen) TooSmall(g cell.Grid) bool {
	w, h := g.Size()
	if w >= MinW && h >= MinH {
		return false
	}
	y := max(h/2-1, 0)
	for i, text := range []string{modelwords.WindowTooSmall, modelwords.ThisBig(MinW, MinH)} {
		g.TextIn(cell.Rect{X: 0, Y: y + i, W: w, H: 1}, text, p.Style(theme.Text))
	}
	return true
}
