package cell

import "slices"

// Grid is a window on a sheet of cells, with its own coordinates from 0, 0.
// Copies and sub-grids share the cells. Whatever falls outside is dropped.
type Grid struct {
	cells  []one
	stride int // cells of a whole row of the sheet
	x, y   int // where the window begins on the sheet
	w, h   int
	ascii  bool
}

// one is a cell: its character and its look.
type one struct {
	char  rune
	style Style
}

// tail stands in the second cell of a wide character.
const tail rune = -1

// New is a blank sheet. On an ASCII one nothing else is ever drawn.
func New(w, h int, ascii bool) Grid { return Grid{}.Renewed(w, h, ascii) }

// Renewed is a blank sheet in the memory of this one, which nobody may read any
// more.
func (g Grid) Renewed(w, h int, ascii bool) Grid {
	w, h = max(w, 0), max(h, 0)
	cells := slices.Grow(g.cells[:0], w*h)[:w*h]
	blank(cells)
	return Grid{cells: cells, stride: w, w: w, h: h, ascii: ascii}
}

// blank makes every cell a blank, in ever larger copies.
func blank(cells []one) {
	if len(cells) == 0 {
		return
	}
	cells[0] = one{char: ' '}
	for done := 1; done < len(cells); done *= 2 {
		copy(cells[done:], cells[:done])
	}
}

// Size is how many columns and rows the grid has.
func (g Grid) Size() (w, h int) { return g.w, g.h }

// Bounds is the whole grid.
func (g Grid) Bounds() Rect { return Rect{0, 0, g.w, g.h} }

// Sub is the part of the grid inside r, with coordinates of its own.
func (g Grid) Sub(r Rect) Grid {
	r = r.within(g.w, g.h)
	g.x, g.y, g.w, g.h = g.x+r.X, g.y+r.Y, r.W, r.H
	return g
}

// Set draws one character of width 1. On an ASCII sheet any other is drawn as
// its nearest ASCII character.
func (g Grid) Set(x, y int, c rune, s Style) {
	if x < 0 || y < 0 || x >= g.w || y >= g.h {
		return
	}
	if g.ascii && c >= 0x80 {
		c = rune((spelled(c) + " ")[0])
	}
	g.put(x, y, c, s)
}

// put writes a cell inside the grid. Half of a wide character that loses its
// other half becomes a blank.
func (g Grid) put(x, y int, c rune, s Style) {
	row := g.cells[(g.y+y)*g.stride : (g.y+y+1)*g.stride]
	x += g.x
	if row[x].char == tail && x > 0 {
		row[x-1].char = ' '
	}
	if x+1 < len(row) && row[x+1].char == tail {
		row[x+1].char = ' '
	}
	row[x] = one{c, s}
}

// row is the cells of one row.
func (g Grid) row(y int) []one {
	start := (g.y+y)*g.stride + g.x
	return g.cells[start : start+g.w]
}

// Fill draws the same character all over r.
func (g Grid) Fill(r Rect, c rune, s Style) {
	r = r.within(g.w, g.h)
	if r.W == 0 {
		return
	}
	for y := r.Y; y < r.Bottom(); y++ {
		g.Set(r.X, y, c, s) // both ends may cut a wide character
		g.Set(r.Right()-1, y, c, s)
		row := g.row(y)[r.X:r.Right()]
		for x := range row {
			row[x] = row[0]
		}
	}
}

// Halves is the colour of each half of a cell, for a picture that puts something
// over one of them: a blank is its paper, of other characters only the halves
// are told apart. Where nothing was drawn it is the page, whose colour is given.
func (g Grid) Halves(x, y int, page Ink) (upper, lower Ink) {
	if x < 0 || y < 0 || x >= g.w || y >= g.h {
		return page, page
	}
	c := g.row(y)[x]
	upper, lower = c.style.Paper, c.style.Paper
	switch c.char {
	case '▀':
		upper = c.style.Ink
	case '▄':
		lower = c.style.Ink
	case '█':
		upper, lower = c.style.Ink, c.style.Ink
	}
	if upper == 0 {
		upper = page
	}
	if lower == 0 {
		lower = page
	}
	return upper, lower
}

// Blank tells whether nothing is drawn in a cell of the grid.
func (g Grid) Blank(x, y int) bool {
	return x >= 0 && y >= 0 && x < g.w && y < g.h && g.row(y)[x].char == ' '
}
