package letter

import "chargehand/tui/cell"

// Digits is the size of digits that are drawn as large as there is room: of
// bars, so that each stays itself when it is blurred. W is columns, H half rows.
type Digits struct{ W, H int }

// bars are the seven places of a digit: top, upper left, upper right, middle,
// lower left, lower right, bottom.
var bars = map[rune][7]bool{
	'0': {true, true, true, false, true, true, true},
	'1': {false, false, true, false, false, true, false},
	'2': {true, false, true, true, true, false, true},
	'3': {true, false, true, true, false, true, true},
	'4': {false, true, true, true, false, true, false},
	'5': {true, true, false, true, false, true, true},
	'6': {true, true, false, true, true, true, true},
	'7': {true, false, true, false, false, true, false},
	'8': {true, true, true, true, true, true, true},
	'9': {true, true, true, true, false, true, true},
}

// stroke is how thick the bars are, across and down.
func (d Digits) stroke() (w, h int) { return max((d.W+1)/3, 1), max((d.H+3)/6, 1) }

// gap is between two digits.
func (d Digits) gap() int { return max(d.W/6, 1) }

// wide is how wide a character is.
func (d Digits) wide(c rune) int {
	w, _ := d.stroke()
	switch c {
	case '1':
		return 2*w - w/2
	case ':', '.':
		return w
	case '+', '-':
		return d.W * 2 / 3
	}
	return d.W
}

// Width is how many columns a number takes.
func (d Digits) Width(text string) int {
	w := 0
	for i, c := range text {
		if i > 0 {
			w += d.gap()
		}
		w += d.wide(c)
	}
	return w
}

// Draw draws a number with its upper left at a cell: digits, and the signs
// colon, point, plus and minus. In ASCII the bars are of whole cells.
func (d Digits) Draw(g cell.Grid, x, y int, text string, style cell.Style, ascii bool) {
	for i, c := range text {
		if i > 0 {
			x += d.gap()
		}
		d.digit(g, x, y, c, style, ascii)
		x += d.wide(c)
	}
}

func (d Digits) digit(g cell.Grid, x, y int, c rune, style cell.Style, ascii bool) {
	w := d.wide(c)
	rows := (d.H + 1) / 2
	whole := Digits{d.W, rows}
	for cx := range w {
		for row := range rows {
			if ascii {
				if whole.lit(c, cx, row) {
					g.Set(x+cx, y+row, '#', style)
				}
				continue
			}
			halves(g, x+cx, y+row, d.lit(c, cx, 2*row), 2*row+1 < d.H && d.lit(c, cx, 2*row+1), style, ascii)
		}
	}
}

// lit tells whether a half cell of a character is drawn.
func (d Digits) lit(c rune, x, y int) bool {
	sw, sh := d.stroke()
	w, middle := d.wide(c), (d.H-sh)/2
	switch c {
	case '1':
		return x >= w-sw || y < sh
	case ':':
		return y >= middle/2 && y < middle/2+sh || y >= d.H-middle/2-sh && y < d.H-middle/2
	case '.':
		return y >= d.H-sh
	case '-', '+':
		return y >= middle && y < middle+sh || c == '+' && x >= (w-sw)/2 && x < (w-sw)/2+sw && y >= middle-2*sh && y < middle+3*sh
	}
	on, ok := bars[c]
	if !ok {
		return false
	}
	left, right := x < sw, x >= w-sw
	above := y < middle+sh
	below := y >= middle
	return on[0] && y < sh || on[6] && y >= d.H-sh || on[3] && y >= middle && y < middle+sh ||
		above && (on[1] && left || on[2] && right) || below && (on[4] && left || on[5] && right)
}
