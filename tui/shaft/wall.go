package shaft

import (
	"chargehand/tui/cell"
	"chargehand/tui/glow"
	"chargehand/tui/theme"
)

// The clay warms up where it is drawn next to what glows: a column takes so much
// of the glow of that share of the heat at the wall, in Celsius, from the least
// on.
const (
	warmShare = 0.72
	warmFrom  = 420.0
)

var warmth = []float64{0.5, 0.2}

// walls paints the clay of one row.
func (p *painter) walls(row, from, to int) {
	middle, fall := p.heat.Middle(p.p.CM(row))
	hot := 0.0
	if at, _ := p.standsAt(p.p.CM(row)); at != pit {
		hot = warmShare * (middle - fall)
	}
	for d := range p.p.Wall {
		warm := 0.0
		if d < len(warmth) && hot > warmFrom {
			warm = warmth[d]
		}
		for _, x := range [2]int{from - 1 - d, to + d} {
			ink := p.clay(x, row, hot, warm)
			p.g.Set(x, row, ' ', cell.Style{Ink: ink, Paper: ink})
		}
	}
}

// clay is the colour of the clay at a cell.
func (p *painter) clay(x, row int, hot, warm float64) cell.Ink {
	if p.th.Profile == theme.Fixed256 {
		if warm > 0.3 && hot > 600 {
			return cell.Index(130)
		}
		return p.th.Ink(theme.Clay)
	}
	r, g, b := p.th.RGB(theme.Clay)
	c := glow.Colour{R: r, G: g, B: b}
	if hash(x, row/2, 11)%3 == 0 {
		c = glow.Mix(c, glow.Colour{R: r / 2, G: g / 2, B: b / 2}, 0.07)
	}
	if warm > 0 {
		c = glow.Mix(c, glow.At(hot), warm)
	}
	return full(c)
}

// floor paints the clay under the hearth.
func (p *painter) floor() {
	r := p.p.Rect
	row := r.Bottom() - 1
	from, to := p.p.Span(p.v.Pic, row-1)
	for x := from - p.p.Wall; x < to+p.p.Wall; x++ {
		ink := p.clay(x, row, 0, 0)
		p.g.Set(x, row, '▀', cell.Style{Ink: ink, Paper: p.th.PageInk()})
	}
}
