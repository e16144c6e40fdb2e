// Package compare holds smelts beside each other: what went in and what came out of two to
// four of them, what differed most, and what goes with a good yield over all smelts of a
// house. Differences are told in units of the spread of one's own smelts, and nothing is
// told of fewer than five: they cannot say what did it.
package compare
