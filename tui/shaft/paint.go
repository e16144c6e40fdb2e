package shaft

import (
	"chargehand/model/picture"
	"chargehand/tui/cell"
	"chargehand/tui/theme"
)

// View is what is painted.
type View struct {
	Pic   picture.Picture
	Past  bool // it is no furnace of now: its tuyere is grey
	Plain bool // without the tuyere
	Unlit bool // the furnace as it is filled: charcoal to the floor, each layer a grey of its own
}

// painter is one picture while it is painted.
type painter struct {
	th   theme.Theme
	p    Place
	v    View
	heat Heat
	g    cell.Grid

	n         int // columns inside, of which the next four were made
	falls, at []float64
	bumps     []float64

	iron   bloomShape
	blooms bool
}

// Paint paints the furnace at its place on g.
func Paint(g cell.Grid, th theme.Theme, p Place, v View) {
	if p.Rect.H < 3 || p.Rect.W < 2*p.Wall+3 {
		return
	}
	pt := painter{th: th, p: p, v: v, heat: HeatOf(v.Pic), g: g}
	pt.iron, pt.blooms = bloomOf(v.Pic)
	if th.Profile >= theme.Fixed256 && !th.ASCII {
		pt.halves()
	} else {
		pt.cells()
	}
	pt.mark()
}

// columns prepares a row of so many columns inside the walls.
func (p *painter) columns(n int) {
	if n == p.n {
		return
	}
	p.n = n
	p.falls, p.at = across(n)
	p.bumps = p.heat.bumpAcross(p.at)
}

// place is what stands at a height.
type place int

const (
	pit    place = iota // nothing
	burden              // charcoal, or ore in it
	hatch               // not known
	bath                // slag
)

// standsAt is what stands at a height, and the layer. Where nobody knows what
// stands, the columns differ; see ragged.
func (p *painter) standsAt(cm float64) (place, picture.Slice) {
	pic := p.v.Pic
	known := pic.Bath > pic.Floor
	switch {
	case p.v.Unlit:
		if s, ok := pic.SliceAt(cm); ok {
			return burden, s
		}
		return pit, picture.Slice{}
	case known && cm <= pic.Bath:
		return bath, picture.Slice{}
	case pic.Sunk && cm <= 0: // coals, slag and bloom lie there still
		return hatch, picture.Slice{}
	case !p.burns():
		return pit, picture.Slice{}
	case cm > 0:
		if s, ok := pic.SliceAt(cm); ok {
			return burden, s
		}
		return pit, picture.Slice{}
	case known || cm > unknownFrom*pic.Floor:
		return burden, picture.Slice{}
	}
	return hatch, picture.Slice{}
}

// ragged moves the edge of what is not known up and down by half a row, so that
// it is taken for no level.
func (p *painter) ragged(at place, cm float64, x int) place {
	if at != hatch || p.v.Pic.Sunk {
		return at
	}
	if cm > unknownFrom*p.v.Pic.Floor-float64(hash(x/2, 7, 3)%3)*p.p.PerRow/2 {
		return burden
	}
	return hatch
}

// burns tells whether charcoal stands down to the tuyere.
func (p *painter) burns() bool { return len(p.v.Pic.Slices) > 0 }

// unknownFrom is the share of the hearth's depth that is drawn as glowing
// charcoal where it is not known how high slag stands.
const unknownFrom = 0.4

// mark draws the charging mark across the empty shaft.
func (p *painter) mark() {
	pic := p.v.Pic
	if pic.Mark > p.p.Top || pic.Mark <= 0 {
		return
	}
	row := p.p.Row(pic.Mark)
	if at, _ := p.standsAt(p.p.CM(row)); at != pit {
		return
	}
	from, to := p.p.Span(pic, row)
	s := p.th.Pit(p.th.Style(theme.Strong))
	for x := from; x < to; x++ {
		switch {
		case !p.th.ASCII:
			p.g.Set(x, row, '┄', s)
		case (x-from)%2 == 0:
			p.g.Set(x, row, '-', s)
		}
	}
}

// hash spreads three numbers over 0 to 2^31-1: the grain of a texture, the same
// each time it is painted.
func hash(a, b, c int) int {
	h := uint32(a)*0x9e3779b1 ^ uint32(b)*0x85ebca6b ^ uint32(c)*0xc2b2ae35
	h ^= h >> 15
	h *= 0x2c1b3c6d
	h ^= h >> 12
	h *= 0x297a2d39
	h ^= h >> 15
	return int(h >> 1)
}
