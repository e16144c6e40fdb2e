package forecast

import (
	"math"

	"gonum.org/v1/gonum/stat"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/physics"
)

// Log is a smelt that is over, with the name to score it under. The state is
// that of its end, so that every strike and amendment holds; each forecast is
// then made from what had happened by its charge alone.
type Log struct {
	Name  string
	State fold.State
	Aside string // why it counts for nothing, as that it was invented: then it is not in the pool
}

// Report is the score of some smelts, each by itself and all their intervals
// together.
type Report struct {
	Logs   []Scored `json:"logs"`
	Pooled Scores   `json:"pooled"`
}

// Scored is the score of one smelt.
type Scored struct {
	Log   string `json:"log"`
	Aside string `json:"counts_for_nothing,omitempty"`
	Scores
}

// Scores say how good the forecasts were, each made just after a charge for the
// interval that it begins. Scored are the intervals from the fourth on, averaged
// interval by interval, also in the pool. Fractions are of the mean of all
// intervals of the same smelt, the first three included; a score of no
// intervals is not known and null on the wire.
//
// Mean3 is the reference that a forecast has to beat: the mean of the last
// three intervals as they stand, with one fixed band.
type Scores struct {
	Intervals int `json:"intervals"` // how many are scored

	Error            Average `json:"error"`              // mean of |median forecast - actual|, as a fraction
	ErrorCapped      Average `json:"error_capped"`       // the same, each counted as half the mean interval at most, so that one unforeseeable stop decides nothing
	Mean3Error       Average `json:"mean3_error"`        // as Error, of the reference
	Mean3ErrorCapped Average `json:"mean3_error_capped"` // as ErrorCapped, of the reference

	Coverage           Average `json:"coverage"`             // share of the intervals within the 10th to 90th percentile rounded outwards to whole minutes, both ends included
	IntervalScore      Average `json:"interval_score"`       // mean of width + 10 x how far outside, of the unrounded band, as a fraction (Gneiting and Raftery 2007, for 80 %)
	Mean3IntervalScore Average `json:"mean3_interval_score"` // the same, of the reference

	Minutes      Average `json:"minutes"`       // mean of |median forecast - actual|, min
	Mean3Minutes Average `json:"mean3_minutes"` // the same, of the reference

	// The next three together: scored are the intervals that two more follow;
	// fractions are of three mean intervals.
	Threes          int     `json:"threes"`
	ThreeError      Average `json:"three_error"`
	Mean3ThreeError Average `json:"mean3_three_error"`
	ThreeCoverage   Average `json:"three_coverage"` // rounded outwards as Coverage
}

// Average is one score, unknown where there was nothing to score.
type Average = entry.Maybe[float64]

const (
	// scoredFrom is the first interval that is scored, from 0.
	scoredFrom = 3
	// errorCap is the most that one interval counts for in a capped error.
	errorCap = 0.5
	// missWeight is 2/alpha of the interval score of a band of 1 - alpha = 80 %.
	missWeight = 10
)

// Score says how well the forecasts would have done on some smelts.
func Score(logs []Log) Report { return score(logs, func(int) fitted { return shared }) }

// score scores each log with its own figures.
func score(logs []Log, by func(log int) fitted) Report {
	r := Report{Logs: []Scored{}}
	var all []trial
	for i, l := range logs {
		ts := trials(by(i), intervals(&l.State))
		r.Logs = append(r.Logs, Scored{l.Name, l.Aside, sumUp(ts)})
		if l.Aside == "" {
			all = append(all, ts...)
		}
	}
	r.Pooled = sumUp(all)
	return r
}

// trial is one forecast beside what came, in minutes.
type trial struct {
	mean   float64 // interval of the smelt
	actual float64
	next   physics.Band
	mean3  physics.Band

	hasThree  bool
	actual3   float64
	three     physics.Band
	mean3Of3s float64
}

// trials are the scored forecasts of one smelt.
func trials(f fitted, is []interval) []trial {
	minutes := make([]float64, len(is))
	for i := range is {
		minutes[i] = is[i].Minutes
	}
	var ts []trial
	p := newPace(f)
	for i := range is {
		if i >= scoredFrom {
			before := stat.Mean(minutes[i-3:i], nil)
			t := trial{
				mean: stat.Mean(minutes, nil), actual: minutes[i],
				next: p.next(), mean3: f.Mean3.around(before, 1),
			}
			if i+3 <= len(is) {
				t.hasThree, t.three, t.mean3Of3s = true, p.three(), 3*before
				t.actual3 = minutes[i] + minutes[i+1] + minutes[i+2]
			}
			ts = append(ts, t)
		}
		p.take(is[i])
	}
	return ts
}

// sumUp averages over trials.
func sumUp(ts []trial) Scores {
	var threes []trial
	for _, t := range ts {
		if t.hasThree {
			threes = append(threes, t)
		}
	}
	relative := func(t trial) float64 { return miss(t.next, t.actual) / t.mean }
	relativeMean3 := func(t trial) float64 { return miss(t.mean3, t.actual) / t.mean }
	return Scores{
		Intervals:          len(ts),
		Error:              average(ts, relative),
		ErrorCapped:        average(ts, func(t trial) float64 { return min(relative(t), errorCap) }),
		Mean3Error:         average(ts, relativeMean3),
		Mean3ErrorCapped:   average(ts, func(t trial) float64 { return min(relativeMean3(t), errorCap) }),
		Coverage:           average(ts, func(t trial) float64 { return covers(t.next, t.actual) }),
		IntervalScore:      average(ts, func(t trial) float64 { return intervalScore(t.next, t.actual) / t.mean }),
		Mean3IntervalScore: average(ts, func(t trial) float64 { return intervalScore(t.mean3, t.actual) / t.mean }),
		Minutes:            average(ts, func(t trial) float64 { return miss(t.next, t.actual) }),
		Mean3Minutes:       average(ts, func(t trial) float64 { return miss(t.mean3, t.actual) }),
		Threes:             len(threes),
		ThreeError:         average(threes, func(t trial) float64 { return miss(t.three, t.actual3) / (3 * t.mean) }),
		Mean3ThreeError:    average(threes, func(t trial) float64 { return math.Abs(t.mean3Of3s-t.actual3) / (3 * t.mean) }),
		ThreeCoverage:      average(threes, func(t trial) float64 { return covers(t.three, t.actual3) }),
	}
}

func average(ts []trial, of func(trial) float64) Average {
	if len(ts) == 0 {
		return Average{}
	}
	var sum float64
	for _, t := range ts {
		sum += of(t)
	}
	return entry.Some(sum / float64(len(ts)))
}

func miss(b physics.Band, actual float64) float64 { return math.Abs(b.P50 - actual) }

func covers(b physics.Band, actual float64) float64 {
	if low, high := outwards(b.P10, b.P90); low <= actual && actual <= high {
		return 1
	}
	return 0
}

func intervalScore(b physics.Band, actual float64) float64 {
	return b.P90 - b.P10 + missWeight*max(0, b.P10-actual, actual-b.P90)
}
