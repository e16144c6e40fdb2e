// Package figure turns the state of a smelt into a Reading: every figure with
// its 10th, 50th and 90th percentile, its unit and what it rests on.
//
// Table is the one list of the figures. Each is computed in the file that
// bears its name: ratio, burn, stack, air, zone.
package figure
