package fire

import (
	"strings"

	"chargehand/model/rule"
	"chargehand/tui/screen"
	"chargehand/tui/theme"
)

// What the tests outside need of the inside.
const TurnsFor = turnsFor

var Unseen = unseen

// First is the warning that stands first.
func (f Screen) First(sh *screen.Shared) rule.ID {
	return f.turn.of(sh.Running.Standing(), sh.Now)[0].Rule
}

// Lettered tells whether a text stands in a frame in letters, or where it is too small for
// them in plain.
func Lettered(frame, text string) bool {
	return lettered(frame, theme.Theme{}, strings.ToUpper(text)) || len(strings.Split(frame, "\n")) < 24 && strings.Contains(frame, text)
}
