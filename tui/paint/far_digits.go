package paint

import (
	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/theme"
)

// farTimed is the timer as the far view shows it.
type farTimed struct {
	timed
	word  string // beside the digits, in blocks
	class string // the widest digits of this kind, so that the size holds
}

func farTimedBy(r figure.Reading, v FireView) farTimed {
	t := farTimed{timed: timedBy(r, v.Due), class: widest}
	switch {
	case t.minutes:
		t.word, t.class = words.FarMinutes, "88"
	case t.late:
		t.word = words.FarLate
	case r.Phase == entry.BurnsDown:
		t.word = words.Phase(r.Phase)
	}
	if dotsWide(t.digits) > dotsWide(t.class) {
		t.class = t.digits
	}
	return t
}

// Shares of the height of the screen that the digits take, in per cent: what
// is aimed at, and the least.
const (
	farShare = 40
	farLeast = 15
)

// farHigh is the height of a dot of the digits in half rows: by the height of
// the window, but no more than twice as tall as wide unless they would be too
// small to read from afar.
func (p painter) farHigh(w, h int, t farTimed) int {
	high := max(2*farShare*h/500, 1)
	need := (2*farLeast*h + 499) / 500
	high = p.whole(max(min(high, 2*((w-4)/dotsWide(widest))), need))
	if high > 2 && p.th.ASCII && digitRows(high)*100 > 2*farShare*h {
		high -= 2
	}
	return high
}

// farWide is the width of a dot of the digits, and their word in the largest
// blocks that fit beside them: digits give way a little to a word too small to
// be read.
func (p painter) farWide(w, h int, t farTimed, high int) (wide int, word blocks) {
	wide = max(min(high, (w-4)/dotsWide(t.class)), 1)
	best := 0
	for n := wide; t.word != "" && n >= max((high+1)/2, 1); n-- {
		room := w - 8 - dotsWide(t.class)*n
		if b := p.fit([]string{t.word}, room, h, max(n/2, 1)); b.wide > 0 && min(n, 2*b.wide) > best {
			best, wide, word = min(n, 2*b.wide), n, b
		}
	}
	return wide, word
}

// farDigits draws the digits and, in the largest blocks that fit beside them,
// their word; above it what is said of the spread.
func (p painter) farDigits(g cell.Grid, t farTimed, high int) {
	w, h := g.Size()
	style, panel := p.style(theme.Now), cell.Style{}
	if t.late {
		style, panel = p.style(theme.Strong), p.style(theme.Look)
	}
	wide, word := p.farWide(w, h, t, high)
	p.block(g, 2, 0, t.digits, wide, high, style)
	x := 2 + dotsWide(t.class)*wide + 3
	free := h
	if word.wide > 0 {
		free = h - word.rows()
		style := p.style(theme.Now)
		if t.late {
			style = panel
			top, low := min(free, 1), panelMargin(word)
			if free < 2 {
				low = 0
			}
			free -= top + low
			g.Fill(cell.Rect{X: x, Y: free, W: word.width() + 4, H: h - free}, ' ', style)
			p.blocks(g, x+2, free+top, word, style)
		} else {
			p.blocks(g, x, free, word, style)
		}
	}
	if w-x < 16 {
		return
	}
	y := 0
	if t.below != "" && free > 0 {
		g.TextIn(cell.Rect{X: x, W: w - x - 1, H: 1}, t.below, p.style(theme.Text))
		y++
	}
	if t.doubt != "" && free-1 > y {
		g.Wrap(cell.Rect{X: x, Y: y, W: w - x - 1, H: free - 1 - y}, t.doubt, p.style(theme.Quiet))
	}
}
