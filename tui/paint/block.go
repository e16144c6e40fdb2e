package paint

import (
	"strings"

	"chargehand/tui/cell"
)

// blocks is how large a few lines can be drawn in blocks: dots of wide cells by
// high half cells. With wide 0 they stand as plain text.
type blocks struct {
	lines      []string
	wide, high int
	gap        int // rows between two lines
}

// each is how many rows one line takes.
func (b blocks) each() int {
	if b.wide == 0 {
		return 1
	}
	return digitRows(b.high)
}

// rows is how many rows all of them take.
func (b blocks) rows() int { return len(b.lines)*b.each() + max(len(b.lines)-1, 0)*b.gap }

// width is how many cells the longest line takes.
func (b blocks) width() int {
	w := 0
	for _, l := range b.lines {
		w = max(w, dotsWide(l)*b.wide)
	}
	return w
}

// fit makes lines as large as they can be in w by h cells, at most so large:
// all in one row, or a row each, whichever is larger. Lines that have no blocks
// for their letters, or no room, stay plain text.
func (p painter) fit(lines []string, w, h, most int) blocks {
	best := blocks{lines: lines}
	for _, way := range [][]string{lines, {strings.Join(lines, "  ")}} {
		if b, ok := p.fitWay(way, w, h, most); ok && b.wide > best.wide {
			best = b
		}
	}
	return best
}

func (p painter) fitWay(lines []string, w, h, most int) (blocks, bool) {
	b := blocks{lines: make([]string, len(lines))}
	for i, l := range lines {
		capital, all := capitals(l)
		if !all {
			return b, false
		}
		b.lines[i] = capital
	}
	for b.wide = most; b.wide > 0; b.wide-- {
		b.high, b.gap = p.whole(b.wide), max(b.wide/2, 1)
		if b.width() <= w && b.rows() <= h {
			return b, true
		}
	}
	return b, false
}

// whole is the height of a dot where half cells cannot be drawn: whole cells.
func (p painter) whole(high int) int {
	if p.th.ASCII {
		return high + high%2
	}
	return high
}

// blocks draws the lines from x, y on, each cut at the edge of g.
func (p painter) blocks(g cell.Grid, x, y int, b blocks, s cell.Style) {
	w, _ := g.Size()
	for _, l := range b.lines {
		if b.wide == 0 {
			g.TextIn(cell.Rect{X: x, Y: y, W: w - x, H: 1}, l, s)
		} else {
			p.block(g, x, y, l, b.wide, b.high, s)
		}
		y += b.each() + b.gap
	}
}

// panelOf is how large one line can be on a paper of its own, and how many rows
// that takes with the margin that large letters need.
func (p painter) panelOf(text string, w, h, most int) (b blocks, rows int) {
	for most := most; most > 0; most-- {
		b = p.fit([]string{text}, w, h, most)
		if rows = b.rows() + 2*panelMargin(b); rows <= h {
			return b, rows
		}
	}
	return blocks{lines: []string{text}}, 1
}

func panelMargin(b blocks) int {
	if b.wide > 1 {
		return 1
	}
	return 0
}

// panel draws one line on a paper all across g.
func (p painter) panel(g cell.Grid, b blocks, s cell.Style) {
	g.Fill(g.Bounds(), ' ', s)
	p.blocks(g, 2, panelMargin(b), b, s)
}
