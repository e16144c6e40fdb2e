package screen

import (
	"time"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/entry"
	"chargehand/model/session"
	"chargehand/tui/cell"
	"chargehand/tui/draw"
)

// Screen is one screen. Screens are values and know nothing of the root: they
// see the shared value and answer a key with an effect. What only some screens do
// is in the interfaces below.
type Screen interface {
	ID() ID
	Keys() KeyMap
	Listed(*Shared) string        // its word in the list of screens, "" while it is not in it
	Hints(*Shared) []draw.KeyHint // the keys that make sense now
	Update(*Shared, Pressed) (Screen, Effect)
	Paint(cell.Grid, *Shared) // all of the grid but the foot, which is the root's
}

// Enterer does something when it is gone to, with what it was handed (Go.With).
type Enterer interface {
	Entered(sh *Shared, with any) (Screen, Effect)
}

// Receiver takes what came of an effect Run, and Read.
type Receiver interface {
	Receive(*Shared, tea.Msg) (next Screen, e Effect, taken bool)
}

// Read says that the shelf has been read.
type Read struct{}

// Drafter has rows to type into: what is half typed in them is shown again when it is
// entered anew, also by another run of the program.
type Drafter interface {
	Half(*Shared) []Answered
	OfSmelt() bool                          // what is typed is about the smelt shown
	Resumed(typed map[string]string) Screen // by label
}

// Beside is a screen of the house that stands beside the fire: while a smelt burns it is
// about that one, its second row tells of it (TopBeside), the acts of the fire that can be
// keyed from afar are those of Fire there too, and after AsideFor without a key the root
// goes back to Fire.
type Beside interface{ Beside() }

// AsideFor is how long one looks elsewhere than at the fire without a key.
const AsideFor = time.Minute

// Typer takes text instead of keys.
type Typer interface{ Typing() bool }

// Backer has a way back of its own, before the one to another screen.
type Backer interface {
	Back() (next Screen, back bool)
}

// Careful shows cautions, while it has the room.
type Careful interface{ ShowsCaution(*Shared) bool }

// Gatherer has acts whose keys may come as fast as they like: presses of one of
// them that follow each other quickly come to it as one, with their number.
type Gatherer interface{ Gathers(Typed) bool }

// Player moves by itself while it plays.
type Player interface {
	Playing() bool
	Frame(entry.Stamp) Screen
}

// MostWorks is how many smelts of a screen the shaft solver remembers.
const MostWorks = 2

// Work is a smelt of a screen's own for the shaft solver, under a number below
// MostWorks.
type Work struct {
	N     int
	Smelt session.Session
}

// Worker has such smelts, the most urgent first, and takes back what was solved.
type Worker interface {
	Works() []Work
	Worked(n int, s session.Session) Screen
}

// Explained has more to say in the help than its keys: a list of rare acts.
type Explained interface {
	Explains() (heading string, keys []key.Binding)
}
