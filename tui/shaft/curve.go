package shaft

import (
	"strconv"

	"chargehand/tui/cell"
	"chargehand/tui/glow"
	"chargehand/tui/theme"
)

// hottestDrawn is where the curve ends, in Celsius.
const hottestDrawn = 1500.0

// Curve draws how hot it is by height, beside the furnace at its place: from the
// left as far as it is hot at the least, paler on to what it is at the most. Each
// part has the colour of its heat, which is its own key. The row under it has the
// scale.
func Curve(g cell.Grid, th theme.Theme, p Place, v View, x, w int) {
	heat := HeatOf(v.Pic)
	if !heat.Known() || w < 12 {
		return
	}
	last := p.Row(v.Pic.Floor/2) + 1
	for row := p.Row(v.Pic.Burden); row <= last; row++ {
		low, high := heat.Spread(p.CM(row))
		for i := range w {
			t := (float64(i) + 0.5) / float64(w) * hottestDrawn
			switch {
			case t <= low:
				curveCell(g, th, x+i, row, t, false)
			case t <= high:
				curveCell(g, th, x+i, row, t, true)
			}
		}
	}
	for _, t := range []int{500, 1000, 1500} {
		text := strconv.Itoa(t)
		g.TextRight(x+t*w/int(hottestDrawn), p.Rect.Bottom()-1, text, th.Style(theme.Quiet))
	}
}

// pale is the share of its colour that the less certain part keeps.
const pale = 0.38

func curveCell(g cell.Grid, th theme.Theme, x, y int, celsius float64, less bool) {
	switch {
	case th.ASCII || th.Profile == theme.None:
		c := '█'
		if less {
			c = '░'
		}
		if th.ASCII {
			c = '#'
			if less {
				c = ':'
			}
		}
		g.Set(x, y, c, th.Style(theme.Good))
	case th.Profile == theme.True:
		c := glow.At(celsius)
		if less {
			r, gr, b := th.PageRGB()
			c = glow.Mix(glow.Colour{R: r, G: gr, B: b}, c, pale)
		}
		g.Set(x, y, ' ', cell.Style{Paper: full(c)})
	case less:
		g.Set(x, y, '░', cell.Style{Ink: few(th, celsius)})
	default:
		g.Set(x, y, '█', cell.Style{Ink: few(th, celsius)})
	}
}

// few is the ink of a heat where there are few colours.
func few(th theme.Theme, celsius float64) cell.Ink {
	if th.Profile == theme.Fixed256 {
		return cell.Index(glow.Index(celsius))
	}
	return cell.Basic(glow.Sixteen(celsius).Ink)
}
