package chart

import (
	"math"

	"chargehand/tui/cell"
	"chargehand/tui/theme"
)

// Part is one cell of a day in a single row: a stretch of it.
type Part struct {
	Ore  float64 // 0 to 1 of the most; 0 for none
	Slow bool    // it burnt slower than usual
	None bool    // the smelt was not burning
}

// Spark draws a day in one row from x on: height is the ore, thin grey is
// charcoal alone, white is slow.
func Spark(g cell.Grid, th theme.Theme, x, y int, parts []Part) {
	steps := []rune("▁▂▃▄▅▆▇█")
	if th.ASCII {
		steps = []rune("_..--==#")
	}
	for i, p := range parts {
		c, role := steps[0], theme.Bar
		switch {
		case p.None:
			continue
		case p.Ore > 0:
			c, role = steps[min(max(int(math.Round(p.Ore*7)), 1), 7)], theme.OreBar
		}
		if p.Slow {
			role = theme.Strong
		}
		g.Set(x+i, y, c, th.Style(role))
	}
}
