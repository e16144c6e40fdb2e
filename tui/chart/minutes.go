package chart

import (
	"math"
	"strconv"

	"chargehand/tui/cell"
	"chargehand/tui/theme"
)

// Minutes is the measure of charcoal that burns now: a block a minute since it
// went in.
type Minutes struct {
	Since            float64 // minutes
	Early, Due, Late float64 // when the next charge is due, minutes since the last one: 10th, 50th, 90th percentile
}

// columns that a block takes, its gap included.
const blockColumns = 3

// Draw draws the blocks over rows of g: gone in grey, still to go in blue, beyond
// the forecast dotted, the band as a line under them, and every fifth minute as
// a number below. It takes rows+2 rows and the width that is returned.
func (m Minutes) Draw(g cell.Grid, th theme.Theme, x, y, w, rows int) int {
	if m.Due <= 0 || w < 4*blockColumns || rows < 1 {
		return 0
	}
	all := int(math.Ceil(max(m.Late, m.Since, m.Due)))
	each := 1
	for (all+each-1)/each*blockColumns > w {
		each++
	}
	blocks := (all + each - 1) / each
	gone, ahead, dotted, full := th.Style(theme.Frame), th.Style(theme.Now), '░', '█'
	if th.ASCII {
		dotted, full = '.', '#'
	}
	for i := range blocks {
		from := float64(i * each)
		c, s := full, ahead
		switch {
		case from+float64(each)/2 < m.Since:
			c, s = '▓', gone
			if th.ASCII {
				c = ':'
			}
		case from+float64(each)/2 > m.Due:
			c = dotted
		}
		g.Fill(cell.Rect{X: x + i*blockColumns, Y: y, W: blockColumns - 1, H: rows}, c, s)
		if minute := i * each; minute%5 == 0 {
			g.Text(x+i*blockColumns, y+rows+1, strconv.Itoa(minute), th.Style(theme.Quiet))
		}
	}
	line := '▀'
	if th.ASCII {
		line = '='
	}
	place := func(v float64) int { return int(math.Round(v / float64(each) * blockColumns)) }
	for i := place(m.Early); i < min(max(place(m.Late), place(m.Early)+1), blocks*blockColumns); i++ {
		g.Set(x+i, y+rows, line, th.Style(theme.Good))
	}
	return blocks * blockColumns
}
