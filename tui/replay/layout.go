package replay

import (
	"chargehand/model/figure"
	"chargehand/tui/cell"
	"chargehand/tui/draw"
	"chargehand/tui/scene"
	"chargehand/tui/words"
)

// paint paints the picture and the day under it, and leaves the foot.
func paint(g cell.Grid, p draw.Pen, r *figure.Reading, v scene.View, day draw.Day) {
	if v.Past == "" {
		v.Past = words.ThePast
	}
	l, line := layoutOf(g.Size())
	scene.Paint(g, p, l, r, v)
	p.TimeLine(g.Sub(line), day)
}

// layoutOf is the picture in what the day leaves of the window, and the place of
// that: with a sky where there is room.
func layoutOf(w, h int) (scene.Layout, cell.Rect) {
	rows := 4
	switch {
	case scene.SizeOf(w, h) == scene.Large:
		rows = 12
	case scene.SizeOf(w, h) == scene.Middle:
		rows = 6
	case h < 20:
		rows = 2
	case scene.SizeOf(w, h) == scene.Cramped:
		rows = 3
	}
	return scene.WithDay(w, h, rows)
}
