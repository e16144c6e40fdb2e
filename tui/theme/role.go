package theme

import (
	"io"
	"strconv"

	"github.com/charmbracelet/lipgloss"
	"github.com/muesli/termenv"

	"chargehand/tui/cell"
)

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

// renderer writes the styles below for the components of the screen library. It
// asks no terminal anything: a colour there is the number of an ink, which the
// grid turns into the terminal's own (cell.Grid.Lay, Palette).
var renderer = func() *lipgloss.Renderer {
	r := lipgloss.NewRenderer(io.Discard)
	r.SetColorProfile(termenv.ANSI256)
	r.SetHasDarkBackground(true)
	return r
}()

// looks holds how each role looks, with colours and without. It is the one place
// that says so: components of the screen library take these styles, and the grid
// takes its ink, paper and attributes from them.
var looks = [2][roles]lipgloss.Style{lookOf(true), lookOf(false)}

func lookOf(coloured bool) (all [roles]lipgloss.Style) {
	for r := range roles {
		s := renderer.NewStyle().Foreground(inkColour(cell.Ink(r)))
		switch {
		case r == Strong || r == Now || r == Past || r == Warn:
			s = s.Bold(true)
		case r == Field:
			s = s.Underline(true)
		case r == Picked:
			s = s.Reverse(true)
		case r == Look:
			s = s.Background(inkColour(lookPaper)).Bold(!coloured)
		case r == Act:
			s = s.Background(inkColour(actPaper)).Reverse(!coloured)
		case r == Tag:
			s = s.Background(inkColour(tagPaper)).Bold(coloured).Reverse(!coloured)
		case r.inside():
			s = s.Background(inkColour(shaftPaper))
		}
		all[r] = s
	}
	return all
}

// inkColour is an ink as the component library names a colour.
func inkColour(i cell.Ink) lipgloss.Color { return lipgloss.Color(strconv.Itoa(int(i))) }

// inkOf is the ink of such a colour; none is the page's own.
func inkOf(c lipgloss.TerminalColor) cell.Ink {
	name, _ := c.(lipgloss.Color)
	n, _ := strconv.Atoi(string(name))
	return cell.Ink(n)
}

// cells are the same looks as cells of the grid have them.
var cells = func() (all [2][roles]cell.Style) {
	for i := range looks {
		for r, s := range looks[i] {
			c := cell.Style{Ink: inkOf(s.GetForeground()), Paper: inkOf(s.GetBackground())}
			if s.GetBold() {
				c.Attr |= cell.Bold
			}
			if s.GetUnderline() {
				c.Attr |= cell.Underline
			}
			if s.GetReverse() {
				c.Attr |= cell.Inverse
			}
			all[i][r] = c
		}
	}
	return all
}()

// plain is 1 without colours.
func (t Theme) plain() int {
	if t.Profile == None {
		return 1
	}
	return 0
}

// Component is how a role looks in a component of the screen library, whose
// strings are laid into the grid.
func (t Theme) Component(r Role) lipgloss.Style { return looks[t.plain()][r] }

// Style is how a role looks in this theme.
func (t Theme) Style(r Role) cell.Style { return cells[t.plain()][r] }

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
