package paint

import (
	"time"

	"chargehand/physics"
)

// FireView is what Fire shows besides the reading.
type FireView struct {
	Now     time.Time // wall clock to show, in the smelt's own offset
	Title   string    // the smelt
	Kept    int       // entries that are safe
	Keeping int       // handed over and not acknowledged, with nothing wrong
	NotKept int       // entries that are NOT safe
	Trouble string    // why they are not, and what to do
	Past    string    // says that this is not now, when it is not
	Answer  Answer    // what the last key did
	Ask     *Ask      // a question or a field, in place of the answer
	Keys    []KeyHint // what can be done now, the weightiest first
	Help    KeyHint   // always shown
	NextKey string    // the key that books the charge as shown
	Adding  *Adding   // the open measure
	Due     *Due      // the forecast; without one the digits count up from the last charge
	Warning *Warning  // the top one
	Log     []LogLine // newest first
}

// Answer is what the last key did, and how safe it is.
type Answer struct {
	Text  string
	State AnswerState
}

// AnswerState is what became of an answer's entry.
type AnswerState int

// The states of an answer.
const (
	Said    AnswerState = iota // there is nothing to keep
	Working                    // handed over
	IsKept                     // safe
	Unsafe                     // NOT safe
	Refused                    // the key did nothing; the text says why
)

// Ask is a question, or a field being filled in.
type Ask struct{ Label, Value, Hint string }

// KeyHint is a key and what it does.
type KeyHint struct{ Key, Does string }

// Adding is the open measure: how much of what was added to it so far.
type Adding struct {
	Count float64
	What  string
}

// Due is when the next charge is due.
type Due struct {
	Minutes physics.Band // left; negative when it is late
	Unsure  string       // why the forecast may be off, if it may
}

// Late tells whether the charge is due already.
func (d Due) Late() bool { return d.Minutes.P50 < 0 }

// Grade is how much a warning matters.
type Grade int

// The grades of warnings.
const (
	Note Grade = iota
	Look
	Act
)

// Warning is what seems wrong, what shows it, and what usually helps.
type Warning struct {
	Grade    Grade
	Name     string // of the grade
	Title    string
	Evidence string
	Remedy   string
	At       string
}

// LogLine is one entry as the log shows it.
type LogLine struct {
	At, Text     string
	Struck, Late bool
}
