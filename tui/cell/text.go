package cell

import (
	"strings"
	"unicode"

	"github.com/charmbracelet/x/ansi"
)

// Text writes one line from x on, cut at the edge of the grid, and returns how
// many cells it took. What a terminal would obey rather than print, and what
// has no width, is left out: the text may be anything a person typed.
func (g Grid) Text(x, y int, text string, s Style) int {
	start := x
	for _, c := range text {
		if c < 0x80 {
			if c >= ' ' && c != 0x7f {
				g.Set(x, y, c, s)
				x++
			}
			continue
		}
		if g.ascii {
			for _, a := range spelled(c) {
				g.Set(x, y, a, s)
				x++
			}
			continue
		}
		switch widthOf(c) {
		case 1:
			g.Set(x, y, c, s)
			x++
		case 2:
			g.wide(x, y, c, s)
			x += 2
		}
	}
	return x - start
}

// wide writes a character of two cells, or blanks where only one of them lies
// inside.
func (g Grid) wide(x, y int, c rune, s Style) {
	if x < 0 || y < 0 || y >= g.h || x+1 >= g.w {
		g.Set(x, y, ' ', s)
		g.Set(x+1, y, ' ', s)
		return
	}
	g.put(x, y, c, s)
	g.put(x+1, y, ' ', s)
	g.row(y)[x+1].char = tail
}

// TextRight writes one line that ends just before x.
func (g Grid) TextRight(x, y int, text string, s Style) int {
	w := g.Width(text)
	return g.Text(x-w, y, text, s)
}

// TextIn writes one line at the top left of r, cut with an ellipsis where it
// is too long.
func (g Grid) TextIn(r Rect, text string, s Style) {
	if r.Empty() {
		return
	}
	g.Sub(r).Text(min(0, r.X), min(0, r.Y), g.Cut(text, r.W), s)
}

// Wrap writes words into r, line after line, and returns the rows it took. A
// text too long for r ends in an ellipsis.
func (g Grid) Wrap(r Rect, text string, s Style) int {
	row := 0
	for text != "" && row < r.H {
		line, rest := g.breakLine(text, r.W)
		if row == r.H-1 && rest != "" {
			line, rest = text, ""
		}
		g.TextIn(Rect{r.X, r.Y + row, r.W, 1}, line, s)
		text = rest
		row++
	}
	return row
}

// Rows is how many rows Wrap takes for a text in w columns when it may have
// as many as it needs.
func (g Grid) Rows(text string, w int) int {
	rows := 0
	for text != "" && w > 0 {
		_, text = g.breakLine(text, w)
		rows++
	}
	return rows
}

// Rowed is the text in those rows.
func (g Grid) Rowed(text string, w int) (rows []string) {
	for text != "" && w > 0 {
		var row string
		row, text = g.breakLine(text, w)
		rows = append(rows, row)
	}
	return rows
}

// Break splits off as many whole words as fit into w cells, but at least one, and
// gives the rest.
func (g Grid) Break(text string, w int) (line, rest string) { return g.breakLine(text, w) }

// breakLine splits off as many whole words as fit into w cells, but at least
// one.
func (g Grid) breakLine(text string, w int) (line, rest string) {
	text = strings.TrimLeft(text, " \n\t")
	end, used := 0, 0
	for end < len(text) {
		word := strings.IndexAny(text[end+1:], " \n\t")
		next := len(text)
		if word >= 0 {
			next = end + 1 + word
		}
		used += g.Width(text[end:next])
		if used > w && end > 0 {
			break
		}
		end = next
	}
	return text[:end], strings.TrimLeft(text[end:], " \n\t")
}

// Width is how many cells Text would take for it.
func (g Grid) Width(text string) int {
	w := 0
	for _, c := range text {
		switch {
		case c < 0x80:
			if c >= ' ' && c != 0x7f {
				w++
			}
		case g.ascii:
			w += len(spelled(c))
		default:
			w += widthOf(c)
		}
	}
	return w
}

// Cut shortens a text to w cells, the last of them an ellipsis when something
// was cut off.
func (g Grid) Cut(text string, w int) string {
	if w <= 0 {
		return ""
	}
	if g.Width(text) <= w {
		return text
	}
	dots := "…"
	room := w - g.Width(dots)
	if room < 0 {
		return strings.Repeat(".", w)
	}
	used := 0
	for i, c := range text {
		used += g.Width(string(c))
		if used > room {
			return strings.TrimRight(text[:i], " ") + dots
		}
	}
	return text
}

// widthOf is the width of one character beyond ASCII, after the one library
// that the whole program measures with. Characters that are not printed, or
// join to the one before them, have none.
func widthOf(c rune) int {
	if c >= 0x2500 && c <= 0x259f { // lines and blocks of our own pictures
		return 1
	}
	if !unicode.IsPrint(c) || unicode.In(c, joining...) {
		return 0
	}
	return min(ansi.StringWidth(string(c)), 2)
}

// joining are the characters that may join to their neighbour, so that the two
// take fewer cells than each alone: marks, Hangul spelled letter by letter,
// the modifiers of emoji, and paired flag letters.
var joining = []*unicode.RangeTable{unicode.M, {
	R16: []unicode.Range16{{Lo: 0x1100, Hi: 0x11ff, Stride: 1}, {Lo: 0xa960, Hi: 0xa97f, Stride: 1}, {Lo: 0xd7b0, Hi: 0xd7ff, Stride: 1}},
	R32: []unicode.Range32{{Lo: 0x1f1e6, Hi: 0x1f1ff, Stride: 1}, {Lo: 0x1f3fb, Hi: 0x1f3ff, Stride: 1}},
}}

// Width is how many cells a text takes on a full sheet.
func Width(text string) int { return Grid{}.Width(text) }

// Clean leaves out of a text what is never drawn: control characters, and
// characters of no width.
func Clean(text string) string {
	return strings.Map(func(c rune) rune {
		if (c < 0x80 && (c < ' ' || c == 0x7f)) || (c >= 0x80 && widthOf(c) == 0) {
			return -1
		}
		return c
	}, text)
}
