package shaft

import (
	"chargehand/model/picture"
	"chargehand/tui/cell"
	"chargehand/tui/theme"
)

// Arch paints the arch of a furnace that is not lit, hatched as what shuts it is no wall,
// at the side away from the tuyere.
func Arch(g cell.Grid, th theme.Theme, p Place, pic picture.Picture) {
	if pic.Arch <= pic.Floor {
		return
	}
	for row := p.Row(pic.Arch - p.PerRow/2); row < p.Rect.Bottom()-1; row++ {
		from, to := p.Span(pic, row)
		for d := range p.Wall {
			x := to + d
			if pic.TuyereRight {
				x = from - 1 - d
			}
			g.Set(x, row, '╱', th.Style(theme.Clay))
		}
	}
}
