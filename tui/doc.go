// Package tui is the screens. Keys become entries; a Reading becomes a picture.
// It touches no file, reads no clock and does no sums.
//
// The root (Model) is pure: Update takes a message and returns a new model, the
// entries to keep, in order, and a command. Program, in program.go, is the thin
// adapter that hands the entries to the book and lets the screen library drive
// it. Time comes in with every key (Pressed) and every second (Tick).
//
// The life of a key: Filter stamps it; the root's guard looks for a leaning
// glove; a dialog (a field, a list, a question), when one is open, else the
// active screen turns it into a step; the root makes entries of the step's
// acts, hands them out, and folds them into the reading at once, not yet kept.
// When the book acknowledges them (Kept) they are replaced by what was kept.
package tui
