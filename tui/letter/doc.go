// Package letter is the program's own type, for what is read from some metres
// away: a face of points, drawn in halves of a cell, and digits of any size.
//
// A point of the face is seven high. Strokes down are two points wide and
// strokes across one high, since half a cell is about as wide as high: so the
// gaps of two points stay open in smoke and from afar. Where a terminal has no
// blocks, digits are drawn in whole cells, and the halves of letters in the signs that
// stand high or low in their cell.
package letter
