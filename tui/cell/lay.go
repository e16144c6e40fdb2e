package cell

import (
	"strconv"
	"strings"

	"github.com/charmbracelet/x/ansi"
)

// Lay writes what a component of the screen library drew: lines with Select
// Graphic Rendition sequences (ECMA-48, 8.3.117) among them. Colours are taken
// for numbers of inks and papers, which is how the theme's styles name them; what
// has none looks like base. Other sequences are left out. Each line is cut at the
// edge of the grid.
func (g Grid) Lay(text string, base Style) {
	for y, line := range strings.Split(text, "\n") {
		if y >= g.h {
			return
		}
		g.layLine(y, line, base)
	}
}

func (g Grid) layLine(y int, line string, base Style) {
	s, x := base, 0
	var state byte
	for line != "" {
		seq, width, n, next := ansi.DecodeSequence(line, state, nil)
		state, line = next, line[n:]
		switch {
		case width > 0:
			x += g.Text(x, y, seq, s)
		case ansi.HasCsiPrefix(seq) && strings.HasSuffix(seq, "m"):
			s = s.rendition(base, strings.TrimPrefix(strings.TrimSuffix(seq, "m"), "\x1b["))
		}
	}
}

// rendition is the style after the parameters of one sequence.
func (s Style) rendition(base Style, parameters string) Style {
	ps := strings.Split(parameters, ";")
	for i := 0; i < len(ps); i++ {
		n, _ := strconv.Atoi(ps[i]) // an empty one is 0
		switch {
		case n == 0:
			s = base
		case n == 1:
			s.Attr |= Bold
		case n == 4:
			s.Attr |= Underline
		case n == 7:
			s.Attr |= Inverse
		case n == 22:
			s.Attr &^= Bold
		case n == 24:
			s.Attr &^= Underline
		case n == 27:
			s.Attr &^= Inverse
		case n == 39:
			s.Ink = base.Ink
		case n == 49:
			s.Paper = base.Paper
		case n >= 30 && n <= 37:
			s.Ink = Ink(n - 30)
		case n >= 90 && n <= 97:
			s.Ink = Ink(n - 90 + 8)
		case n >= 40 && n <= 47:
			s.Paper = Ink(n - 40)
		case n >= 100 && n <= 107:
			s.Paper = Ink(n - 100 + 8)
		case (n == 38 || n == 48) && i+2 < len(ps) && ps[i+1] == "5":
			c, _ := strconv.Atoi(ps[i+2])
			c = min(max(c, 0), Inks-1)
			if n == 38 {
				s.Ink = Ink(c)
			} else {
				s.Paper = Ink(c)
			}
			i += 2
		}
	}
	return s
}
