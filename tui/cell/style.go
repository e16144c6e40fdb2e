package cell

// Ink is a colour, for letters or for the paper behind them: one that a Palette
// holds under a number, 0 being the page's own, or a colour by itself.
type Ink uint32

// Inks is how many inks a palette holds.
const Inks = 40

// A colour by itself has its kind in the top byte. An ink of a palette has none.
const (
	fullInk  Ink = 1 << 24 // 24 bits, red first
	indexInk Ink = 2 << 24 // a number of the 256 colours
	basicInk Ink = 3 << 24 // a number of the sixteen
	inkKind  Ink = 0xff << 24
)

// Full is a colour of 24 bits, for a terminal that shows them.
func Full(r, g, b uint8) Ink { return fullInk | Ink(r)<<16 | Ink(g)<<8 | Ink(b) }

// Index is one of the 256 colours by its number.
func Index(n uint8) Ink { return indexInk | Ink(n) }

// Basic is one of the sixteen colours, 0 to 15.
func Basic(n uint8) Ink { return basicInk | Ink(n&15) }

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
