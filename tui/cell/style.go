package cell

// Ink names a colour of a Palette, for letters or for the paper behind them.
// 0 is the page's own.
type Ink uint8

// Inks is how many inks a palette holds.
const Inks = 40

// Attr is a set of the attributes that stay when there is no colour.
type Attr uint8

// The attributes of a cell.
const (
	Bold Attr = 1 << iota
	Underline
	Inverse
)

// Style is how a cell looks.
type Style struct {
	Ink, Paper Ink
	Attr       Attr
}

// With adds attributes.
func (s Style) With(a Attr) Style {
	s.Attr |= a
	return s
}

// On puts the style on another paper.
func (s Style) On(paper Ink) Style {
	s.Paper = paper
	return s
}

// Palette holds what the terminal is told for each ink: the parameters of a
// Select Graphic Rendition sequence (ECMA-48, 8.3.117), such as "38;5;214".
// Empty ones say nothing, which leaves the terminal's own colours.
type Palette struct {
	Ink, Paper [Inks]string
}
