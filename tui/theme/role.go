package theme

import "chargehand/tui/cell"

// Role is what a piece of the screen means. Its number is its ink.
type Role cell.Ink

// The roles. What stands on the page comes first, then what stands inside the
// shaft, which is dark by day and by night.
const (
	Text   Role = iota // figures and plain words
	Strong             // what counts most, bold
	Quiet              // labels and remarks
	Frame              // lines
	Now                // the one accent: the timer and the letters of keys
	Look               // a warning to look into: on a paper of its own
	Act                // a warning to act on, and entries not kept: inverse
	Struck             // crossed out, beside its mark
	Picked             // the chosen row: inverse, beside its mark
	Field              // what is being typed: underlined
	Clay               // the wall of the furnace
	Copper             // the tuyere
	Warn               // a figure outside its band: its mark and its remark
	Good               // the good band of a bar, and a spread
	Past               // what would be Now, of what is past or invented
	Bar                // bars of charges
	OreBar             // bars of ore
	Tag                // " practice ", " invented ", " this is the past ": inverse
	Number             // numbers and words inside the shaft
	Ore                // the grains of ore
	Slag               // the slag bath
	Bloom              // the bloom
	Glow0              // no glow
	Glow1              // dark to the eye by day
	Glow2              // red
	Glow3              // orange
	Glow4              // yellow
	Glow5              // white
	roles
)

// Papers other than the page.
const (
	page        cell.Ink = 0
	lookPaper   cell.Ink = 1
	actPaper    cell.Ink = 2
	shaftPaper  cell.Ink = 3
	tagPaper    cell.Ink = 4
	pitPaper    cell.Ink = 5
	aroundPaper cell.Ink = 6
	papers               = 7
)

// Glow is the role of a step of heat, 0 cold to 5 white.
func Glow(step int) Role { return Glow0 + Role(min(max(step, 0), 5)) }

// inside tells whether a role stands inside the shaft.
func (r Role) inside() bool { return r >= Number }

// Style is how a role looks in this theme.
func (t Theme) Style(r Role) cell.Style {
	s := cell.Style{Ink: cell.Ink(r)}
	switch {
	case r == Strong:
		s.Attr = cell.Bold
	case r == Now || r == Past || r == Warn:
		s.Attr = cell.Bold
	case r == Field:
		s.Attr = cell.Underline
	case r == Look:
		s.Paper = lookPaper
		if t.Profile == None {
			s.Attr = cell.Bold
		}
	case r == Act:
		s.Paper = actPaper
		if t.Profile == None {
			s.Attr = cell.Inverse
		}
	case r == Tag:
		s.Paper, s.Attr = tagPaper, cell.Bold
		if t.Profile == None {
			s.Attr = cell.Inverse
		}
	case r == Picked:
		s.Attr = cell.Inverse
	case r.inside():
		s.Paper = shaftPaper
	}
	return s
}

// Pit puts a style on the paper of the empty shaft.
func (t Theme) Pit(s cell.Style) cell.Style { return s.On(pitPaper) }

// Around puts a style on the paper of the one row that tells of a burning smelt
// on every other screen. Where there are too few colours for a paper of its own
// the row is inverse.
func (t Theme) Around(s cell.Style) cell.Style {
	if t.Profile < Fixed256 {
		return s.With(cell.Inverse)
	}
	return s.On(aroundPaper)
}
