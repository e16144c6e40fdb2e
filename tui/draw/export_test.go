package draw

import (
	"chargehand/model/figure"
	"chargehand/model/picture"
	"chargehand/tui/cell"
	"chargehand/tui/shaft"
)

// What the tests outside need of the inside.
var (
	Dots       = dots
	BigLetters = letters
	Capitals   = capitals
)

// Figure is a line of the figures.
type Figure struct {
	Name, Value string
}

func (p Pen) FigureLines(r *figure.Reading) []Figure {
	var all []Figure
	for _, l := range p.figureLines(r) {
		all = append(all, Figure{l.name, l.value})
	}
	return all
}

func (p Pen) BloomLine(r *figure.Reading) Figure {
	l := p.bloomLine(r)
	return Figure{l.name, l.value}
}

// ShaftPlace is where a furnace stands in a picture of w by h, and the first column
// of the numbers of its charges.
func ShaftPlace(pic picture.Picture, w, h int) (shaft.Place, int) {
	c := shaftParts(w, false)
	return shaft.Fit(pic, cell.Rect{X: c.body, Y: 1, W: c.wide, H: h - 1}, c.wall), c.load
}
