package fire

import (
	"chargehand/model/rule"
	"chargehand/tui/screen"
)

// What the tests outside need of the inside.
const TurnsFor = turnsFor

var Unseen = unseen

// First is the warning that stands first.
func (f Screen) First(sh screen.Shared) rule.ID {
	return f.turn.of(sh.Running.Standing(), sh.Now)[0].Rule
}
