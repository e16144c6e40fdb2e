package letter

import (
	"strings"

	"chargehand/tui/cell"
)

// Scale is how many columns a point is wide and how many half rows high.
type Scale struct{ Wide, High int }

// The scales that are used: 3.5 rows, 7 rows, 10.5 rows.
var (
	Small  = Scale{1, 1}
	Middle = Scale{2, 2}
	Large  = Scale{2, 3}
)

// Capitals is a text as the face has it, and whether it has all of it: a measure
// may be named in any script.
func Capitals(text string) (string, bool) {
	all := true
	var b strings.Builder
	for _, own := range text {
		for _, c := range strings.ToUpper(cell.ASCII(string(own))) {
			if _, ok := face[c]; !ok || (c == '?' && own != '?') {
				all = false
			}
			b.WriteRune(c)
		}
	}
	return b.String(), all
}

// Size is how many columns and whole rows a text takes at a scale.
func (s Scale) Size(text string) (w, h int) {
	for i, c := range text {
		if i > 0 {
			w += s.Wide
		}
		w += wide(glyph(c)) * s.Wide
	}
	return w, (Rows*s.High + 1) / 2
}

// Fitting is the largest scale in which a text fits into w by h cells, and whether
// any does: points are no more than twice as tall as wide.
func Fitting(text string, w, h int) (Scale, bool) {
	wide, _ := Small.Size(text)
	if wide <= 0 || w < wide || 2*h < Rows {
		return Small, false
	}
	s := Scale{Wide: w / wide, High: 2 * h / Rows}
	s.High = min(s.High, 2*s.Wide)
	s.Wide = min(s.Wide, s.High)
	return s, true
}

func glyph(c rune) [Rows]string {
	if l, ok := face[c]; ok {
		return l
	}
	return face['?']
}

// Text draws a text with its upper left at a cell.
func (s Scale) Text(g cell.Grid, x, y int, text string, style cell.Style, ascii bool) {
	s.At(g, x, 2*y, text, style, ascii)
}

// At draws a text with its upper left at a half row, counted from the top of the
// grid: 7 rows is 14. Halves already drawn in the same cell are not kept.
func (s Scale) At(g cell.Grid, x, half int, text string, style cell.Style, ascii bool) {
	for i, c := range text {
		if i > 0 {
			x += s.Wide
		}
		l := glyph(c)
		w := wide(l) * s.Wide
		for cx := range w {
			for row := half / 2; row <= (half+Rows*s.High-1)/2; row++ {
				lit := func(h int) bool { return h >= half && at(l, cx/s.Wide, (h-half)/s.High) }
				halves(g, x+cx, row, lit(2*row), lit(2*row+1), style, ascii)
			}
		}
		x += w
	}
}

// halves draws the halves of a cell; in ASCII the signs that stand high or low in it.
func halves(g cell.Grid, x, y int, upper, lower bool, style cell.Style, ascii bool) {
	both, high, low := '█', '▀', '▄'
	if ascii {
		both, high, low = '#', '"', '_'
	}
	switch {
	case upper && lower:
		g.Set(x, y, both, style)
	case upper:
		g.Set(x, y, high, style)
	case lower:
		g.Set(x, y, low, style)
	}
}
