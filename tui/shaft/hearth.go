package shaft

import (
	"math"

	"chargehand/model/picture"
	"chargehand/tui/cell"
	"chargehand/tui/glow"
	"chargehand/tui/theme"
)

// The look of slag: dark glass under a bright surface. Temperatures in Celsius
// of the two upper half rows, as they are drawn.
const (
	slagSurface = 1225.0
	slagSkin    = 930.0
	slagFades   = 1.6 // cm in which its redness falls off from the bloom
)

// slag is the colour of a half of a cell in the bath.
func (p *painter) slag(h *halfRow, i int) cell.Ink {
	switch p.depth(h) {
	case 0:
		return p.glow(slagSurface, glow.Lumps/2)
	case 1:
		return p.glow(slagSkin, 0)
	}
	return p.glass(p.nearBloom(h.cm, p.at[i]))
}

// depth is how many half rows a half row lies under the surface.
func (p *painter) depth(h *halfRow) int {
	top := int(math.Ceil((p.p.Top-p.v.Pic.Bath)/p.p.PerRow*2 - 0.5))
	return h.h - top
}

// glass is dark glass, red by so much, 0 to 1.
func (p *painter) glass(red float64) cell.Ink {
	if p.th.Profile == theme.Fixed256 {
		switch {
		case red > 0.6:
			return cell.Index(52)
		case red > 0.2:
			return cell.Index(235)
		}
		return cell.Index(233)
	}
	step := math.Round(red * 8)
	return full(glassShades[int(step)])
}

var glassShades = func() (all [9]glow.Colour) {
	for i := range all {
		red := float64(i) / 8
		all[i] = glow.LCh{L: 8 + 22*red, C: 4 + 26*red, H: 30}.Colour()
	}
	return all
}()

// bloomShape is where the bloom lies: its middle in cm from the axis and above
// the tuyere, and how far it goes from there.
type bloomShape struct{ x, y, rx, ry float64 }

// bloomOf is the bloom as it lies: from the floor up, on the tuyere's side.
func bloomOf(pic picture.Picture) (bloomShape, bool) {
	if pic.Bloom <= 0 || pic.Bath <= pic.Floor {
		return bloomShape{}, false
	}
	h := math.Min(pic.Bloom, -pic.Floor)
	side := -1.0
	if pic.TuyereRight {
		side = 1
	}
	return bloomShape{x: side * 0.08 * pic.Bore, y: pic.Floor + h*0.48, rx: 0.3 * pic.Bore, ry: h * 0.58}, true
}

// holds tells how far a point lies from the outline: below 1 inside.
func (b bloomShape) holds(x, y float64) float64 {
	dx, dy := (x-b.x)/b.rx, (y-b.y)/b.ry
	a := math.Atan2(dy, dx)
	return math.Hypot(dx, dy) / (0.90 + 0.10*math.Sin(3*a) + 0.06*math.Sin(7*a))
}

// nearBloom is how near the bloom a place is, 1 at its outline, falling off.
func (p *painter) nearBloom(cm, x float64) float64 {
	b := p.iron
	if !p.blooms {
		return 0
	}
	beyond := (b.holds(x*p.v.Pic.Bore/2, cm) - 1) * math.Min(b.rx, b.ry)
	return math.Exp(-math.Max(beyond, 0) / slagFades)
}

// bloom draws the bloom in quarters of a cell, with pores.
func (p *painter) bloom() {
	b := p.iron
	if !p.blooms {
		return
	}
	r := p.p.Rect
	for row := p.p.Row(b.y + b.ry*1.2); row < r.Bottom()-1; row++ {
		from, to := p.p.Span(p.v.Pic, row)
		p.columns(to - from)
		h := p.halfRow(2 * (row - r.Y))
		for x := from; x < to; x++ {
			bits := p.quarters(b, row, x, from, to)
			if bits == 0 {
				continue
			}
			hot := math.Max(p.celsius(&h, x-from)-40, 1000)
			s := cell.Style{Ink: p.glow(hot, glow.Lumps/2), Paper: p.bloomGround()}
			p.g.Set(x, row, quarter[bits], s)
		}
	}
}

func (p *painter) bloomGround() cell.Ink {
	if p.th.Profile == theme.Fixed256 {
		return cell.Index(52)
	}
	return full(glow.Of(620).Darker(16).Colour())
}

// quarters are the quarters of a cell that are iron: bits for upper left, upper
// right, lower left, lower right.
func (p *painter) quarters(b bloomShape, row, x, from, to int) (bits int) {
	perCol := p.p.PerRow / 2
	for q := range 4 {
		cx := (float64(x-from) + 0.25 + 0.5*float64(q%2) - float64(to-from)/2) * perCol
		cy := p.p.Top - (float64(row-p.p.Rect.Y)+0.25+0.5*float64(q/2))*p.p.PerRow
		if b.holds(cx, cy) < 1 && hash(x, row-p.p.Rect.Bottom(), q+40)%100 >= 22 {
			bits |= 1 << q
		}
	}
	return bits
}

// quarter are the characters of the quarters of a cell.
var quarter = [16]rune{' ', '▘', '▝', '▀', '▖', '▌', '▞', '▛', '▗', '▚', '▐', '▜', '▄', '▙', '▟', '█'}
