package draw

import "chargehand/model/figure"

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

func (p Pen) FigureLines(r figure.Reading) []Figure {
	var all []Figure
	for _, l := range p.figureLines(r) {
		all = append(all, Figure{l.name, l.value})
	}
	return all
}

func (p Pen) BloomLine(r figure.Reading) Figure {
	l := p.bloomLine(r)
	return Figure{l.name, l.value}
}
