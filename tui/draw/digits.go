package draw

import "chargehand/tui/cell"

// The block font: five dots high, made of the strokes of a seven-part figure,
// so that each stays itself when it is blurred by smoke and distance.
var dots = map[rune][5]string{
	'0': {"###", "# #", "# #", "# #", "###"},
	'1': {" # ", "## ", " # ", " # ", "###"},
	'2': {"###", "  #", "###", "#  ", "###"},
	'3': {"###", "  #", "###", "  #", "###"},
	'4': {"# #", "# #", "###", "  #", "  #"},
	'5': {"###", "#  ", "###", "  #", "###"},
	'6': {"###", "#  ", "###", "# #", "###"},
	'7': {"###", "  #", "  #", " # ", " # "},
	'8': {"###", "# #", "###", "# #", "###"},
	'9': {"###", "# #", "###", "  #", "###"},
	':': {" ", "#", " ", "#", " "},
	'.': {" ", " ", " ", " ", "#"},
	'-': {"  ", "  ", "##", "  ", "  "},
	'+': {"   ", " # ", "###", " # ", "   "},
	'h': {"#  ", "#  ", "###", "# #", "# #"},
	' ': {" ", " ", " ", " ", " "},
	'?': {"###", "  #", " ##", "   ", " # "},
}

// Widest is the longest text that a timer shows.
const Widest = "88:88"

// DigitColumns is how many columns a timer's digits take at a scale. A dot is as
// many cells wide as the scale and half as many high: a cell is about twice as
// tall as wide.
func DigitColumns(scale int) int { return DotsWide(Widest) * scale }

// DigitRows is how many rows they take.
func DigitRows(scale int) int { return (5*scale + 1) / 2 }

// DotsWide is how many dots a text is wide.
func DotsWide(text string) int {
	w := -1
	for _, c := range text {
		w += 1 + len(glyph(c)[0])
	}
	return max(w, 0)
}

func glyph(c rune) [5]string {
	if g, ok := dots[c]; ok {
		return g
	}
	if g, ok := letters[c]; ok {
		return g
	}
	return dots['?']
}

// BigSize is the room that Big takes for a text.
func BigSize(text string, scale int) (w, h int) { return DotsWide(text) * scale, DigitRows(scale) }

// Big draws a text in blocks as wide as high. Where there are no halves of a
// cell, the smallest would run together and spaced letters stand.
func (p Pen) Big(g cell.Grid, x, y int, text string, scale int, s cell.Style) {
	if p.Theme.ASCII && scale == 1 {
		for i, c := range text {
			g.Set(x+2*i, y+1, c, s)
		}
		return
	}
	p.Block(g, x, y, text, scale, scale, s)
}

// Block draws a text in dots of wide cells by high half cells.
func (p Pen) Block(g cell.Grid, x, y int, text string, wide, high int, s cell.Style) {
	for _, c := range text {
		rows := glyph(c)
		for i := range len(rows[0]) * wide {
			for row := range DigitRows(high) {
				upper := lit(rows, 2*row/high, i/wide)
				lower := lit(rows, (2*row+1)/high, i/wide)
				switch {
				case upper && lower:
					g.Set(x+i, y+row, p.M.Full, s)
				case upper:
					g.Set(x+i, y+row, p.M.Upper, s)
				case lower:
					g.Set(x+i, y+row, p.M.Lower, s)
				}
			}
		}
		x += (len(rows[0]) + 1) * wide
	}
}

// lit tells whether a dot of a glyph is drawn.
func lit(rows [5]string, down, across int) bool {
	return down < len(rows) && rows[down][across] == '#'
}
