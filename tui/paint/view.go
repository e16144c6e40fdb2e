package paint

import (
	"time"

	"chargehand/model/forecast"
	"chargehand/model/rule"
)

// FireView is what Fire shows besides the reading.
type FireView struct {
	Now       time.Time      // wall clock to show, in the smelt's own offset
	Title     string         // the smelt
	Kept      int            // entries that are safe
	Keeping   int            // handed over and not acknowledged, with nothing wrong
	NoBook    bool           // the smelt is in no book
	NotKept   int            // entries that are NOT safe
	Trouble   string         // why they are not, and what to do
	Chemistry bool           // the zones of the shaft as chemistry, else in plain words
	Past      string         // says that this is not now, when it is not
	NextKey   string         // the key that books the charge as shown
	Adding    *Adding        // the open measure
	Due       *forecast.Due  // without one the digits count up from the last charge
	Warnings  []rule.Warning // those that stand, gravest first
	Log       []LogLine      // newest first

	Flame  *Sight // the last look at the flame; nil when nobody has looked
	Ready  []bool // which of words.ReadyChecks are ticked off; nil where nobody ticks
	Closer string // who closes the smelt, "" while nobody is named
	Decide DecideKeys

	Caution *CautionText // shown over the shaft, or below the charge in the far view; see CautionShows
}

// Sight is what was seen, and when on the smelt's clock.
type Sight struct {
	Sees string
	At   time.Duration
}

// DecideKeys are the keys of the decision card.
type DecideKeys struct{ Extract, Wait, GiveUp string }

// Adding is the open measure: how much of what was added to it so far.
type Adding struct {
	Count float64
	What  string
}

// LogLine is one entry as the log shows it.
type LogLine struct {
	At, Text     string
	Struck, Late bool
}
