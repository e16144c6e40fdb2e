// Package entry holds what is written down at a furnace: entries, the events
// they carry, the parts of a charge, and the units of both on the wire.
//
// An entry is one line of the journal. It is a value: nothing in this package
// reads a clock, a file or a setting, and nothing here decides what an entry
// means for the smelt; package fold does that.
//
// What holds for all events of a kind stands in one table (kind.go): where it is
// at home and keyed, whether it is an act, what it disturbs and moves, how much of
// it can be amended, what it becomes in the log as CSV. Bounds stand there too;
// Check asks them of what is keyed or taken from a log, never of what is read.
//
// The wire form is one line of JSON (see Encode and Decode), versioned, with
// the unit in the name of every quantity, so that a smelt can be read in fifty
// years without this program. Kinds from a newer version are kept raw.
package entry
