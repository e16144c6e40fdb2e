package learn

import "chargehand/physics"

// TrialsWith is Trials with another weight of the prior.
var TrialsWith = trials

// ForecastWith is the middle of the forecast about another prior middle and with another
// weight of it.
func ForecastWith(middle, weight float64, own []float64) float64 {
	return forecast(physics.Normal(middle, 1), weight, own).P50
}

// IntervalScore is the score of a band at what came.
func IntervalScore(low, high, came float64) float64 {
	return intervalScore(physics.Band{P10: low, P50: (low + high) / 2, P90: high}, came)
}
