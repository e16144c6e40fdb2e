package chart

import (
	"math"

	"chargehand/tui/cell"
	"chargehand/tui/theme"
)

// How far below and above the heat that is enough the rows of Heats go, in Celsius.
const heatsBelow, heatsAbove = 400, 300

// Heats draws how hot the hearth was over the day, as high as it was hot, bold where it was hot
// enough, with a line where that begins and its words; under it the ground, the marks and the
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
	steps := []rune(" ▁▂▃▄▅▆▇█")
	if th.ASCII {
		steps = []rune("  ..::###")
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
		for y := range rows {
			part := math.Min(height(celsius)-float64(rows-1-y), 1)
			if n := int(math.Round(part * 8)); n > 0 {
				g.Set(x, y, steps[n], th.Style(role))
			}
		}
	}
	if line > 0 {
		g.Text(t.from+1, line-1, words, th.Style(theme.Quiet))
	}
}
