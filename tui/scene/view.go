package scene

import (
	"time"

	"chargehand/model/forecast"
	"chargehand/model/rule"
	"chargehand/tui/draw"
)

// View is what is shown of a smelt besides its reading.
type View struct {
	Now       time.Time         // wall clock to show, in the smelt's own offset
	Title     string            // the smelt
	Fire      string            // what it is called, where two burn
	Kept      int               // entries that are safe
	Keeping   int               // handed over and not acknowledged, with nothing wrong
	NoBook    bool              // the smelt is in no book
	NotKept   int               // entries that are NOT safe
	Trouble   string            // why they are not, and what to do
	Chemistry bool              // the zones of the shaft as chemistry, else in plain words
	Lost      string            // says which of its entries are lost
	Past      string            // says that this is not now, when it is not
	Tag       string            // says that it counts for nothing: practice, invented
	Asked     string            // what is asked just now, for the far view
	Gone      bool              // it is a moment of the past: nothing in it is of now
	NextKey   string            // the key that books the charge as shown
	Adding    *draw.Adding      // the open measure
	Due       *forecast.Due     // without one the digits count up from the last charge
	Warnings  []rule.Warning    // those that stand, gravest first
	Log       []draw.LogLine    // newest first
	Ahead     []draw.Ahead      // the next charges, where there is room for them
	Plan      bool              // a plan is behind those
	Left      []draw.Left       // what is left of what was weighed
	Ending    draw.Ending       // what the end of a burn-down is judged by, while it burns down
	Result    *draw.Came        // what came of a smelt that is over
	Caution   *draw.CautionText // shown over the shaft, or below the charge in the far view; see CautionShows
}
