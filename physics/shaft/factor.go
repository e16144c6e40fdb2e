package shaft

import (
	"math"

	"chargehand/physics"
)

// ChargeInterval is the time between two charges as measured and as the shaft makes it at an air factor, s.
type ChargeInterval struct {
	Measured, Modelled, AtFactor float64
}

// AirFactorPrior is what is known before the first interval: published smelts gave 0.66 to 1.15 (calibration study).
func AirFactorPrior() physics.Band {
	return physics.LogNormal(DefaultParams().AirFactor, math.Log(1.15/0.66)/(2*physics.Z90))
}

// EstimateAirFactor gives the air factor and its band from a prior and intervals of the smelt. A modelled interval goes as one
// over the factor, so each interval says factor = modelled/measured x its own factor; what it says scatters by how a charge
// is laid and noted (a tenth, as the intervals of the logs do), and all share the doubt of the carbon in a measure, which no
// number of intervals removes: it cannot be told from the air without a reading of the top gas.
func EstimateAirFactor(prior physics.Band, intervals []ChargeInterval) physics.Band {
	const scatter, shared = 0.10, 0.08 // of the logarithm; the second from 10-15 % between buckets of charcoal (rules of the trade)
	if prior.P50 <= 0 {
		return physics.Band{}
	}
	sum, n := 0.0, 0.0
	for _, i := range intervals {
		if i.Measured > 0 && i.Modelled > 0 && i.AtFactor > 0 {
			sum += math.Log(i.Modelled / i.Measured * i.AtFactor)
			n++
		}
	}
	if n == 0 {
		return prior
	}
	own := scatter*scatter/n + shared*shared
	known := prior.RelVariance()
	if known == 0 {
		return prior
	}
	weight := known / (known + own)
	return physics.LogNormal(prior.P50*math.Exp(weight*(sum/n-math.Log(prior.P50))), math.Sqrt(known*own/(known+own)))
}
