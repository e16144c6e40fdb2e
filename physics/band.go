package physics

import "math"

// Z90 is the 90th percentile of the standard normal distribution; the 10th is -Z90 (any table of the normal quantile).
const Z90 = 1.2815515655446004

// Band is a figure with its 10th, 50th and 90th percentile, all in the figure's own unit.
//
// Spreads are carried in one of two shapes. What can be negative (a height above the tuyere, a difference) is taken as
// normal; what is a product of positive things (a mass, a rate, a ratio) as lognormal, whose relative variance, the variance
// of its logarithm, simply adds up in products and quotients. The arithmetic here takes its two sides as independent. Where
// they share a part, as two masses from one bucket do, the caller splits the shared part off first, combines the rest and
// multiplies the shared part in once, or adds up [Band.RelVariance] by hand.
//
// The zero Band is the answer to nonsense: a middle that is not a finite number, or one that is not positive where a lognormal
// is asked for. A spread that is negative or not a number counts as none.
type Band struct {
	P10, P50, P90 float64
}

// Exact is a figure without spread.
func Exact(v float64) Band { return ordered(v, v, v) }

// Normal is a normal figure of a mean and a standard deviation in the same unit. It may reach below zero: see [Band.AtLeast].
func Normal(mean, sd float64) Band {
	d := Z90 * spread(sd)
	return ordered(mean-d, mean, mean+d)
}

// NormalWithin is a normal figure that is known to lie between low and high, as a share of a whole does: the part of it that lies
// there, made a whole (the truncated normal distribution). The mean is that of the normal and lies between the two itself; what
// has its mean elsewhere, or no spread, is held to them.
func NormalWithin(mean, sd, low, high float64) Band {
	sd = spread(sd)
	if !(sd > 0) || !(low < high) || !(mean >= low && mean <= high) {
		v := math.Max(low, math.Min(high, mean))
		return ordered(v, v, v)
	}
	below := func(x float64) float64 { return math.Erfc((mean-x)/(sd*math.Sqrt2)) / 2 }
	a, b := below(low), below(high)
	at := func(share float64) float64 {
		return math.Max(low, math.Min(high, mean+sd*math.Sqrt2*math.Erfinv(2*(a+share*(b-a))-1)))
	}
	return ordered(at(0.1), at(0.5), at(0.9))
}

// LogNormal is a positive figure of a median and a relative standard deviation: that of its logarithm, which for 0.2 and
// below differs from sd/mean by less than 2 % of itself.
func LogNormal(median, relSD float64) Band {
	if !(median > 0) {
		return Band{}
	}
	f := math.Exp(Z90 * spread(relSD))
	return ordered(median/f, median, median*f)
}

// IsZero says whether the band is the answer to nonsense. An exact nought looks the same; whoever means it knows.
func (b Band) IsZero() bool { return b == Band{} }

// SD gives the standard deviation of the normal with the same 10th and 90th percentile.
func (b Band) SD() float64 { return (b.P90 - b.P10) / (2 * Z90) }

// RelSD gives the standard deviation of the logarithm: from both sides of the band, or from the upper side alone when the
// lower one reaches zero, so that a wide band never passes for a sharp one. A band whose median is not positive has none.
func (b Band) RelSD() float64 {
	switch {
	case b.P10 > 0:
		return math.Log(b.P90/b.P10) / (2 * Z90)
	case b.P50 > 0:
		return math.Log(b.P90/b.P50) / Z90
	}
	return 0
}

// RelVariance is the square of [Band.RelSD]: what adds up in products and quotients.
func (b Band) RelVariance() float64 { r := b.RelSD(); return r * r }

// Scale multiplies by an exact number; a negative one turns the band over.
func (b Band) Scale(k float64) Band {
	if k < 0 {
		b.P10, b.P90 = b.P90, b.P10
	}
	return ordered(k*b.P10, k*b.P50, k*b.P90)
}

// AtLeast lifts every percentile to a floor that the figure cannot go below.
func (b Band) AtLeast(low float64) Band {
	return ordered(math.Max(b.P10, low), math.Max(b.P50, low), math.Max(b.P90, low))
}

// Times multiplies two independent positive figures.
func (b Band) Times(c Band) Band {
	return LogNormal(b.P50*c.P50, math.Sqrt(b.RelVariance()+c.RelVariance()))
}

// Over divides two independent positive figures; the zero Band when the divisor is not positive.
func (b Band) Over(c Band) Band {
	if !(c.P50 > 0) {
		return Band{}
	}
	return LogNormal(b.P50/c.P50, math.Sqrt(b.RelVariance()+c.RelVariance()))
}

// Plus adds two independent figures, as normals about their medians.
func (b Band) Plus(c Band) Band { return Normal(b.P50+c.P50, math.Hypot(b.SD(), c.SD())) }

// Minus subtracts two independent figures, as normals about their medians.
func (b Band) Minus(c Band) Band { return Normal(b.P50-c.P50, math.Hypot(b.SD(), c.SD())) }

// spread turns a spread that is none into zero.
func spread(s float64) float64 {
	if s > 0 {
		return s
	}
	return 0
}

// ordered makes a band of percentiles that are all finite, else the zero Band.
func ordered(p10, p50, p90 float64) Band {
	if !allFinite(p10, p50, p90) {
		return Band{}
	}
	return Band{P10: p10, P50: p50, P90: p90}
}
