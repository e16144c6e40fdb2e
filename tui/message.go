package tui

import (
	"fmt"

	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/entry"
	"chargehand/model/learn"
	"chargehand/model/shelf"
	"chargehand/tui/screen"
)

// Pressed is one key, or one paste, with the clocks at its arrival.
type Pressed = screen.Pressed

// Burst is keys that arrived in one read, in order.
type Burst []Pressed

// Tick says that a second has passed, or more.
type Tick struct{ At entry.Stamp }

// Kept is what the book's writer reports: entries that are now kept, as they
// stand in the book, and how it goes with the rest.
type Kept struct {
	Entries []entry.Entry
	Refused []entry.Entry // never to be kept; Err says why
	Err     error         // the last attempt failed; nil when all is well again
	Waiting int           // entries that the writer holds and tries again
	Told    []string      // what had to be put right or took over; then there is nothing else
}

// Leave asks the program to end without asking anybody: the terminal is gone,
// or the machine goes down.
type Leave struct{}

// shelfRead brings the lines of the shelf, or the demo with its own.
type shelfRead struct {
	lines []shelf.Summary
	teach learn.History // what they teach
	demo  []entry.Entry
	err   error
}

// smeltRead brings the entries of a smelt that was asked for.
type smeltRead struct {
	id      string
	on      screen.ID // where it is shown
	beside  bool      // it burns beside the one at work
	entries []entry.Entry
	lost    []entry.Gap
	err     error
}

// failed says that a command panicked.
type failed struct{ err error }

// guarded runs a command so that a panic in it becomes a message, with the
// stack handed to the program's crash file, instead of a broken terminal.
func guarded(crashed func(any, []byte), stack func() []byte, cmd tea.Cmd) tea.Cmd {
	return func() (msg tea.Msg) {
		defer func() {
			if v := recover(); v != nil {
				if crashed != nil {
					crashed(v, stack())
				}
				msg = failed{fmt.Errorf("%v", v)}
			}
		}()
		return cmd()
	}
}
