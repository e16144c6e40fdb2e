// Package paint turns values into pictures on a grid of cells: the big digits,
// the shaft, a line for each figure, the strip of the day, and Fire, which
// lays them out.
//
// Painters are given values, a theme and the grid that is theirs; they know no
// key, no file and no clock. Fire is read at a glance from some metres away,
// so the order of size is the order of importance: when to charge, what to
// charge, is anything wrong, and then a line for each figure, always at the
// same place.
package paint
