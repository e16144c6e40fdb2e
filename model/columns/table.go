package columns

// Table is what was read of a log of others.
type Table struct {
	Shown    []Row // the first rows, for a look before anything is kept
	Rows     int
	Totals   []Total
	Left     []string // columns of theirs that nothing was read from
	Timeless []int    // lines without a time, kept as remarks of the smelt
	Blanks   int      // of ore or charcoal in charges, taken as not recorded
	Words    []string // words of what was done that are none of ours, kept in the note
}

// Row is a row as it stood and as it is read.
type Row struct {
	Line   int
	Theirs []Cell // in order of their columns
	Ours   []Cell // by the names of our table; blank ones left out
}

// Cell is what stands in a column.
type Cell struct{ Column, Text string }

// Total is what was read from a column of numbers.
type Total struct {
	Theirs, Ours, Unit string
	N                  int
	Sum, Middle        float64 // in our unit
	Our                string  // that unit
	Doubt              string  // the unit in which the middle would be usual, where it is not in its own
	Beyond             bool    // the middle is unusual
}
