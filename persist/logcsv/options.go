package logcsv

import (
	"time"

	"chargehand/model/entry"
)

// Screen is where the entries of a log that was read say they were keyed.
const Screen = "import"

// Options give what a log lacks.
type Options struct {
	Name     string         // the file's name, for errors
	Date     time.Time      // the day of the first row, where the first row has no date; zero is unknown
	Location *time.Location // the place of the clock; nil is UTC. Its offset at the first row is that of the whole smelt
	Furnace  entry.Furnace
	// Measures are named, and weighed, for the whole smelt. Where What is
	// empty, "scoop" is of ore and any other of charcoal. The first of each
	// material is the one that the columns count.
	Measures []entry.Measure
	UID      string
	Stream   string
	Imported time.Time // when the entries are kept; zero leaves it out
}
