package shaft

import (
	"math"
	"strconv"

	modelwords "chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/theme"
)

// Scale writes the heights above the tuyere to the left of column x, with a tick
// in it: as close as two rows apart, in round steps of the unit.
func Scale(g cell.Grid, th theme.Theme, u modelwords.Units, p Place, x int, floor float64) {
	const unit = "cm"
	step := 5.0
	for u.Metric(step, unit) > 10 {
		step /= 2
	}
	step = math.Floor(step)
	for u.Metric(step, unit)/p.PerRow < 2.2 {
		step *= 2
	}
	top, low := u.Shown(p.Top, unit), u.Shown(floor, unit)
	for h := math.Ceil(low/step) * step; h < top; h += step {
		role := theme.Quiet
		if h == 0 {
			role = theme.Strong
		}
		row := p.Row(u.Metric(h, unit))
		text := strconv.Itoa(int(h))
		if h < 0 {
			text = "−" + text[1:]
		}
		g.TextRight(x, row, text, th.Style(role))
		if h != 0 {
			g.Set(x+1, row, '-', th.Style(theme.Quiet))
		}
	}
	g.TextRight(x, p.Rect.Y-1, u.Name(unit), th.Style(theme.Quiet))
}
