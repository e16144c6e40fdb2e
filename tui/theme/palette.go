package theme

import (
	"fmt"
	"image/color"

	"github.com/charmbracelet/x/ansi"

	"chargehand/tui/cell"
)

// shade is a colour of the full palette, from which the 256 colours are found,
// and its stand-in among the sixteen, which is chosen by hand: there the exact
// shade is the terminal's own affair.
type shade struct {
	full ansi.RGBColor
	base ansi.BasicColor
}

// rgb reads a colour as it is usually written, red first.
func rgb(hex uint32) ansi.RGBColor {
	return ansi.RGBColor{R: uint8(hex >> 16), G: uint8(hex >> 8), B: uint8(hex)}
}

// scheme is all the shades of one background.
type scheme struct {
	ink   [roles]shade
	paper [papers]shade
}

// inShaft holds the shades inside the shaft, the same on either background.
var inShaft = scheme{
	ink: [roles]shade{
		Number: {rgb(0xeeeeee), ansi.BrightWhite},
		Ore:    {rgb(0xd7af87), ansi.White},
		Slag:   {rgb(0xafd7ff), ansi.BrightCyan},
		Bloom:  {rgb(0xffffff), ansi.BrightWhite},
		Glow0:  {rgb(0x878787), ansi.White},
		Glow1:  {rgb(0xaf5f5f), ansi.BrightRed},
		Glow2:  {rgb(0xff5f5f), ansi.BrightRed},
		Glow3:  {rgb(0xff8700), ansi.BrightYellow},
		Glow4:  {rgb(0xffd700), ansi.BrightYellow},
		Glow5:  {rgb(0xffffd7), ansi.BrightWhite},
	},
	paper: [papers]shade{shaftPaper: {rgb(0x1c1c1c), ansi.Black}},
}

var dark = scheme{
	ink: [roles]shade{
		Text:   {rgb(0xe4e4e4), ansi.BrightWhite},
		Strong: {rgb(0xffffff), ansi.BrightWhite},
		Quiet:  {rgb(0xb2b2b2), ansi.White},
		Frame:  {rgb(0x6c6c6c), ansi.BrightBlack},
		Now:    {rgb(0x5fd7ff), ansi.BrightCyan},
		Look:   {rgb(0x000000), ansi.Black},
		Act:    {rgb(0xffffff), ansi.Black},
		Struck: {rgb(0xb2b2b2), ansi.White},
		Picked: {rgb(0xe4e4e4), ansi.BrightWhite},
		Field:  {rgb(0xffffff), ansi.BrightWhite},
		Clay:   {rgb(0xaf875f), ansi.Yellow},
		Copper: {rgb(0xffaf87), ansi.BrightYellow},
	},
	paper: [papers]shade{page: {rgb(0x121212), ansi.Black}, lookPaper: {rgb(0xffd75f), ansi.BrightYellow}, actPaper: {rgb(0xaf0000), ansi.BrightWhite}},
}

var light = scheme{
	ink: [roles]shade{
		Text:   {rgb(0x1c1c1c), ansi.Black},
		Strong: {rgb(0x000000), ansi.Black},
		Quiet:  {rgb(0x4e4e4e), ansi.Black},
		Frame:  {rgb(0x8a8a8a), ansi.BrightBlack},
		Now:    {rgb(0x00005f), ansi.Blue},
		Look:   {rgb(0x000000), ansi.Black},
		Act:    {rgb(0xffffff), ansi.BrightWhite},
		Struck: {rgb(0x4e4e4e), ansi.Black},
		Picked: {rgb(0x1c1c1c), ansi.Black},
		Field:  {rgb(0x000000), ansi.Black},
		Clay:   {rgb(0x875f00), ansi.BrightBlack},
		Copper: {rgb(0x870000), ansi.Red},
	},
	paper: [papers]shade{page: {rgb(0xffffff), ansi.BrightWhite}, lookPaper: {rgb(0xffd75f), ansi.BrightYellow}, actPaper: {rgb(0xaf0000), ansi.Black}},
}

// schemes holds dark and light with the shaft put into each.
var schemes = [2]scheme{with(dark, inShaft), with(light, inShaft)}

func with(s, shaft scheme) scheme {
	copy(s.ink[Number:], shaft.ink[Number:])
	s.paper[shaftPaper] = shaft.paper[shaftPaper]
	return s
}

// colour is the shade as the profile shows it, or nil without colour.
func (p Profile) colour(s shade) color.Color {
	switch p {
	case Base16:
		return s.base
	case Fixed256:
		return ansi.Convert256(s.full)
	case True:
		return s.full
	}
	return nil
}

// palette makes the parameters of every ink and paper (ECMA-48, 8.3.117; the
// 256 and the full colours after ITU-T T.416, in the form with semicolons that
// terminals take).
func palette(p Profile, s scheme) *cell.Palette {
	out := &cell.Palette{}
	for i, ink := range s.ink {
		out.Ink[i] = parameters(p.colour(ink), 30)
	}
	for i, paper := range s.paper {
		out.Paper[i] = parameters(p.colour(paper), 40)
	}
	return out
}

// parameters sets a colour: first is 30 for letters, 40 for paper.
func parameters(c color.Color, first int) string {
	switch c := c.(type) {
	case ansi.BasicColor:
		if c >= ansi.BrightBlack {
			return fmt.Sprint(first + 60 + int(c-ansi.BrightBlack))
		}
		return fmt.Sprint(first + int(c))
	case ansi.IndexedColor:
		return fmt.Sprintf("%d;5;%d", first+8, c)
	case ansi.RGBColor:
		return fmt.Sprintf("%d;2;%d;%d;%d", first+8, c.R, c.G, c.B)
	}
	return ""
}

// palettes holds one palette for each profile on each background.
var palettes = func() (all [profiles][2]*cell.Palette) {
	for p := range profiles {
		for i, s := range schemes {
			all[p][i] = palette(p, s)
		}
	}
	return all
}()
