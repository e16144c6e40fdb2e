package theme

import (
	"fmt"
	"image/color"

	"github.com/charmbracelet/x/ansi"

	"chargehand/tui/cell"
)

// shade is a colour of the full palette with its stand-ins among the 256 and the
// sixteen, which are chosen by hand: the nearest by sums is often another hue,
// and of the sixteen the exact shade is the terminal's own affair.
type shade struct {
	full  ansi.RGBColor
	index ansi.IndexedColor
	base  ansi.BasicColor
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
		Number: {rgb(0xeeeeee), 255, ansi.BrightWhite},
		Ore:    {rgb(0xd7af87), 180, ansi.White},
		Slag:   {rgb(0xafd7ff), 153, ansi.BrightCyan},
		Bloom:  {rgb(0xffffff), 231, ansi.BrightWhite},
		Glow0:  {rgb(0x878787), 102, ansi.White},
		Glow1:  {rgb(0xaf5f5f), 131, ansi.BrightRed},
		Glow2:  {rgb(0xff5f5f), 203, ansi.BrightRed},
		Glow3:  {rgb(0xff8700), 208, ansi.BrightYellow},
		Glow4:  {rgb(0xffd700), 220, ansi.BrightYellow},
		Glow5:  {rgb(0xffffd7), 230, ansi.BrightWhite},
	},
	paper: [papers]shade{shaftPaper: {rgb(0x1c1c1c), 234, ansi.Black}},
}

// dark and light are the palette by role. Warm hues belong to the fire, which
// has a table of its own (package glow); blue is now, yellow is a thing to look
// into, and a thing to act on stands inverse. All else is ink on the page.
var dark = scheme{
	ink: [roles]shade{
		Text:   {rgb(0xd9d4cb), 188, ansi.White},
		Strong: {rgb(0xfffdf8), 231, ansi.BrightWhite},
		Quiet:  {rgb(0xa09a90), 247, ansi.White},
		Frame:  {rgb(0x45434a), 238, ansi.BrightBlack},
		Now:    {rgb(0x7cd3ff), 117, ansi.BrightCyan},
		Look:   {rgb(0x1c1400), 16, ansi.Black},
		Act:    {rgb(0x1a0500), 232, ansi.Black},
		Struck: {rgb(0xa09a90), 247, ansi.White},
		Picked: {rgb(0xd9d4cb), 188, ansi.White},
		Field:  {rgb(0xfffdf8), 231, ansi.BrightWhite},
		Clay:   {rgb(0x8a6a52), 94, ansi.BrightBlack},
		Copper: {rgb(0x7cd3ff), 117, ansi.BrightCyan},
		Warn:   {rgb(0xffd54a), 221, ansi.BrightYellow},
		Good:   {rgb(0x8d98a6), 246, ansi.White},
		Past:   {rgb(0x8d98a6), 246, ansi.White},
		Bar:    {rgb(0xbdb7ad), 250, ansi.White},
		OreBar: {rgb(0xc87f55), 173, ansi.Yellow},
		Tag:    {rgb(0x101114), 233, ansi.Black},
	},
	paper: [papers]shade{
		page:        {rgb(0x101114), 233, ansi.Black},
		lookPaper:   {rgb(0xffd54a), 221, ansi.BrightYellow},
		actPaper:    {rgb(0xff7a4d), 209, ansi.BrightRed},
		tagPaper:    {rgb(0xfffdf8), 231, ansi.BrightWhite},
		pitPaper:    {rgb(0x17181c), 234, ansi.Black},
		aroundPaper: {rgb(0x283c48), 237, ansi.Black},
	},
}

var light = scheme{
	ink: [roles]shade{
		Text:   {rgb(0x2c2823), 235, ansi.Black},
		Strong: {rgb(0x000000), 16, ansi.Black},
		Quiet:  {rgb(0x5f584e), 240, ansi.Black},
		Frame:  {rgb(0xc9c0b3), 251, ansi.BrightBlack},
		Now:    {rgb(0x004b73), 24, ansi.Blue},
		Look:   {rgb(0x1c1400), 16, ansi.Black},
		Act:    {rgb(0xffffff), 231, ansi.BrightWhite},
		Struck: {rgb(0x5f584e), 240, ansi.Black},
		Picked: {rgb(0x2c2823), 235, ansi.Black},
		Field:  {rgb(0x000000), 16, ansi.Black},
		Clay:   {rgb(0x9c785e), 137, ansi.BrightBlack},
		Copper: {rgb(0x004b73), 24, ansi.Blue},
		Warn:   {rgb(0x7d4e00), 94, ansi.Black},
		Good:   {rgb(0x7a8490), 244, ansi.BrightBlack},
		Past:   {rgb(0x7a8490), 244, ansi.BrightBlack},
		Bar:    {rgb(0x77706a), 243, ansi.BrightBlack},
		OreBar: {rgb(0xa4572b), 130, ansi.Red},
		Tag:    {rgb(0xfaf7f1), 231, ansi.BrightWhite},
	},
	paper: [papers]shade{
		page:        {rgb(0xfaf7f1), 231, ansi.BrightWhite},
		lookPaper:   {rgb(0xffd54a), 221, ansi.BrightYellow},
		actPaper:    {rgb(0x9c1c00), 124, ansi.Red},
		tagPaper:    {rgb(0x000000), 16, ansi.Black},
		pitPaper:    {rgb(0xece6db), 254, ansi.BrightWhite},
		aroundPaper: {rgb(0xc3d1d5), 153, ansi.BrightWhite},
	},
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
		return s.index
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
