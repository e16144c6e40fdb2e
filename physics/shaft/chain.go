package shaft

import "math"

// The gas goes through a layer in a second or two, meeting oxygen that burns, carbon dioxide that turns to CO on charcoal and
// oxides that give up oxygen, all at once. With the layer's temperature held these are linear in the amounts of oxygen and of
// the oxidised partner (CO2 beside CO, H2O beside H2), so they are solved exactly along the layer. Solving them one after the
// other instead, each to the end of the layer, makes the order of events depend on how thick a layer is: that is what moves a
// shaft by tens of degrees when its layers are halved.

// meanDecay gives (1 - exp(-x))/x, and exp(-x).
func meanDecay(x float64) (mean, left float64) {
	if x < 0.02 { // the series to 3e-9, cheaper than the exponential and better than it for small x
		mean = 1 - x*0.5*(1-x*(1.0/3)*(1-x*0.25))
		return mean, 1 - x*mean
	}
	left = decay(x)
	return (1 - left) / x, left
}

// decay gives exp(-x) for x from 0 up, to 1e-11 of itself, at a third of the cost of math.Exp: a step takes seven of them for
// each layer. Whole part and 64ths of x are looked up, the rest is a series.
func decay(x float64) float64 {
	if !(x > 0) {
		return 1
	}
	if x >= decayEnd {
		return 0
	}
	whole := int(x)
	rest := x - float64(whole)
	part := int(rest * decayParts)
	rest -= float64(part) * (1.0 / decayParts)
	return decayWhole[whole] * decayPart[part] * (1 - rest*(1-rest*0.5*(1-rest*(1.0/3)*(1-rest*0.25)))) // a division costs more than all of these
}

const (
	decayEnd   = 44 // exp(-44) is beyond the last digit of a float64
	decayParts = 64
)

var decayWhole, decayPart = decayTables()

func decayTables() (whole [decayEnd]float64, part [decayParts]float64) {
	for i := range whole {
		whole[i] = math.Exp(-float64(i))
	}
	for i := range part {
		part[i] = math.Exp(-float64(i) / decayParts)
	}
	return whole, part
}

// oxygenPath is oxygen along a layer: in mol/s at the underside, fed evenly along the way, burned at a rate (per layer).
type oxygenPath struct {
	rate, steady, excess float64 // n(x) = steady + excess exp(-rate x)
	burned               float64 // mol/s over the layer
	decay                float64 // exp(-rate)
}

func burnOxygen(in, fed, rate float64) oxygenPath {
	if rate < 1e-9 {
		return oxygenPath{decay: 1}
	}
	mean, left := meanDecay(rate)
	steady := fed / rate
	return oxygenPath{rate: rate, steady: steady, excess: in - steady, decay: left,
		burned: max(0, in+fed-in*left-fed*mean)}
}

// oxidisedPath solves dn/dx = pull - rate n + made(x) for the oxidised partner along a layer: in at the underside, `made` in
// all, spread as the oxygen burns. It gives the mean of n along the layer; what each reaction did follows from that.
func (o oxygenPath) oxidisedPath(in, made, rate, pull float64) (mean float64) {
	if rate < 1e-9 {
		return in + (made+pull)/2
	}
	spread, left := meanDecay(rate)
	reached := 0.0 // of what burning makes, what is still there at the top
	if o.burned > 0 {
		gap := rate - o.rate
		lag := left
		if math.Abs(gap) > 1e-4 {
			lag = (o.decay - left) / gap
		}
		reached = made * o.rate / o.burned * (o.steady*spread + o.excess*lag)
	}
	out := in*left + pull*spread + reached
	return (in - out + made + pull) / rate
}
