package fold

import (
	"math"

	"chargehand/physics"
)

// strays is how unevenly a smelt goes, by what it has shown of that itself: how far each interval lies off those before it, and
// each dip off where the burden was believed. A crew that charges by a steady eye and a fire that burns evenly are known better
// than others, and a day on which nothing keeps step is known worse.
type strays struct {
	sum    float64 // of mean deviations, each as many as it weighs
	weight float64
}

// Fitted here, on made-up furnaces 1001 to 1008 of both truths with half, all and double of their noise, so that the band of the
// level holds about eight in ten of each (TestBandsKnowHowUnevenASmeltIs in model/rehearse looks at others).
const (
	// usualStray is the mean of |ln| of a pace over that of the two intervals before it with all of the noise. The published logs of
	// testdata have 0.20: 0.10 to 0.22 where a crew charged by the clock of the fire, 0.5 and more on two rough days.
	usualStray = 0.25
	// strayWorth is how many intervals that is worth beside this smelt's own, and dipWorth how many a dip is.
	strayWorth, dipWorth = 4.0, 2.0
	// strayMost is the most that counts of one interval.
	strayMost = 0.6
	// strayPower is with what power the doubt of the level goes by them: part of what they stray is there on the most even day.
	strayPower = 1.5
)

// interval takes the pace of an interval and that of those before it; zeros tell nothing. One that was slowed by something tells of
// that: were it taken for unevenness, a burden that hangs would be looked for less where one hung before.
func (y *strays) interval(last, earlier float64) {
	if last > 0 && earlier > 0 && earlier <= slowed*last {
		y.sum += min(strayMost, math.Abs(math.Log(last/earlier)))
		y.weight++
	}
}

// dip takes a height at which the burden was found, and where it was believed. What lies outside of 99 in 100 is a burden that
// hung or fell, and tells of that.
func (y *strays) dip(believed physics.Level, height float64) {
	off := math.Abs(height-believed.Height) / math.Hypot(believed.SD(), physics.DipSD)
	if off > hung {
		return
	}
	y.sum += dipWorth * y.stray() * off / meanOff
	y.weight += dipWorth
}

// hung is how many standard deviations that is, and meanOff the mean of |z| for a normal z: the root of two over pi.
const hung, meanOff = 2.576, 0.798

// stray is the mean deviation of the intervals of this smelt.
func (y strays) stray() float64 {
	return (strayWorth*usualStray + y.sum) / (strayWorth + y.weight)
}

// eye is by how many times a look at the mark is in more doubt than usual, and pace the same of the pace: the next interval may
// be slowed by something on the most even day, so that one is in no less.
func (y strays) eye() float64  { return max(eyeLeast, y.wider()) }
func (y strays) pace() float64 { return max(1, y.wider()) }

func (y strays) wider() float64 { return math.Pow(y.stray()/usualStray, strayPower) }

// eyeLeast is the least of it: two lumps either way become one (assumed).
const eyeLeast = 0.6
