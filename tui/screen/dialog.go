package screen

import (
	"time"

	"chargehand/tui/cell"
	"chargehand/tui/draw"
)

// How long a list or question stays open without a key, and what is there to be
// read.
const (
	Unattended = 15 * time.Second
	Readable   = time.Minute
)

// Dialog is what an act asks before it is one: a list, a question or a field.
// While one is open it takes every key. An Update that returns no dialog has
// come to its end.
//
// Without a key a dialog that takes no text closes itself after Unattended, or
// what its Stays method, func() time.Duration, says.
//
// One that closes without a choice does what its Leaves method,
// func(Shared) Effect, says.
//
// A dialog that has an Opened method, func(Shared) Dialog, is replaced by what it
// returns when it opens; one that has a Whole method, func(cell.Grid, Shared),
// paints all of the screen instead of the screen's own picture.
type Dialog interface {
	Update(*Shared, Pressed) (Dialog, Effect)
	Ask(*Shared) *draw.Ask         // what the foot asks; nil for a card that asks nothing
	Paint(g cell.Grid, sh *Shared) // the list above the foot, at the lower end of the grid
	Hints() []draw.KeyHint
	Typing() bool // takes text: keys may repeat and pastes are welcome
}

// HalfTyped is a dialog in which something may be half typed: it is shown again when the
// dialog opens anew, also in another run of the program.
type HalfTyped interface {
	Dialog
	Place() string                  // its words, by which it is found again
	Half(*Shared) string            // what is typed so far, "" for nothing
	Resumed(text, at string) Dialog // what was typed at a time of the day
}

// Form is a dialog of several rows to type into: what is half typed in them is shown again
// when it opens anew, also by another run of the program.
type Form interface {
	Dialog
	Labels() []string // of its rows, by which a draft of them is found
	Half(*Shared) []Answered
	Resumed(typed map[string]string) Dialog // by label
}
