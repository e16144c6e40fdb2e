package theme

import (
	"image/color"
	"math"
	"testing"
)

// luminance and contrast are the definitions of relative luminance and
// contrast ratio of W3C, Web Content Accessibility Guidelines 2.1, section
// "Terms" (the linear part up to 0.03928 as printed there).
func luminance(c color.Color) float64 {
	r, g, b, _ := c.RGBA()
	linear := func(v uint32) float64 {
		s := float64(v) / 0xffff
		if s <= 0.03928 {
			return s / 12.92
		}
		return math.Pow((s+0.055)/1.055, 2.4)
	}
	return 0.2126*linear(r) + 0.7152*linear(g) + 0.0722*linear(b)
}

func contrast(a, b color.Color) float64 {
	la, lb := luminance(a), luminance(b)
	return (max(la, lb) + 0.05) / (min(la, lb) + 0.05)
}

// The same guidelines put the ratio between 1 and 21.
func TestContrastOfBlackAndWhite(t *testing.T) {
	if got := contrast(color.Black, color.White); math.Abs(got-21) > 1e-9 {
		t.Errorf("black on white: %v", got)
	}
}

func eachColour(t *testing.T, f func(t *testing.T, th Theme, ink, paper func(Role) color.Color)) {
	for p := Base16; p < profiles; p++ {
		for i, s := range schemes {
			th := Theme{Profile: p, Light: i == 1}
			ink := func(r Role) color.Color { return p.colour(s.ink[th.Style(r).Ink]) }
			paper := func(r Role) color.Color { return p.colour(s.paper[th.Style(r).Paper]) }
			f(t, th, ink, paper)
		}
	}
}

// Figures and what is read at a sample reach 7:1 (WCAG 2.1, success criterion
// 1.4.6), other text 4.5:1 (1.4.3), what is drawn and the large digits of the
// past 3:1 (1.4.11, 1.4.3). Of the sixteen colours the library's usual values
// count; a terminal may show others.
func TestContrast(t *testing.T) {
	need := func(th Theme, r Role) float64 {
		switch r {
		case Act: // black on the usual bright red
			if th.Profile == Base16 {
				return 4.5
			}
			return 7
		case Frame: // lines that only part what words name
			return 0
		case Quiet, Struck, Warn:
			return 4.5
		case Clay, Copper, Good, Past, Bar, OreBar:
			return 3
		}
		if r.inside() && r != Number {
			return 3
		}
		return 7
	}
	eachColour(t, func(t *testing.T, th Theme, ink, paper func(Role) color.Color) {
		for r := range roles {
			if got := contrast(ink(r), paper(r)); got < need(th, r) {
				t.Errorf("%+v role %d: contrast %.2f, want %v", th, r, got, need(th, r))
			}
		}
	})
	for p := Fixed256; p < profiles; p++ {
		for i, s := range schemes {
			for r, least := range map[Role]float64{Strong: 7, Text: 4.5, Now: 4.5} {
				if got := contrast(p.colour(s.ink[r]), p.colour(s.paper[aroundPaper])); got < least {
					t.Errorf("profile %d, light %d: role %d around: %.2f, want %v", p, i, r, got, least)
				}
			}
			if got := contrast(p.colour(s.ink[Strong]), p.colour(s.paper[pitPaper])); got < 7 {
				t.Errorf("profile %d, light %d: the mark in the pit: %.2f", p, i, got)
			}
		}
	}
}

// No colour is green, so none makes a pair with red for those who cannot tell
// the two apart.
func TestNoGreen(t *testing.T) {
	eachColour(t, func(t *testing.T, th Theme, ink, paper func(Role) color.Color) {
		for r := range roles {
			for _, c := range []color.Color{ink(r), paper(r)} {
				red, green, blue, _ := c.RGBA()
				if green > red+0x1000 && green > blue+0x1000 {
					t.Errorf("%+v role %d is green: %v", th, r, c)
				}
			}
		}
	})
}

// The steps of glow grow brighter from each to the next by luminance; the
// sixteen colours are too few for that and only never grow darker. With colour
// or without, each has a pattern of its own.
func TestGlowSteps(t *testing.T) {
	eachColour(t, func(t *testing.T, th Theme, ink, _ func(Role) color.Color) {
		for step := 2; step <= 5; step++ {
			here, before := luminance(ink(Glow(step))), luminance(ink(Glow(step-1)))
			if here < before || (here == before && th.Profile != Base16) {
				t.Errorf("%+v: step %d is not brighter than the one before", th, step)
			}
		}
	})
	for _, th := range []Theme{{}, {ASCII: true}} {
		seen := map[[2]rune]int{}
		for i, g := range th.Marks().Glow {
			if j, twice := seen[g]; twice {
				t.Errorf("%+v: steps %d and %d look alike", th, j, i)
			}
			seen[g] = i
		}
	}
}

func TestProfileOf(t *testing.T) {
	for _, c := range []struct {
		env  []string
		want Profile
	}{
		{[]string{"TERM=xterm-256color"}, Fixed256},
		{[]string{"TERM=xterm-256color", "COLORTERM=truecolor"}, True},
		{[]string{"TERM=xterm-256color", "NO_COLOR=1"}, None},
		{[]string{"TERM=xterm-256color", "NO_COLOR=yes"}, None}, // any content: no-color.org
		{[]string{"TERM=xterm-256color", "NO_COLOR="}, Fixed256},
		{[]string{"TERM=linux"}, Base16},
		{[]string{"TERM=dumb"}, None},
	} {
		if got := ProfileOf(c.env); got != c.want {
			t.Errorf("%v: %d, want %d", c.env, got, c.want)
		}
	}
}

func TestLightOf(t *testing.T) {
	for in, want := range map[string][2]bool{
		"": {false, false}, "15;0": {false, true}, "0;15": {true, true}, "0;default;7": {true, true},
		"12;8": {false, true}, "0;default": {false, false}, ";": {false, false}, "1;99": {false, false},
	} {
		light, said := LightOf(in)
		if light != want[0] || said != want[1] {
			t.Errorf("%q: %v %v, want %v", in, light, said, want)
		}
	}
}
