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

	Size  Size
	Log   cell.Rect // the last entries; a line over it
	Scale int       // of the timer's digits
	Side  bool      // Next stands beside Timer, else below
	Lined bool      // the right-hand parts have a line down their left edge
}

// Rects are the parts.
func (l Layout) Rects() []cell.Rect {
	return []cell.Rect{l.Top, l.Shaft, l.Timer, l.Next, l.Figures, l.Notice, l.Log, l.Strip, l.Foot}
}

// Size is how much room a window has.
type Size int

// The sizes: cramped windows show what fits; in the others every part has its
// place, whatever there is to say.
const (
	Cramped Size = iota
	Small        // from 76 x 24
	Middle       // from 110 x 34
	Large        // from 170 x 50
)

// SizeOf is the size of a window.
func SizeOf(w, h int) Size {
	switch {
	case w >= 170 && h >= 50:
		return Large
	case w >= 110 && h >= 34:
		return Middle
	case w >= 76 && h >= 24:
		return Small
	}
	return Cramped
}

// figureMax is how many lines of figures there are.
const figureMax = 8

// LayoutOf lays out a window. It is arithmetic alone: the same size, the same
// places, whatever there is to show.
func LayoutOf(w, h int) Layout {
	if size := SizeOf(w, h); size > Cramped {
		return roomy(w, h, size, stripRows(h))
	}
	return cramped(w, h)
}

// WithDay is the layout with so many rows at the foot of the picture for the day
// of a replay, in place of the strip and the log.
func WithDay(w, h, rows int) (Layout, cell.Rect) {
	if size := SizeOf(w, h); size > Cramped {
		l := roomy(w, h, size, rows)
		day := cell.Rect{Y: l.Foot.Y - rows, W: w, H: rows}
		l.Strip = cell.Rect{Y: l.Foot.Y}
		if size == Middle {
			l.Log = cell.Rect{Y: l.Foot.Y}
		}
		return l, day
	}
	l := cramped(w, h-rows) // its foot's rows move down by the day's
	day := cell.Rect{Y: l.Foot.Y, W: w, H: rows}
	l.Foot.Y += rows
	return l, day
}

// logRows is how many of the last entries have room.
func (l Layout) logRows() int { return max(l.Notice.H, l.Log.H) }

// roomy gives each part its place for good: the shaft at the left, the minutes and
// the charge beside them, under these the figures, then what is wrong. Rows that
// are left over go to the log, or where that stands beside the strip to the shaft.
func roomy(w, h int, size Size, below int) Layout {
	l := Layout{Size: size, Lined: true, Side: true}
	body := cell.Rect{W: w, H: h}
	l.Top, body = body.CutTop(draw.TopRows)
	l.Foot, body = body.CutBottom(draw.FootRows)
	l.Strip, body = body.CutBottom(below)
	head, timer, figures := 9, 22, figureMax+1
	switch size {
	case Small:
		l.Notice, body = body.CutBottom(smallNotice)
		l.Shaft, body = body.CutLeft(38)
	case Middle:
		head, timer, figures = 12, 22, MostFigures+1
		l.Shaft, body = body.CutLeft(52)
		l.Notice, body = body.CutBottom(4)
		if log := min(45, w-75); log > 24 && below > 0 {
			l.Strip.W -= log
			l.Log = cell.Rect{X: l.Strip.W, Y: l.Strip.Y, W: log, H: l.Strip.H}
		}
	case Large:
		head, timer, figures = 18, 32, MostFigures+1
		l.Shaft, body = body.CutLeft(103)
	}
	var top cell.Rect
	top, body = body.CutTop(head)
	l.Timer, l.Next = top.CutLeft(timer)
	l.Figures, body = body.CutTop(min(figures, body.H))
	switch {
	case size == Large:
		l.Notice, l.Log = body.CutTop(4 + min(max(body.H-8, 0)/2, 3)) // a row more for each warning beside the first
	case size == Small:
		l.Log = body
	default:
		l.Figures.H += body.H
	}
	return l
}

// smallNotice is how many rows a small window keeps for what is wrong.
const smallNotice = 2

// MostFigures is how many lines of figures there are where there is room.
const MostFigures = 10

// cramped lays out a window in which not all has room.
func cramped(w, h int) Layout {
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
	case h >= 58:
		return 13
	case h >= 50:
		return 9
	case h >= 40:
		return 7
	case h >= 34:
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
