package theme

import (
	"strconv"
	"strings"

	"github.com/charmbracelet/colorprofile"

	"chargehand/model/words"
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

// Theme is how everything looks to one person, and in which units it reads. The
// zero value has no colour, is for a dark terminal, draws in full, and is
// metric.
type Theme struct {
	Profile Profile
	Light   bool
	ASCII   bool
	Units   words.Units
}

// Grid is a blank sheet for this theme.
func (t Theme) Grid(w, h int) cell.Grid { return cell.New(w, h, t.ASCII) }

// Palette is what the sheet is encoded with.
func (t Theme) Palette() *cell.Palette {
	background := 0
	if t.Light {
		background = 1
	}
	return palettes[t.Profile][background]
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
