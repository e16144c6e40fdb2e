package fire

import (
	"chargehand/model/entry"
	"chargehand/model/figure"
	modelwords "chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/draw"
	"chargehand/tui/scene"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// farTimed is the timer as the far view shows it.
type farTimed struct {
	draw.Timed
	word  string // beside the digits, in draw.Blocks
	class string // the draw.Widest digits of this kind, so that the size holds
}

func farTimedBy(r *figure.Reading, v scene.View) farTimed {
	t := farTimed{Timed: draw.TimedBy(r, v.Due), class: draw.Widest}
	switch {
	case t.Minutes:
		t.word, t.class = words.FarMinutes, "88"
	case t.Late:
		t.word = words.FarLate
	case r.Phase == entry.BurnsDown:
		t.word = modelwords.Phase(r.Phase)
	}
	if draw.DotsWide(t.Digits) > draw.DotsWide(t.class) {
		t.class = t.Digits
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
func (p pen) farHigh(w, h int, t farTimed) int {
	high := max(2*farShare*h/500, 1)
	need := (2*farLeast*h + 499) / 500
	high = p.Whole(max(min(high, 2*((w-4)/draw.DotsWide(draw.Widest))), need))
	if high > 2 && p.Theme.ASCII && draw.DigitRows(high)*100 > 2*farShare*h {
		high -= 2
	}
	return high
}

// farWide is the width of a dot of the digits, and their word in the largest
// draw.Blocks that fit beside them: digits give way a little to a word too small to
// be read.
func (p pen) farWide(w, h int, t farTimed, high int) (wide int, word draw.Blocks) {
	wide = max(min(high, (w-4)/draw.DotsWide(t.class)), 1)
	best := 0
	for n := wide; t.word != "" && n >= max((high+1)/2, 1); n-- {
		room := w - 8 - draw.DotsWide(t.class)*n
		if b := p.Fit([]string{t.word}, room, h, max(n/2, 1)); b.Wide > 0 && min(n, 2*b.Wide) > best {
			best, wide, word = min(n, 2*b.Wide), n, b
		}
	}
	return wide, word
}

// farDigits draws the digits and, in the largest draw.Blocks that fit beside them,
// their word; above it what is said of the spread.
func (p pen) farDigits(g cell.Grid, t farTimed, high int) {
	w, h := g.Size()
	style, panel := p.Style(theme.Now), cell.Style{}
	if t.Late {
		style, panel = p.Style(theme.Strong), p.Style(theme.Look)
	}
	wide, word := p.farWide(w, h, t, high)
	p.Block(g, 2, 0, t.Digits, wide, high, style)
	x := 2 + draw.DotsWide(t.class)*wide + 3
	free := h
	if word.Wide > 0 {
		free = h - word.Rows()
		style := p.Style(theme.Now)
		if t.Late {
			style = panel
			top, low := min(free, 1), draw.PanelMargin(word)
			if free < 2 {
				low = 0
			}
			free -= top + low
			g.Fill(cell.Rect{X: x, Y: free, W: word.Width() + 4, H: h - free}, ' ', style)
			p.DrawBlocks(g, x+2, free+top, word, style)
		} else {
			p.DrawBlocks(g, x, free, word, style)
		}
	}
	if w-x < 16 {
		return
	}
	y := 0
	if t.Below != "" && free > 0 {
		g.TextIn(cell.Rect{X: x, W: w - x - 1, H: 1}, t.Below, p.Style(theme.Text))
		y++
	}
	if t.Doubt != "" && free-1 > y {
		g.Wrap(cell.Rect{X: x, Y: y, W: w - x - 1, H: free - 1 - y}, t.Doubt, p.Style(theme.Quiet))
	}
}
