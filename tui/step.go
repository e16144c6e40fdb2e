package tui

import (
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/entry"
	"chargehand/model/session"
	"chargehand/tui/cell"
	"chargehand/tui/theme"
)

// screen is one screen. Screens are values and know nothing of the root: they
// see the shared value and answer a key with a step.
type screen interface {
	name() screenID
	update(shared, Pressed) (screen, step)
	paint(cell.Grid, shared) // all of the grid but the foot, which is the root's
	keys() keymap
}

// screenID names a screen; it is what an entry says about where it was keyed.
type screenID string

const (
	startScreen  screenID = "start"
	lightScreen  screenID = "light"
	fireScreen   screenID = "fire"
	bookScreen   screenID = "book"
	shelfScreen  screenID = "shelf"
	helpScreen   screenID = "help"
	replayScreen screenID = "replay"
)

// shared is what every screen and dialog may look at.
type shared struct {
	w, h       int
	theme      theme.Theme
	now        entry.Stamp
	by         string          // initials
	smelt      session.Session // the one shown; none outside a smelt
	running    session.Session // the one at work, which may be another; none when there is none
	shelf      []SmeltLine
	shelfErr   error
	shelfKnown bool       // it was read, or cannot be
	starters   []Starter  // to light a fire with, the person's own furnaces first
	usual      Starter    // to practise with
	demo       *SmeltLine // the invented one, to look at
	behind     screenID   // the screen to go back to, which help explains
	behindKeys keymap
	careful    string // the caution shown
	chemistry  bool   // the shaft is shown as chemistry
	tally      tally
}

// tally is how it stands with the entries.
type tally struct {
	kept    int    // of the smelt shown
	keeping int    // handed over, nothing wrong
	notKept int    // NOT kept
	trouble string // why, and what to do
}

// step is what a key leads to. The zero step does nothing.
type step struct {
	acts     []act
	say      func(shared) string // the answer, read off the smelt with the acts in it
	refuse   string              // the answer when nothing was done, and why
	ask      dialog              // opens
	again    func(shared) step   // opens, read off the smelt with the acts in it
	to       screenID            // goes there
	back     bool                // goes to the screen before
	light    *entry.Light        // a new smelt begins
	by       string              // and who lights it, initials
	open     string              // the smelt to open
	replayAt jump                // the moment that Replay begins at
	replays  bool                // and shows it again from its light
	shown    bool                // shows the running smelt again
	set      screen              // a screen changed by a dialog
	setting  entry.Setting       // of the house, in force at once
	chem     bool                // the shaft as chemistry, or in plain words again
	far      bool                // the far view of the fire, or back from it
	lock     bool                // keys are held back from here on
	quit     bool                // leaves the program, once all is kept
	anyway   bool                // and also when it is not
	cmd      tea.Cmd
}

// act is an event to keep.
type act struct {
	event     entry.Event
	happened  time.Time // zero for now
	uncertain time.Duration
}

// did is a step that keeps one event, and says so.
func did(ev entry.Event, say func(shared) string) step {
	return step{acts: []act{{event: ev}}, say: say}
}

// refused is a step that does nothing and says why.
func refused(why string) step { return step{refuse: why} }

// said is a step that only answers.
func said(text string) step {
	return step{say: func(shared) string { return text }}
}
