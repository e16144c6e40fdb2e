package scene

import (
	"chargehand/tui/cell"
	"chargehand/tui/draw"
)

// Layout says where each part of the picture stands. The parts tile the window; an
// empty one is left out at this size.
type Layout struct {
	Top     cell.Rect // smelt, phase, clock, kept; a line under it
	Shaft   cell.Rect
	Timer   cell.Rect
	Next    cell.Rect
	Figures cell.Rect // a line over it
	Notice  cell.Rect // warning and log; a line over it
	Strip   cell.Rect // a line over it
	Foot    cell.Rect // answer and keys

	Scale int  // of the timer's digits
	Side  bool // Next stands beside Timer, else below
	Lined bool // the right-hand parts have a line down their left edge
}

// Rects are the parts.
func (l Layout) Rects() []cell.Rect {
	return []cell.Rect{l.Top, l.Shaft, l.Timer, l.Next, l.Figures, l.Notice, l.Strip, l.Foot}
}

// figureMax is how many lines of figures there are.
const figureMax = 8

// LayoutOf lays out a window. It is arithmetic alone: the same size, the same
// places, whatever there is to show.
func LayoutOf(w, h int) Layout {
	var l Layout
	body := cell.Rect{W: max(w, 0), H: max(h, 0)}
	l.Top, body = body.CutTop(draw.TopRows)
	l.Foot, body = body.CutBottom(draw.FootRows)
	l.Strip, body = body.CutBottom(stripRows(h))
	l.Shaft, body = body.CutLeft(shaftColumns(w, body.H))
	l.Lined = !l.Shaft.Empty()
	l.Scale = digitScale(body.W, body.H)
	l.Side = nextBeside(body.W, l.Scale)

	digits := draw.DigitRows(l.Scale)
	if l.Side {
		rows := 1 + digits + 2 // label, digits, blank, usual
		if body.H < 26 {
			rows--
		}
		var head cell.Rect
		head, body = body.CutTop(rows)
		l.Timer, l.Next = head.CutLeft(draw.DigitColumns(l.Scale) + 3)
	} else {
		rows := 1 + digits
		if body.H >= 14 {
			rows++
		}
		l.Timer, body = body.CutTop(rows)
		l.Next, body = body.CutTop(2)
	}
	l.Figures, l.Notice = body.CutTop(figureRows(body.H))
	return l
}

// stripRows is how tall the strip of the day is: a line, the bars up, the bars
// down and their numbers.
func stripRows(h int) int {
	switch {
	case h >= 54:
		return 9
	case h >= 44:
		return 7
	case h >= 32:
		return 5
	}
	return 0
}

// shaftColumns is how wide the shaft and the words beside it stand.
func shaftColumns(w, h int) int {
	switch {
	case h < 12 || w < 66:
		return 0
	case w < 100:
		return 31
	case w < 150:
		return 44
	}
	return min(w*36/100, 84)
}

// digitScale is how large the digits can be in what is left of the window
// beside the shaft.
func digitScale(w, h int) int {
	for scale := 5; scale > 1; scale-- {
		if draw.DigitColumns(scale)+4 <= w*62/100+10 && draw.DigitColumns(scale)+2 <= w && draw.DigitRows(scale)*3 <= h {
			return scale
		}
	}
	return 1
}

// nextBeside tells whether the next charge fits beside the digits.
func nextBeside(w, scale int) bool { return w-draw.DigitColumns(scale)-3 >= 22 }

// figureRows is how many rows of what is left the figures take: a line over
// them, one each, and a blank between when there is plenty of room.
func figureRows(h int) int {
	const least = 4 // rows of log that stay
	switch {
	case h >= 2*figureMax+1+8:
		return 2*figureMax + 1
	case h >= figureMax+2+least:
		return figureMax + 2
	case h > 4:
		return min(h-3, figureMax+1)
	}
	return h
}

// Rows that the figures keep, with the line over them, when a warning wants
// their room, and when those after it do: what is wrong comes before what is
// known, and how to mend the gravest before what else is wrong.
const leastFigures, mostFigures = 4, 7

// downFigures is how many rows of them stay beside the burn-down card.
const downFigures = 5

// raised makes the notice at least so many rows tall at the cost of the last
// figures, of which so many rows stay.
func (l Layout) raised(rows, stay int) Layout {
	n := min(rows-l.Notice.H, l.Figures.H-stay)
	if n > 0 {
		l.Figures.H -= n
		l.Notice.Y -= n
		l.Notice.H += n
	}
	return l
}

// headed makes the room of the timer and the next charge so many rows tall at
// the cost of the figures, of which so many rows stay, or none at all.
func (l Layout) headed(rows, stay int) Layout {
	n := min(rows-l.Head().H, l.Figures.H-stay)
	if n <= 0 {
		return l
	}
	if l.Figures.H-n == 1 { // the line over them alone says nothing
		n++
	}
	l.Figures.Y += n
	l.Figures.H -= n
	if l.Side {
		l.Timer.H += n
	}
	l.Next.H += n
	return l
}

// Head is the room of the timer and the next charge together.
func (l Layout) Head() cell.Rect {
	r := l.Timer
	if l.Side {
		r.W += l.Next.W
		return r
	}
	r.H += l.Next.H
	return r
}
