package replay

import (
	"chargehand/model/figure"
	"chargehand/tui/cell"
	"chargehand/tui/draw"
	"chargehand/tui/scene"
	"chargehand/tui/words"
)

// paint paints the picture and the time line under it, and leaves the foot.
func paint(g cell.Grid, p draw.Pen, r figure.Reading, v scene.View, day draw.Day) {
	if v.Past == "" {
		v.Past = words.ThePast
	}
	l, line := layoutOf(g.Size())
	scene.Paint(g, p, l, r, v)
	p.TimeLine(g.Sub(line), day)
}

// layoutOf is the picture in what the time line leaves of the window, and the place
// of that.
func layoutOf(w, h int) (scene.Layout, cell.Rect) {
	rows := 4
	switch {
	case h < 20:
		rows = 2
	case h < 30:
		rows = 3
	}
	l := scene.LayoutOf(w, h-rows) // its foot's rows move down by the line's
	line := cell.Rect{Y: l.Foot.Y, W: w, H: rows}
	l.Foot.Y += rows
	return l, line
}
