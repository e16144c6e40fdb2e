// Package cell is the grid of character cells that every screen is painted on,
// and its encoding for the terminal in one pass.
//
// A painter is given a Grid, a window on shared cells with coordinates of its
// own, and cannot write outside it. Styles name inks, not colours: the Palette
// turns them into the terminal's codes at the end.
package cell
