package shaft

import (
	"math"
	"slices"

	"chargehand/physics"
)

// ChargeInterval is the time between two charges as measured and as the shaft makes it at an air factor, s.
type ChargeInterval struct {
	Measured, Modelled, AtFactor float64
}

// Factor is the air factor that the interval speaks of. A modelled interval goes as one over the factor.
func (i ChargeInterval) Factor() float64 { return i.Modelled / i.Measured * i.AtFactor }

// AirFactorPrior is what is known before the first interval: published smelts gave 0.66 to 1.20
// (TestFitParameters).
func AirFactorPrior() physics.Band {
	return physics.LogNormal(DefaultParams().AirFactor, math.Log(1.20/0.66)/(2*physics.Z90))
}

// EstimateAirFactor gives the air factor and its band from a prior and intervals of the smelt. A modelled interval goes as one
// over the factor, so each interval says factor = modelled/measured x its own factor; what it says scatters by how a charge
// is laid and noted (a tenth, as the intervals of the logs do), and all share the doubt of the carbon in a measure, which no
// number of intervals removes: it cannot be told from the air without a reading of the top gas.
func EstimateAirFactor(prior physics.Band, intervals []ChargeInterval) physics.Band {
	const scatter, shared = 0.10, 0.08 // of the logarithm; the second from 10-15 % between buckets of charcoal (Markewitz 2013, warehamforgeblog.blogspot.com/2013/01)
	if prior.P50 <= 0 {
		return physics.Band{}
	}
	var says []float64
	for _, i := range intervals {
		if i.Measured > 0 && i.Modelled > 0 && i.AtFactor > 0 {
			says = append(says, i.Factor())
		}
	}
	if len(says) == 0 {
		return prior
	}
	own := scatter*scatter/float64(len(says)) + shared*shared
	known := prior.RelVariance()
	if known == 0 {
		return prior
	}
	weight := known / (known + own)
	return physics.LogNormal(prior.P50*math.Exp(weight*(math.Log(MedianFactor(says))-math.Log(prior.P50))), math.Sqrt(known*own/(known+own)))
}

// MedianFactor gives the middle of some factors, so that a charge left out or written down twice moves little: of an even
// number the geometric mean of the two in the middle. One or two say little by themselves: each is then held to what meters of
// this trade have been found to say, a factor of two past the ends of [ParamTable]'s air factor.
func MedianFactor(says []float64) float64 {
	sorted := slices.Clone(says)
	if len(sorted) < 3 {
		for i, v := range sorted {
			sorted[i] = max(0.2, min(2, v))
		}
	}
	slices.Sort(sorted)
	n := len(sorted)
	return math.Sqrt(sorted[(n-1)/2] * sorted[n/2])
}
