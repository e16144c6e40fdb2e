// Package calibrate is the room for learning from the own last smelts: the
// named numbers of the shaft solver and the yield, fitted on at least three
// blooms. A smelt carries the numbers it ran with in its light
// (entry.Light.Calibration).
package calibrate
