package shaft

import (
	"math"

	"chargehand/model/picture"
	"chargehand/tui/cell"
)

// Place is where the furnace stands on a grid: fitted to its rectangle, so that
// a centimetre is as long across as down.
type Place struct {
	Rect   cell.Rect // of walls, shaft and floor
	Wall   int       // columns of each wall
	PerRow float64   // cm a row
	Top    float64   // cm above the tuyere at the upper edge
	middle float64   // column of the axis
	right  bool      // the tuyere is on the right
}

// Fit places a furnace in a rectangle: as tall as it fits, or as wide, and on
// the floor of the rectangle. Walls of so many columns stand inside it.
func Fit(p picture.Picture, r cell.Rect, wall int) Place {
	rows := max(r.H-1, 1) // the floor takes one
	widest := math.Max(p.Bore, p.BoreTop)
	perRow := math.Max((p.Top-p.Floor)/float64(rows), 2*widest/float64(max(r.W-2*wall, 2)))
	return Place{
		Rect: r, Wall: wall, PerRow: perRow, Top: p.Floor + perRow*float64(rows),
		middle: float64(r.X) + float64(r.W)/2, right: p.TuyereRight,
	}
}

// Row is the row of a height in cm, or the nearest of the picture's.
func (p Place) Row(cm float64) int {
	return p.Rect.Y + min(max(int(math.Floor((p.Top-cm)/p.PerRow)), 0), p.Rect.H-2)
}

// CM is the height of the middle of a row, in cm.
func (p Place) CM(row int) float64 { return p.Top - (float64(row-p.Rect.Y)+0.5)*p.PerRow }

// half is the half row of a height, counted from the top, to the nearest edge.
func (p Place) half(cm float64) int { return int(math.Round((p.Top - cm) / p.PerRow * 2)) }

// cmHalf is the height of the middle of a half row.
func (p Place) cmHalf(h int) float64 { return p.Top - (float64(h)+0.5)*p.PerRow/2 }

// Span is the first column inside the walls at a row and the column after the
// last.
func (p Place) Span(pic picture.Picture, row int) (from, to int) {
	n := max(int(math.Round(pic.BoreAt(p.CM(row))/(p.PerRow/2))), 3)
	from = int(math.Round(p.middle - float64(n)/2))
	return from, from + n
}
