package paint

import (
	"time"

	"chargehand/model/forecast"
	"chargehand/model/rule"
)

// FireView is what Fire shows besides the reading.
type FireView struct {
	Now      time.Time      // wall clock to show, in the smelt's own offset
	Title    string         // the smelt
	Kept     int            // entries that are safe
	Keeping  int            // handed over and not acknowledged, with nothing wrong
	NotKept  int            // entries that are NOT safe
	Trouble  string         // why they are not, and what to do
	Past     string         // says that this is not now, when it is not
	NextKey  string         // the key that books the charge as shown
	Adding   *Adding        // the open measure
	Due      *forecast.Due  // without one the digits count up from the last charge
	Warnings []rule.Warning // those that stand, gravest first
	Log      []LogLine      // newest first
}

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
