package scene

import (
	"chargehand/model/figure"
	"chargehand/model/rule"
	"chargehand/tui/cell"
	"chargehand/tui/draw"
)

// CautionShows tells whether a caution is shown at this size of the window.
// Where it would lie over a warning that stands it is not: the warning comes
// first, and the caution when it has cleared.
func CautionShows(w, h int, far, warned bool) bool {
	if w < draw.MinW || h < draw.MinH {
		return false
	}
	return !warned || !far && !LayoutOf(w, h).Shaft.Empty()
}

// CautionRoom is the part of the picture that a caution may cover.
func CautionRoom(l Layout) cell.Rect {
	switch {
	case l.Size == Small: // and the last entry under the figures
		return cell.Rect{X: l.Figures.X + 1, Y: l.Figures.Y, W: l.Figures.W - 1, H: l.Figures.H + l.Log.H}
	case l.Size > Small:
		return cell.Rect{X: l.Figures.X + 1, Y: l.Figures.Y, W: l.Figures.W - 1, H: l.Figures.H}
	case !l.Shaft.Empty():
		return l.Shaft
	}
	r := l.Head()
	return cell.Rect{Y: r.Bottom(), W: r.W, H: l.Foot.Y - r.Bottom()}
}

// raisedFor makes room for what is said of the warnings, with a line over it
// and a row of the log under it.
func raisedFor(g cell.Grid, p draw.Pen, l Layout, r *figure.Reading, ws []rule.Warning) Layout {
	w, rows := l.Notice.W-1, 2
	stay := leastFigures
	if l.Figures.H+l.Notice.H < 2*leastFigures {
		stay = 0 // there are hardly any rows
	}
	rows += p.FirstTold(g, w, r, ws).Rows()
	l = l.raised(rows, stay)
	for _, also := range ws[1:] {
		if l.Figures.H <= mostFigures && rows >= l.Notice.H {
			break // there is no more room to be had
		}
		rows += p.Told(g, w, r, also, 0).WhatRows
		l = l.raised(rows, mostFigures)
	}
	return l
}
