package theme

import (
	"strconv"
	"strings"

	"github.com/charmbracelet/colorprofile"

	"chargehand/tui/cell"
)

// Profile is how many colours the terminal has.
type Profile int

// The profiles. Without colour, bold, underline and inverse stay.
const (
	None Profile = iota
	Base16
	Fixed256
	True
	profiles
)

// Theme is how everything looks to one person. The zero value has no colour, is
// for a dark terminal, and draws in full.
type Theme struct {
	Profile Profile
	Light   bool
	ASCII   bool
}

// Grid is a blank sheet for this theme.
func (t Theme) Grid(w, h int) cell.Grid { return cell.New(w, h, t.ASCII) }

// GridFrom is Grid with the cells of another sheet that nobody needs any more.
func (t Theme) GridFrom(old cell.Grid, w, h int) cell.Grid { return old.Renewed(w, h, t.ASCII) }

// Palette is what the sheet is encoded with.
func (t Theme) Palette() *cell.Palette {
	return palettes[t.Profile][t.background()]
}

// Ink is the colour of a role by itself, for pictures that mix it with others in
// one cell. Without colour it is the page's own.
func (t Theme) Ink(r Role) cell.Ink { return t.Profile.ink(schemes[t.background()].ink[r]) }

// PageInk is the colour of the page.
func (t Theme) PageInk() cell.Ink { return t.Profile.ink(schemes[t.background()].paper[page]) }

// PitInk is the colour of the empty shaft.
func (t Theme) PitInk() cell.Ink { return t.Profile.ink(schemes[t.background()].paper[pitPaper]) }

// RGB is the full colour of a role, red first.
func (t Theme) RGB(r Role) (red, green, blue uint8) {
	c := schemes[t.background()].ink[r].full
	return c.R, c.G, c.B
}

// PageRGB is the full colour of the page, red first.
func (t Theme) PageRGB() (red, green, blue uint8) {
	c := schemes[t.background()].paper[page].full
	return c.R, c.G, c.B
}

func (t Theme) background() int {
	if t.Light {
		return 1
	}
	return 0
}

func (p Profile) ink(s shade) cell.Ink {
	switch p {
	case Base16:
		return cell.Basic(uint8(s.base))
	case Fixed256:
		return cell.Index(uint8(s.index))
	case True:
		return cell.Full(s.full.R, s.full.G, s.full.B)
	}
	return 0
}

// ProfileOf tells the profile from the environment, without asking the
// terminal. NO_COLOR of any content at all turns colour off (no-color.org).
func ProfileOf(environ []string) Profile {
	for _, e := range environ {
		if v, ok := strings.CutPrefix(e, "NO_COLOR="); ok && v != "" {
			return None
		}
	}
	switch colorprofile.Env(environ) {
	case colorprofile.TrueColor:
		return True
	case colorprofile.ANSI256:
		return Fixed256
	case colorprofile.ANSI:
		return Base16
	}
	return None
}

// LightOf tells a light background from COLORFGBG, which some terminals set to
// the numbers of their letters and their background (common practice), and
// whether it says anything.
func LightOf(colorfgbg string) (light, said bool) {
	last := colorfgbg[strings.LastIndexByte(colorfgbg, ';')+1:]
	n, err := strconv.Atoi(last)
	if err != nil || n < 0 || n > 15 {
		return false, false
	}
	return n == 7 || n > 8, true
}
