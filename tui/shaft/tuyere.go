package shaft

import (
	"math"

	"chargehand/tui/cell"
	"chargehand/tui/glow"
	"chargehand/tui/theme"
)

// tuyereIn is how many columns the tuyere stands into the shaft, and tuyereOut
// how many it is drawn outside the wall.
const tuyereIn, tuyereOut = 2, 5

// reach is the columns of the tuyere from the outside to its tip, and which way
// it goes: 1 to the right.
func (p *painter) reach() (outer, tip, way int) {
	from, to := p.p.Span(p.v.Pic, p.p.Row(0))
	if p.p.right {
		return to + p.p.Wall + tuyereOut - 1, to - tuyereIn, -1
	}
	return from - p.p.Wall - tuyereOut, from + tuyereIn - 1, 1
}

// rise is how many half rows the pipe lies higher so many columns from its tip.
func (p *painter) rise(columns int) int {
	return int(math.Round(math.Tan(p.v.Pic.Angle*math.Pi/180) * float64(columns)))
}

// tuyere draws the pipe, two half rows thick at its own angle, whiter to the
// tip, and the blast before it.
func (p *painter) tuyere() {
	if p.v.Plain {
		return
	}
	outer, tip, way := p.reach()
	under := p.p.half(0) // the lower half row of the tip
	for x := outer; x != tip+way; x += way {
		h := under - p.rise((tip-x)*way)
		ink := p.pipe((tip - x) * way)
		p.putHalf(x, h-1, ink)
		p.putHalf(x, h, ink)
	}
	if !p.v.Pic.BlastOn {
		return
	}
	row := p.p.Rect.Y + under/2
	for i, c := range []rune("━━ ━") {
		if c != ' ' {
			p.over(tip+way*(i+1), row, c, cell.Full(255, 255, 255))
		}
	}
}

// pipe is the colour of the tuyere so many columns from its tip.
func (p *painter) pipe(from int) cell.Ink {
	role := theme.Now
	if p.v.Past {
		role = theme.Past
	}
	if !p.v.Pic.BlastOn {
		role = theme.Quiet
	}
	if p.th.Profile != theme.True || !p.v.Pic.BlastOn {
		return p.th.Ink(role)
	}
	r, g, b := p.th.RGB(role)
	white := max(0.62-0.1*float64(from), 0)
	return full(glow.Mix(glow.Colour{R: r, G: g, B: b}, glow.Colour{R: 0xe8, G: 0xf4, B: 0xff}, white))
}

// putHalf sets half of a cell and leaves the other as it is.
func (p *painter) putHalf(x, h int, ink cell.Ink) {
	row := p.p.Rect.Y + h/2
	upper, lower := p.g.Halves(x, row, p.th.PageInk())
	if h%2 == 0 {
		upper = ink
	} else {
		lower = ink
	}
	pair(p.g, x, row, upper, lower)
}

// over draws a character on what is there.
func (p *painter) over(x, row int, c rune, ink cell.Ink) {
	if p.th.Profile == theme.Fixed256 {
		ink = cell.Index(231)
	}
	_, lower := p.g.Halves(x, row, p.th.PageInk())
	p.g.Set(x, row, c, cell.Style{Ink: ink, Paper: lower, Attr: cell.Bold})
}
