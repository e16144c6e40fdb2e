package chart

import (
	"math"

	"chargehand/tui/cell"
	"chargehand/tui/theme"
)

// How far below and above the heat that is enough the rows of Heats go, in Celsius.
const heatsBelow, heatsAbove = 400, 300

// Heats draws how hot the hearth was over the day, as high as it was hot, its edge bold where it
// was hot enough, with a line where that begins and its words; under it the ground, the marks and the
// hours. It takes every row, four at least.
func (d Day) Heats(g cell.Grid, th theme.Theme, enough float64, words string) {
	w, h := g.Size()
	rows := h - GroundRows
	if w < 20 || rows < 1 || d.Span <= 0 {
		return
	}
	t := track{Day: d, g: g, th: th, from: 1, wide: w - 2, ground: rows}
	t.glow()
	t.marks()
	t.hours(t.ground + 2)
	steps, body := []rune(" ▁▂▃▄▅▆▇█"), '░'
	if th.ASCII {
		steps, body = []rune("  __--=##"), ':'
	}
	height := func(celsius float64) float64 { // in rows
		return (celsius - enough + heatsBelow) / (heatsBelow + heatsAbove) * float64(rows)
	}
	line := rows - 1 - int(height(enough))
	if line >= 0 && line < rows {
		g.Fill(cell.Rect{X: t.from, Y: line, W: t.wide, H: 1}, th.Marks().Fine, th.Style(theme.Frame))
	}
	for x := t.from; x < t.from+t.wide; x++ {
		celsius, known := t.heat(t.when(x))
		if !known {
			continue
		}
		role := theme.Bar
		if celsius >= enough {
			role = theme.Strong
		}
		eighths := min(int(math.Round(8*height(celsius))), 8*rows)
		if eighths < 1 {
			continue
		}
		edge := (eighths - 1) / 8 // rows under it
		for up := range edge {
			g.Set(x, rows-1-up, body, th.Style(theme.Frame))
		}
		g.Set(x, rows-1-edge, steps[eighths-8*edge], th.Style(role))
	}
	if line > 0 {
		g.Text(t.from+1, line-1, words, th.Style(theme.Quiet))
	}
}
