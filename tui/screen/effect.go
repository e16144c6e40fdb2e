package screen

import (
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/entry"
)

// Effect is what a key leads to: one of the types below. Screens and dialogs ask
// for it and the root does it; nil does nothing.
type Effect interface{ effect() }

type (
	// Keep keeps events, in their order, in the smelt that is shown.
	Keep []Act
	// Say answers, in words read off the smelt with what was kept in it.
	Say func(*Shared) string
	// Refuse answers that nothing was done, and why.
	Refuse string
	// Ask opens a dialog.
	Ask struct{ Dialog Dialog }
	// Again asks something that is read off the smelt with what was kept in it.
	Again func(*Shared) Effect
	// Go goes to a screen and hands it something to begin with, or nil.
	Go struct {
		To   ID
		With any
	}
	// Back goes to the screen before.
	Back struct{}
	// Kindle begins a new smelt, lit by a person of these initials.
	Kindle struct {
		Light     entry.Light
		By        string
		Lit       time.Time     // when it was lit; zero for now
		Sure      string        // the doubts about it that were answered
		Uncertain time.Duration // how well that is known
	}
	// Open opens a smelt and shows it on a screen.
	Open struct {
		Smelt string
		On    ID
	}
	// Running shows the smelt at work again.
	Running struct{}
	// Other puts the other fire that burns at work, and this one beside it.
	Other struct{}
	// Rebook books what was booked in the smelt shown in that of the other fire, as the act
	// says, and strikes it out here once it is kept there.
	Rebook struct {
		Act    Act
		Strike entry.Strike
	}
	// Set puts a setting of the house in force and keeps it.
	Set struct{ Setting entry.Setting }
	// House keeps events of the house, in their order: no smelt need be alight.
	House []Act
	// Put changes another screen than the one at the keys, or changes that one
	// from a dialog.
	Put struct{ Screen Screen }
	// Chemistry shows the shaft as chemistry, or in plain words again.
	Chemistry struct{}
	// Week shows the invented week, to look at.
	Week struct{}
	// Far shows the far view of the fire, or goes back from it.
	Far struct{}
	// Lock holds keys back from here on.
	Lock struct{}
	// See has the furnace that answers say what is looked at: an event that says only that.
	See struct{ Event entry.Event }
	// Rehearse leaves for a rehearsal, in a book of its own.
	Rehearse struct {
		Number   int64  // of the furnace; 0 for any
		Mishap   string // that was chosen; "" for what comes by chance
		UnderWay bool   // well into the main burn, with ore in it
		Fresh    bool   // not the one that was held
	}
	// Quit leaves the program once all is kept; with Anyway also when it is not.
	Quit struct{ Anyway bool }
	// Run works something out beside the screen; its message comes back.
	Run struct{ Cmd tea.Cmd }
	// Past is a dialog's answer to a key that it has no use for: when it is a key
	// of the screen, the dialog closes, Closed is said, and the screen gets the
	// key; else it stays open and Else is done.
	Past struct {
		Closed string
		Was    Dialog // the dialog as it stood before the key, where that was half typed; nil for no matter
		Else   Effect
	}
	// SoFar is what the steps so far amount to. Nothing of it is kept; what of it is out
	// of bounds or can hardly be is found at the step at fault.
	SoFar []Act
	// Sure says that a doubt was answered yes, by its name.
	Sure string
	// Each does several things one after the other.
	Each []Effect
)

func (Keep) effect()      {}
func (Say) effect()       {}
func (Refuse) effect()    {}
func (Ask) effect()       {}
func (Again) effect()     {}
func (Go) effect()        {}
func (Back) effect()      {}
func (Week) effect()      {}
func (Kindle) effect()    {}
func (Open) effect()      {}
func (Running) effect()   {}
func (Other) effect()     {}
func (Rebook) effect()    {}
func (Set) effect()       {}
func (House) effect()     {}
func (Put) effect()       {}
func (Chemistry) effect() {}
func (Far) effect()       {}
func (Lock) effect()      {}
func (See) effect()       {}
func (Rehearse) effect()  {}
func (Quit) effect()      {}
func (Run) effect()       {}
func (Past) effect()      {}
func (SoFar) effect()     {}
func (Sure) effect()      {}
func (Each) effect()      {}

// Act is an event to keep.
type Act struct {
	Event     entry.Event
	Happened  time.Time // zero for now
	Uncertain time.Duration
	Group     string       // the run of like keys that it belongs to: the own name of the run's first entry
	Sure      string       // the doubts about it that were answered
	From      entry.Origin // where it stood before
}

// Did keeps one event, and says so.
func Did(ev entry.Event, say func(*Shared) string) Effect {
	return Each{Keep{{Event: ev}}, Say(say)}
}

// DidInHouse keeps events of the house, and says so.
func DidInHouse(say func(*Shared) string, evs ...entry.Event) Effect {
	acts := make(House, len(evs))
	for i, ev := range evs {
		acts[i].Event = ev
	}
	return Each{acts, Say(say)}
}

// Said only answers.
func Said(text string) Effect { return Say(func(*Shared) string { return text }) }

// Flat is an effect as the plain ones that it is made of, in their order.
func Flat(e Effect) []Effect {
	switch e := e.(type) {
	case nil:
		return nil
	case Each:
		var all []Effect
		for _, one := range e {
			all = append(all, Flat(one)...)
		}
		return all
	}
	return []Effect{e}
}

// Moment is handed to a screen that shows a smelt at a moment of its clock.
type Moment time.Duration

// First is the first effect of a kind among those that an effect is made of.
func First[E Effect](e Effect) (E, bool) {
	for _, one := range Flat(e) {
		if found, ok := one.(E); ok {
			return found, true
		}
	}
	var none E
	return none, false
}

// Kept are the events that an effect keeps, as what the steps so far amount to.
func Kept(e Effect) SoFar {
	var acts SoFar
	for _, one := range Flat(e) {
		if keep, ok := one.(Keep); ok {
			acts = append(acts, keep...)
		}
	}
	return acts
}

// Prepare is handed to the plan to ask, from the beginning, for what there is.
type Prepare struct{}

// InFurnace is handed to the form before light to begin with a furnace of the house.
type InFurnace entry.UID

// AsLit is handed to the form before light to put right what the smelt shown was lit
// with.
type AsLit struct{}

// Compares is handed to the comparison: the streams of the smelts to compare.
type Compares []string
