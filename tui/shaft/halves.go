package shaft

import (
	"chargehand/model/picture"
	"chargehand/tui/cell"
	"chargehand/tui/glow"
	"chargehand/tui/theme"
)

// halves paints with two colours a cell: twice the rows.
func (p *painter) halves() {
	r := p.p.Rect
	for row := r.Y; row < r.Bottom()-1; row++ {
		from, to := p.p.Span(p.v.Pic, row)
		p.columns(to - from)
		p.walls(row, from, to)
		up, low := p.halfRow(2*(row-r.Y)), p.halfRow(2*(row-r.Y)+1)
		ore := up.at == burden && low.at == burden && up.slice.Charge == low.slice.Charge && p.oreIn(up.slice, row)
		for x := from; x < to; x++ {
			p.inside(row, x, x-from, &up, &low, ore)
		}
	}
	p.floor()
	p.bloom()
	p.tuyere()
}

// halfRow is what is the same all along a half row.
type halfRow struct {
	h            int
	cm           float64
	middle, fall float64
	bump         float64
	at           place
	slice        picture.Slice
}

func (p *painter) halfRow(h int) halfRow {
	cm := p.p.cmHalf(h)
	middle, fall := p.heat.Middle(cm)
	r := halfRow{h: h, cm: cm, middle: middle, fall: fall, bump: p.heat.bumpAt(cm)}
	r.at, r.slice = p.standsAt(cm)
	return r
}

// celsius is how hot it is at a column inside.
func (p *painter) celsius(h *halfRow, i int) float64 {
	return min(h.middle-h.fall*p.falls[i]+h.bump*p.bumps[i], glow.Hottest)
}

// inside paints one cell inside the walls.
func (p *painter) inside(row, x, i int, up, low *halfRow, ore bool) {
	upper, lower := p.ragged(up.at, up.cm, x), p.ragged(low.at, low.cm, x)
	if upper == hatch && lower == hatch {
		p.g.Set(x, row, '╱', p.th.Pit(p.th.Style(theme.Quiet)))
		return
	}
	if ore {
		hot := p.celsius(up, i)
		o := oreAt(hot)
		if c, metal := o.grain(up.slice.Charge, x, row-p.p.Row(up.slice.OreTop)); c != 0 {
			p.g.Set(x, row, c, cell.Style{Ink: p.oreInk(o, metal), Paper: p.glow(hot, glow.Lumps/2)})
			return
		}
	}
	pair(p.g, x, row, p.colour(upper, up, i, x), p.colour(lower, low, i, x))
}

// colour is that of one half of a cell.
func (p *painter) colour(at place, h *halfRow, i, x int) cell.Ink {
	switch at {
	case burden:
		if p.v.Unlit {
			return p.glow(greys[h.slice.Charge%2], p.lump(h.slice, x, h.h))
		}
		return p.glow(p.celsius(h, i), p.lump(h.slice, x, h.h))
	case bath:
		return p.slag(h, i)
	}
	return p.th.PitInk()
}

// greys are the heats, in Celsius, whose greys tell the layers of a furnace that is
// not lit apart. They are drawing, no figure.
var greys = [2]float64{150, 350}

// glow is the colour of a lump at a heat.
func (p *painter) glow(celsius float64, lump int) cell.Ink {
	if p.th.Profile == theme.Fixed256 {
		return cell.Index(glow.IndexLump(celsius, lump))
	}
	return full(glow.Lump(celsius, lump))
}

// pair draws a cell of two colours.
func pair(g cell.Grid, x, y int, upper, lower cell.Ink) {
	if upper == lower {
		g.Set(x, y, ' ', cell.Style{Ink: upper, Paper: upper})
		return
	}
	g.Set(x, y, '▀', cell.Style{Ink: upper, Paper: lower})
}
