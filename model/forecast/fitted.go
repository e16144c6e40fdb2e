package forecast

// fitted are the figures that come out of published logs.
type fitted struct {
	// Prior is the usual interval before there is any, min.
	Prior float64
	// Scatter is how far an interval lies from its forecast, as the mean of
	// |offBy|, by how many intervals the level rests on: none,
	// one, two, three or more.
	Scatter [settled + 1]float64
	// Next and Three are between what offBy over the scatter lies
	// in eight of ten cases, for the next charge and for the next three together.
	Next, Three tails
	// Mean3 are those of offBy of an interval and the mean of the last three as they stand: the
	// fixed band that the reference of the hindcast has.
	Mean3 tails
}

// tails are a 10th and a 90th percentile.
type tails struct{ Low, High float64 }

// shared is fitted on the ten published logs of testdata/logs (sources in their
// heads; 113 intervals, 84 of them from the fourth on). Prior is the median over
// the smelts of their median interval. Scatter is the mean over the first
// intervals of all smelts, over the second, over the third, and over all later
// ones. The tails are over all from the fourth on, three together where two more
// follow. A test fits all of it anew and compares.
var shared = fitted{
	Prior:   13.25,
	Scatter: [settled + 1]float64{0.48, 0.365, 0.15, 0.16},
	Next:    tails{-1.60, 1.34},
	Three:   tails{-1.35, 1.09},
	Mean3:   tails{-0.329, 0.232},
}
