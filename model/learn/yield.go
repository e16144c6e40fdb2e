package learn

import (
	"math"

	"chargehand/physics"
)

// PriorYield is the yield of a smelt of which nothing is known but its ore, in kg
// of bloom per kg of ore dry: middle and 10th and 90th percentile of published
// smelts that gave a bloom (testdata/smelts; the middle is also what 95 smelts of
// one team gave, 475 kg of bloom from 2500 kg of ore, darkcompanyca.blogspot.com,
// 2024).
var PriorYield = physics.Band{P10: 0.08, P50: 0.20, P90: 0.40}

// CompactedShare is what is left of a bloom when it has been compacted, as a
// share of the bloom cold and not yet compacted: least, middle and most of the
// published ones. A compacted bloom is no yield in the sense of this package.
var CompactedShare = physics.Band{P10: 0.63, P50: 0.67, P90: 0.71}

// PriorWeight is how many own smelts the prior middle counts for. It was chosen
// among 0.5, 1, 2, 4 and 8 by the interval score over the published tables and
// then left alone. "go test ./model/learn -run Weight -v" prints (score and
// share of the fixed band's; smelts.csv from 9 kg of ore on, 21 blooms, and
// series.csv, 16):
//
//	weight  smelts.csv     series.csv     both
//	0.5     0.409 (1.026)  0.431 (0.906)  0.419 (0.969)
//	1       0.399 (1.000)  0.434 (0.911)  0.414 (0.957)
//	2       0.402 (1.010)  0.441 (0.926)  0.419 (0.970)
//	4       0.404 (1.015)  0.460 (0.965)  0.428 (0.991)
//	8       0.405 (1.017)  0.481 (1.010)  0.438 (1.014)
const PriorWeight = 1

// spreadWeight is how many own smelts the prior spread counts for (assumed: the
// score hardly depends on it between 1 and 8).
const spreadWeight = 4

// Yield forecasts the yield of the next smelt that gives a bloom, from those of
// the crew's own earlier ones on the same mix that gave one: the prior middle
// and the own ones averaged, and a band for one more smelt about a mean that is
// itself uncertain. Without own smelts it is [PriorYield]. Yields must be
// positive and finite.
//
// With weight w and n own yields the middle is (w 0.20 + sum)/(w + n). The
// variance of one smelt about the mean of its mix, v, is the prior's and the own
// one weighed together, and the band that of a normal with variance
// v (1 + 1/(w + n)). The prior's v is such that the same sum without own smelts
// gives the prior band's spread; for a weight of 1 that is a standard deviation
// of 0.09, between the 0.065 published for one crew on one mix and the 0.116 for
// smelts at large.
func Yield(own []float64) physics.Band { return yield(PriorWeight, own) }

func yield(weight float64, own []float64) physics.Band { return forecast(PriorYield, weight, own) }

func forecast(published physics.Band, weight float64, own []float64) physics.Band {
	if len(own) == 0 {
		return published
	}
	n := float64(len(own))
	mean := weight * published.P50
	for _, y := range own {
		mean += y
	}
	mean /= weight + n
	prior := published.SD()
	squares := spreadWeight * prior * prior / (1 + 1/weight)
	for _, y := range own {
		squares += (y - mean) * (y - mean)
	}
	return physics.Normal(mean, math.Sqrt(squares/(spreadWeight+n)*(1+1/(weight+n)))).AtLeast(0)
}
