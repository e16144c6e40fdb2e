package tui

import (
	"chargehand/tui/cell"
	"chargehand/tui/paint"
)

// dialog is what an act asks before it is one: a list, a question or a field.
// While one is open it takes every key. An update that returns no dialog has
// come to its end.
type dialog interface {
	update(shared, Pressed) (dialog, step)
	ask(shared) *paint.Ask        // what the foot asks
	paint(g cell.Grid, sh shared) // the list above the foot, at the lower end of the grid
	hints() []paint.KeyHint
	typing() bool // takes text: keys may repeat and pastes are welcome
}
