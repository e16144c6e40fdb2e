package shaft

import (
	"math"

	"chargehand/tui/cell"
	"chargehand/tui/glow"
	"chargehand/tui/theme"
)

// cells paints with one character a cell: shades in sixteen colours, more ink
// for more heat without, characters of growing weight in ASCII.
func (p *painter) cells() {
	r := p.p.Rect
	for row := r.Y; row < r.Bottom()-1; row++ {
		from, to := p.p.Span(p.v.Pic, row)
		p.columns(to - from)
		p.fewWalls(row, from, to)
		h := p.halfRow(2*(row-r.Y) + 1)
		h.cm = p.p.CM(row)
		h.at, h.slice = p.standsAt(h.cm)
		ore := h.at == burden && p.oreIn(h.slice, row)
		for x := from; x < to; x++ {
			p.fewInside(row, x, x-from, &h, ore)
		}
	}
	p.fewFloor()
	p.fewBloom()
	p.fewTuyere()
}

// fewInside paints one cell inside the walls.
func (p *painter) fewInside(row, x, i int, h *halfRow, ore bool) {
	switch p.ragged(h.at, h.cm, x) {
	case hatch:
		c := '╱'
		if p.th.ASCII {
			c = '/'
		}
		p.g.Set(x, row, c, p.th.Pit(p.th.Style(theme.Quiet)))
	case bath:
		p.fewSlag(row, x, h)
	case burden:
		if p.v.Unlit {
			p.fewUnlit(row, x, h.slice.Charge)
			return
		}
		if ore {
			p.fewOre(row, x, i, h)
			return
		}
		p.fewGlow(row, x, p.celsius(h, i))
	default:
		p.g.Set(x, row, ' ', p.th.Pit(cell.Style{}))
	}
}

// fewUnlit draws charcoal that is not lit, every other layer sparser.
func (p *painter) fewUnlit(row, x, layer int) {
	c := '░'
	switch {
	case p.th.ASCII && layer%2 == 0:
		c = '.'
	case p.th.ASCII:
		c = ':'
	case layer%2 == 0:
		c = '·'
	}
	p.g.Set(x, row, c, p.th.Pit(p.th.Style(theme.Quiet)))
}

func (p *painter) fewGlow(row, x int, celsius float64) {
	switch {
	case p.th.ASCII:
		p.g.Set(x, row, glow.ASCII(celsius), cell.Style{})
	case p.th.Profile == theme.Base16:
		s := glow.Sixteen(celsius)
		p.g.Set(x, row, s.Char, cell.Style{Ink: cell.Basic(s.Ink), Paper: cell.Basic(s.Paper)})
	default:
		p.g.Set(x, row, glow.Ink(celsius, x, row), cell.Style{})
	}
}

func (p *painter) fewOre(row, x, i int, h *halfRow) {
	s := h.slice
	t := p.celsius(h, i)
	o := oreAt(t)
	c, metal := o.grain(s.Charge, x, row-p.p.Row(s.OreTop))
	switch {
	case p.th.Profile != theme.Base16 || p.th.ASCII:
		mark := '•'
		if p.th.ASCII {
			mark = 'o'
		}
		if c == 0 {
			mark = ' '
		}
		p.g.Set(x, row, mark, cell.Style{Attr: cell.Bold})
	case c == 0:
		p.fewGlow(row, x, t)
	default:
		paper := cell.Basic(0)
		if o != damp {
			paper = cell.Basic(glow.Sixteen(t).Ink)
		}
		p.g.Set(x, row, c, cell.Style{Ink: p.oreInk(o, metal), Paper: paper})
	}
}

// fewSlag draws the surface of the bath and black under it.
func (p *painter) fewSlag(row, x int, h *halfRow) {
	first := p.v.Pic.Bath <= h.cm+p.p.PerRow
	switch {
	case p.th.ASCII && first:
		p.g.Set(x, row, '=', cell.Style{})
	case p.th.Profile == theme.Base16 && first:
		p.g.Set(x, row, '▀', cell.Style{Ink: cell.Basic(3), Paper: cell.Basic(0)})
	case p.th.Profile == theme.Base16:
		p.g.Set(x, row, ' ', cell.Style{Ink: cell.Basic(0), Paper: cell.Basic(0)})
	case first:
		p.g.Set(x, row, '▔', cell.Style{})
	default:
		p.g.Set(x, row, ' ', cell.Style{})
	}
}

// fewWalls draws the clay of one row: two columns in sixteen colours, one
// without, two bars in ASCII.
func (p *painter) fewWalls(row, from, to int) {
	clay := p.th.Style(theme.Clay)
	near, far := '█', ' '
	switch {
	case p.th.ASCII:
		near, far = '|', '|'
	case p.th.Profile == theme.Base16:
		far = '█'
	}
	p.g.Set(from-1, row, near, clay)
	p.g.Set(to, row, near, clay)
	if p.p.Wall > 1 {
		p.g.Set(from-2, row, far, clay)
		p.g.Set(to+1, row, far, clay)
	}
}

func (p *painter) fewFloor() {
	r := p.p.Rect
	row := r.Bottom() - 1
	from, to := p.p.Span(p.v.Pic, row-1)
	c := '▀'
	if p.th.ASCII {
		c = '-'
	}
	for x := from - p.p.Wall; x < to+p.p.Wall; x++ {
		p.g.Set(x, row, c, p.th.Style(theme.Clay))
	}
}

func (p *painter) fewBloom() {
	b := p.iron
	if !p.blooms {
		return
	}
	for row := p.p.Row(b.y + b.ry*1.2); row < p.p.Rect.Bottom()-1; row++ {
		from, to := p.p.Span(p.v.Pic, row)
		for x := from; x < to; x++ {
			bits := p.quarters(b, row, x, from, to)
			switch {
			case bits == 0:
			case p.th.ASCII:
				p.g.Set(x, row, '@', cell.Style{Attr: cell.Bold})
			case p.th.Profile == theme.Base16:
				p.g.Set(x, row, quarter[bits], cell.Style{Ink: cell.Basic(11), Paper: cell.Basic(1)})
			default:
				p.g.Set(x, row, quarter[bits], cell.Style{})
			}
		}
	}
}

// fewTuyere draws the pipe in one row, its mouth and the blast.
func (p *painter) fewTuyere() {
	if p.v.Plain {
		return
	}
	outer, tip, way := p.reach()
	row := p.p.Row(-0.001)
	role := theme.Now
	if p.v.Past {
		role = theme.Past
	}
	blast := p.v.Pic.BlastOn
	if !blast {
		role = theme.Quiet
	}
	s := p.th.Style(role)
	s.Paper = p.black()
	pipe, mouth, stroke := '═', '▶', '━'
	if p.p.right {
		mouth = '◀'
	}
	if p.th.ASCII {
		pipe, mouth, stroke = '=', '>', '>'
		if p.p.right {
			mouth, stroke = '<', '<'
		}
	}
	if !blast {
		mouth = '×'
		if p.th.ASCII {
			mouth = 'x'
		}
	}
	if p.th.Profile == theme.Base16 && !p.th.ASCII {
		pipe, mouth = '▀', '▀'
		if !blast {
			mouth = '×'
		}
	}
	inner := tip + way
	for x := outer; x != inner; x += way {
		up := int(math.Round(float64(p.rise((tip-x)*way)) / 2))
		paper := s
		if (x-tip)*way < -(tuyereIn + p.p.Wall) {
			paper.Paper = 0
		}
		p.g.Set(x, row-up, pipe, paper)
	}
	p.g.Set(tip, row, mouth, s)
	if !blast {
		return
	}
	for i, c := range []rune(" - - ") {
		x := tip + way*(i+1)
		if c == '-' {
			c = stroke
		}
		white := cell.Style{Paper: s.Paper, Attr: cell.Bold}
		if p.th.Profile == theme.Base16 {
			white.Ink = cell.Basic(15)
		}
		p.g.Set(x, row, c, white)
	}
}

// black is the paper of the blast where there are few colours.
func (p *painter) black() cell.Ink {
	if p.th.Profile == theme.Base16 {
		return cell.Basic(0)
	}
	return 0
}
