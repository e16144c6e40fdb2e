package tui

import (
	"chargehand/model/entry"
	"chargehand/model/shelf"
	"chargehand/tui/screen"
	"chargehand/tui/theme"
)

// Config is what the program hands in. All that touches a clock, a file or
// chance comes in here.
type Config struct {
	Store      Store
	Theme      theme.Theme
	Start      entry.Stamp                   // the clocks when the program started
	NewUID     func() string                 // a new random uid for a new smelt
	Demo       func() ([]entry.Entry, error) // the invented smelt to look at, read inside a command; nil for none
	Week       func() []entry.Entry          // the invented week before it, made inside a command; nil for none
	Logs       screen.LogFiles               // other people's logs on this machine; nil for none
	Starters   []Starter                     // furnaces to begin with; nil for those of this package
	Practise   bool                          // begin with a practice smelt, without asking
	Rehearsals bool                          // practise leads to a rehearsal, which the program opens when this one has left
	Rehearsal  string                        // the smelt of the rehearsal that this one is for, opened at once; "" for none
	Watching   *Watching                     // only shows what another program keeps; nil for a program of its own
	Version    string                        // of the program, for its testimony
	Background bool                          // dark or light was said on the command line: a stored choice does not change it
	Ring       func()                        // sounds the terminal's bell, called inside a command; nil for silence
	Crashed    func(value any, stack []byte) // told of a panic inside a command, on that command's goroutine; may be nil
}

// Store is the book as the screens see it. Keep keeps the order and never
// blocks; what became of the entries comes back as Kept messages. The others
// are called inside commands only.
type Store interface {
	Keep(...entry.Entry)
	Smelts() ([]shelf.Summary, error) // practice smelts too, the demo not; newest first
	// Entries gives those of a stream in order of their sequence, and what is lost of it.
	Entries(stream string) (kept []entry.Entry, lost []entry.Gap, err error)
}

// Starter is a furnace to begin with.
type Starter = screen.Starter

// Starters are furnaces of the usual sizes.
func Starters() []Starter { return screen.Starters() }
