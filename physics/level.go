package physics

import "math"

// How good the usual looks at the burden are, as standard deviations in m.
const (
	// MarkSD is for "charged to the mark": the top is a heap of 15 to 50 mm lumps, higher in the middle, judged by eye through
	// heat and flame. Two lumps either way: common practice, not measured.
	MarkSD = 0.05

	// HeapedSD is for "heaped": above the mark by nobody knows how much. Guessed at twice [MarkSD].
	HeapedSD = 0.10

	// DipSD is for a rod held down to the burden and read at the rim: half a lump. Common practice, not measured.
	DipSD = 0.01
)

// What one poke does when nobody looked. In a published log of 30 Oct 2021 a bucket that fills 15 cm was taken 8 or 9 minutes
// early after a first probing and no earlier after a second: a drop of 10 cm, then none. A guess from two pokes.
const (
	PokeDrop   = 0.05 // m
	PokeDropSD = 0.05 // m
)

// Level is what is believed of the stack's height above the tuyere.
//
// It is a Kalman filter of one figure, with one thing more. The rate at which the burden sinks is not known exactly, and being
// wrong about it is not noise: the same error goes on from minute to minute, so between two looks the doubt grows in step
// with time, not with its root. That part of the doubt is therefore kept by itself, as a standard deviation that adds up
// (Drift, m), beside the variance of all that is independent (Noise, m2). A look shrinks both by the same gain and the rate
// itself is not corrected: a filter that considers an error without estimating it, after S. F. Schmidt 1966 (Advances in
// Control Systems 3:293). The estimate of the rate belongs to whoever knows the charges.
//
// Values in, values out. The height never goes below the tuyere. An argument that is not a finite number, or is negative where
// that means nothing, leaves the level as it was; so a level that began finite stays so.
type Level struct {
	Height float64 // m above the tuyere
	Noise  float64 // m2, variance of the independent part of the error
	Drift  float64 // m, standard deviation of the part carried by the error of the rate
}

// LevelAt is a height just looked at, in m with its standard deviation. Nonsense gives an empty shaft known to [MarkSD].
func LevelAt(height, sd float64) Level {
	return Level{Noise: MarkSD * MarkSD}.becomes(Level{Height: height, Noise: sd * sd}, sd >= 0)
}

// Variance gives the whole variance of the height in m2.
func (l Level) Variance() float64 { return l.Noise + l.Drift*l.Drift }

// SD gives the standard deviation of the height in m.
func (l Level) SD() float64 { return math.Sqrt(l.Variance()) }

// Band gives the height as percentiles, none below the tuyere.
func (l Level) Band() Band { return Normal(l.Height, l.SD()).AtLeast(0) }

// Descend lets the burden sink at a rate in m/s, known to a standard deviation of rateSD, for dt seconds. Many short steps
// leave the same doubt as one long one.
func (l Level) Descend(rate, rateSD, dt float64) Level {
	next := l
	next.Height -= rate * dt
	next.Drift += rateSD * dt
	return l.becomes(next, rate >= 0 && rateSD >= 0 && dt >= 0)
}

// Add lays a charge on top, in m of thickness with the standard deviation of this charge alone. An error that all charges
// share, as of the bulk density, cancels against the rate that was worked out from the same charges and does not belong here.
func (l Level) Add(thickness, sd float64) Level {
	next := l
	next.Height += thickness
	next.Noise += sd * sd
	return l.becomes(next, thickness >= 0 && sd >= 0)
}

// Poke drops the burden by about so many m without burning anything: voids close.
func (l Level) Poke(drop, sd float64) Level {
	next := l
	next.Height -= drop
	next.Noise += sd * sd
	return l.becomes(next, drop >= 0 && sd >= 0)
}

// Observe takes in a height somebody saw, in m with its standard deviation; one of zero is taken as the truth.
func (l Level) Observe(height, sd float64) Level {
	doubt, noise := l.Variance(), sd*sd
	gain := 1.0 // two certainties that differ: the later one holds
	if doubt+noise > 0 {
		gain = doubt / (doubt + noise)
	}
	next := Level{
		Height: l.Height + gain*(height-l.Height),
		Noise:  (1-gain)*(1-gain)*l.Noise + gain*gain*noise,
		Drift:  (1 - gain) * l.Drift,
	}
	return l.becomes(next, height >= 0 && sd >= 0)
}

// becomes gives the next level with its height kept at the tuyere or above, or the present one when the act was nonsense.
func (l Level) becomes(next Level, meant bool) Level {
	if !meant || !allFinite(next.Height, next.Variance()) {
		return l
	}
	next.Height = math.Max(0, next.Height)
	return next
}
