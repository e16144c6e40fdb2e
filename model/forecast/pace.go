package forecast

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/stat"

	"chargehand/physics"
)

// The shape of the rule: chosen, not fitted.
const (
	// settled is on how many intervals the level stands alone; fewer are mixed
	// with the prior, which is worth priorWorth of an interval (half to one did
	// equally well on published logs).
	settled    = 3
	priorWorth = 0.5
	// scatterWorth is how many intervals the usual scatter is worth against
	// this smelt's own (2, 4 and 8 did alike on steady smelts, 2 best on
	// unsteady ones).
	scatterWorth = 2
	// clearlyOut is how many times as far off as the edge of its band an
	// interval must lie to bear out that a change of air made a new level. Two
	// intervals of the published logs do: by 2.7 times after the air was set by
	// ear (log 02), by 2.2 when a blower took over from people on bellows (log
	// 09). Of the other 82, without a change of air, one does. Two cases prove
	// no figure; this one keeps chance from making a new level every time that
	// somebody sets the blast.
	clearlyOut = 2
)

// unevenPower is with what power of how unevenly this smelt goes, over what is
// usual, its band is wider still: where everything strays, the level strays too.
// Fitted here, on made-up furnaces 1001 to 1060 of both truths with half, all and
// double of their noise, so that the band holds about eight in ten of each; the
// published logs alone would have none of it (interval score of each by the
// figures of the others 0.779 without, 0.784 with it).
const unevenPower = 0.25

// Missed is after how many usual intervals without a charge an entry was
// probably missed. An interval counts for no more than that.
const Missed = 2.5

// pace is what the intervals of a smelt so far say of the next.
type pace struct {
	fitted  fitted
	prior   float64   // min: the usual interval of any smelt, or the level that a change of air ended
	own     []float64 // min, since the level began, stops left out
	ordered []float64 // the same by length
	renewed bool      // the level began with a change of air

	off     float64 // sum of the squares of how far intervals lay off their forecasts so far
	offs    int
	seen    int
	stopped int
}

func newPace(f fitted) *pace { return &pace{fitted: f, prior: f.Prior} }

// level is the forecast in minutes: halfway between the mean of the last two
// and the median of all, which follows a drift and forgives a slip.
func (p *pace) level() float64 {
	n := len(p.own)
	if n == 0 {
		return p.prior
	}
	level := (stat.Mean(p.own[max(n-2, 0):], nil) + median(p.ordered)) / 2
	if n >= settled {
		return level
	}
	return (priorWorth*p.prior + float64(n)*level) / (priorWorth + float64(n))
}

// scatter is how far from the forecast the next interval may be expected, as a
// mean of |offBy|: the usual one for so many intervals, and this smelt's own. Its
// own goes by the root of the mean square, since one interval far out says more
// of the ends of a band than many that are nearly right; a level of few
// intervals is known no better for those of the level before; and what is known
// from few is less sure.
func (p *pace) scatter() float64 {
	usual := p.fitted.Scatter[min(len(p.own), settled)]
	n := scatterWorth + float64(p.offs)
	s := math.Sqrt((scatterWorth*usual*usual + meanOfSD*meanOfSD*p.off) / n)
	if len(p.own) < settled {
		s = max(s, usual)
	}
	if all := p.fitted.Scatter[settled]; s > all {
		s *= math.Pow(s/all, unevenPower)
	}
	return s * (1 + student/n)
}

// meanOfSD is the mean of |z| for a normal z. student is by how much, over the
// number that a scatter is known from, the ends of a band lie further out: a
// quarter of z*z+1 of the normal percentile, which makes it that of Student's t
// to the first order.
const (
	meanOfSD = 0.7979 // the root of two over pi
	student  = (physics.Z90*physics.Z90 + 1) / 4
)

// next is the band of the next interval in minutes, three that of the next
// three together.
func (p *pace) next() physics.Band { return p.fitted.Next.around(p.level(), p.scatter()) }

func (p *pace) three() physics.Band { return p.fitted.Three.around(3*p.level(), p.scatter()) }

func (t tails) around(middle, scatter float64) physics.Band {
	return physics.Band{
		P10: middle * times(t.Low*scatter), P50: middle, P90: middle * times(t.High*scatter),
	}
}

// offBy is how far an interval lies from its forecast: three times by what the cube
// root of one over the other differs from 1, which for a few per cent is the share.
// The cube root makes waiting times, which have a long tail to the late side alone,
// about normal (Wilson and Hilferty 1931, of chi-squared; from memory). By the
// logarithm a short interval counts for more than a long one as far off in minutes.
func offBy(minutes, forecast float64) float64 { return 3 * (math.Cbrt(minutes/forecast) - 1) }

// times is the interval over its forecast that lies off by so much. Off by less
// than minus three is none: no interval is quite without length.
func times(off float64) float64 {
	root := max(leastRoot, 1+off/3)
	return root * root * root
}

// leastRoot is that of a hundredth.
const leastRoot = 0.2154

// take learns from an interval that has ended.
func (p *pace) take(i interval) {
	if i.Filled { // how long a fill took to reach the mark says nothing of a charge
		return
	}
	p.seen++
	if i.Stopped {
		p.stopped++
		if 2*p.stopped <= p.seen { // where most intervals have a stop, stops are the habit
			return
		}
	}
	minutes := i.Minutes
	if len(p.own) >= settled {
		minutes = min(minutes, Missed*median(p.ordered))
	}
	renews := i.NewAir && len(p.own) >= settled && p.clearlyOut(minutes)
	switch {
	case renews: // how far off that was tells of the air, not of the scatter
		p.prior, p.own, p.ordered, p.renewed = p.level(), nil, nil, true
	case p.seen >= settled: // the first two forecasts were mostly the prior's
		far := offBy(minutes, p.level())
		p.off += far * far
		p.offs++
	}
	p.own = append(p.own, minutes)
	at, _ := slices.BinarySearch(p.ordered, minutes)
	p.ordered = slices.Insert(p.ordered, at, minutes)
}

func (p *pace) clearlyOut(minutes float64) bool {
	edge := p.fitted.Next.High
	off := offBy(minutes, p.level())
	if off < 0 {
		edge = p.fitted.Next.Low
	}
	return off/(edge*p.scatter()) > clearlyOut
}

// paceOf is the pace after some intervals.
func paceOf(f fitted, is []interval) *pace {
	p := newPace(f)
	for _, i := range is {
		p.take(i)
	}
	return p
}

// median of values in order, at least one.
func median(v []float64) float64 { return (v[(len(v)-1)/2] + v[len(v)/2]) / 2 }
