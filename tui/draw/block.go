package draw

import (
	"strings"

	"chargehand/tui/cell"
)

// Blocks is how large a few lines can be drawn in blocks: dots of wide cells by
// high half cells. With Wide 0 they stand as plain text.
type Blocks struct {
	Lines      []string
	Wide, High int
	Gap        int // rows between two lines
}

// Each is how many rows one line takes.
func (b Blocks) Each() int {
	if b.Wide == 0 {
		return 1
	}
	return DigitRows(b.High)
}

// Rows is how many rows all of them take.
func (b Blocks) Rows() int { return len(b.Lines)*b.Each() + max(len(b.Lines)-1, 0)*b.Gap }

// Width is how many cells the longest line takes.
func (b Blocks) Width() int {
	w := 0
	for _, l := range b.Lines {
		w = max(w, DotsWide(l)*b.Wide)
	}
	return w
}

// Fit makes lines as large as they can be in w by h cells, at most so large:
// all in one row, or a row each, whichever is larger. Lines that have no blocks
// for their letters, or no room, stay plain text.
func (p Pen) Fit(lines []string, w, h, most int) Blocks {
	best := Blocks{Lines: lines}
	for _, way := range [][]string{lines, {strings.Join(lines, "  ")}} {
		if b, ok := p.fitWay(way, w, h, most); ok && b.Wide > best.Wide {
			best = b
		}
	}
	return best
}

func (p Pen) fitWay(lines []string, w, h, most int) (Blocks, bool) {
	b := Blocks{Lines: make([]string, len(lines))}
	for i, l := range lines {
		capital, all := capitals(l)
		if !all {
			return b, false
		}
		b.Lines[i] = capital
	}
	for b.Wide = most; b.Wide > 0; b.Wide-- {
		b.High, b.Gap = p.Whole(b.Wide), max(b.Wide/2, 1)
		if b.Width() <= w && b.Rows() <= h {
			return b, true
		}
	}
	return b, false
}

// Whole is the height of a dot where half cells cannot be drawn: whole cells.
func (p Pen) Whole(high int) int {
	if p.Theme.ASCII {
		return high + high%2
	}
	return high
}

// Blocks draws the lines from x, y on, each cut at the edge of g.
func (p Pen) DrawBlocks(g cell.Grid, x, y int, b Blocks, s cell.Style) {
	w, _ := g.Size()
	for _, l := range b.Lines {
		if b.Wide == 0 {
			g.TextIn(cell.Rect{X: x, Y: y, W: w - x, H: 1}, l, s)
		} else {
			p.Block(g, x, y, l, b.Wide, b.High, s)
		}
		y += b.Each() + b.Gap
	}
}

// PanelOf is how large one line can be on a paper of its own, and how many rows
// that takes with the margin that large letters need.
func (p Pen) PanelOf(text string, w, h, most int) (b Blocks, rows int) {
	for most := most; most > 0; most-- {
		b = p.Fit([]string{text}, w, h, most)
		if rows = b.Rows() + 2*PanelMargin(b); rows <= h {
			return b, rows
		}
	}
	return Blocks{Lines: []string{text}}, 1
}

// PanelMargin is the margin above and below large letters on a paper.
func PanelMargin(b Blocks) int {
	if b.Wide > 1 {
		return 1
	}
	return 0
}

// Panel draws one line on a paper all across g.
func (p Pen) Panel(g cell.Grid, b Blocks, s cell.Style) {
	g.Fill(g.Bounds(), ' ', s)
	p.DrawBlocks(g, 2, PanelMargin(b), b, s)
}
