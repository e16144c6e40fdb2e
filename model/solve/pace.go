package solve

import (
	"chargehand/physics"

	"chargehand/physics/shaft"
)

// pace learns from the charges how much of the blast burns. Each charge brings
// the burden back to where the one before it left it, so what it holds is what
// burned in between; the shaft burned something too, at the factor it had.
type pace struct {
	usual             float64 // before anything is learned
	factor            float64 // in force
	metered, unread   []shaft.ChargeInterval
	known             bool    // the blast is metered
	clean             bool    // nothing since the last charge spoils the interval
	since, burnedThen float64 // the last charge: when, s, and the carbon burned by then, kg
}

const (
	// fewest is how many intervals tell the air of a blast nobody metered.
	fewest = 3
	// unreadSpread is the prior's relative spread where even the blast is a
	// guess: published blasts run from 0.5 to 2 l/min per cm2.
	unreadSpread = 0.5
	// levelOver is over how many charges the shaft is brought back to the level
	// where the estimator has the burden. The factor leans on what is usual and
	// would leave the shaft a little high or low at each charge for good.
	levelOver = 4
	// doubtful is how far past the range of the factor an interval may speak of
	// it. One that goes beyond is not about burning: the shaft was still being
	// filled, an entry is missing, a charge was laid late.
	doubtful = 1.5
	// lately is how many intervals tell the air: a tuyere slags up and a gap
	// opens, so those of the morning say little in the evening (30 Oct 2021: 0.93
	// and then 0.66, calibration study).
	lately = 8
)

func newPace(usual float64) pace { return pace{usual: usual, factor: usual, known: true} }

// regime says whether the blast that blows is metered. What is learned of the
// one says nothing of the other, nor does an interval with both.
func (p *pace) regime(known bool) {
	if p.known != known {
		p.known, p.clean = known, false
		p.factor = p.within(p.estimate().P50)
	}
}

// forget drops what was learned of a blast nobody metered: another one blows.
func (p *pace) forget() { p.unread, p.clean = nil, false }

// broken spoils the interval: the burden moved by something else than burning.
func (p *pace) broken() { p.clean = false }

// estimate is the factor with its band.
func (p *pace) estimate() physics.Band {
	if p.known {
		return shaft.EstimateAirFactor(physics.LogNormal(p.usual, shaft.AirFactorPrior().RelSD()), p.metered)
	}
	return shaft.EstimateAirFactor(physics.LogNormal(p.usual, unreadSpread), p.unread)
}

// tells says whether the air is known well enough for figures.
func (p *pace) tells() bool { return p.known || len(p.unread) >= fewest }

// charge takes a charge that has just been laid.
func (p *pace) charge(r *run, a lay, at float64) {
	carbon, weighed := 0.0, len(a.parts) > 0
	for _, m := range a.parts {
		carbon += m.carbonToBurn()
		weighed = weighed && !m.unknown
	}
	if carbon <= 0 && weighed {
		return // ore on its own
	}
	burned := r.shaft.Totals().CarbonBurned
	took, burnt := at-p.since, burned-p.burnedThen
	if p.clean && a.paces && weighed && took > 0 && burnt > 0 {
		p.learn(shaft.ChargeInterval{Measured: took, Modelled: took * carbon / burnt, AtFactor: p.factor})
	}
	p.since, p.burnedThen, p.clean = at, burned, a.paces
	p.factor = p.within(p.estimate().P50 * p.correction(r, a, carbon))
}

// learn adds an interval to those of its blast.
func (p *pace) learn(i shaft.ChargeInterval) {
	says := i.Modelled / i.Measured * i.AtFactor
	if low, high := p.span(); says < low/doubtful || says > high*doubtful {
		return
	}
	of := &p.metered
	if !p.known {
		of = &p.unread
	}
	last := (*of)[max(0, len(*of)-lately+1):]
	*of = append(last[:len(last):len(last)], i) // a copy of the run keeps its own
}

// correction burns what the shaft holds above its level within the next charges,
// or spares what it lacks. A charge to the mark is a look at it, and the
// estimator, which leans on that and on a usual burn, is another: between the two
// there is nothing to correct.
func (p *pace) correction(r *run, a lay, carbon float64) float64 {
	if !a.levels || carbon <= 0 {
		return 1
	}
	low, high := a.level, a.level
	if stack := r.lit.geometry.Stack; a.paces {
		low, high = min(low, stack), max(high, stack)
	}
	height := r.shaft.StackHeight()
	bore, due := r.lit.geometry.Bore, max(low, min(high, height))
	over := bore.VolumeBelow(height) - bore.VolumeBelow(due)
	surplus := over * physics.DefaultCharcoalBulk * physics.DefaultCarbonShare
	return max(0.5, min(2, 1+surplus/(levelOver*carbon)))
}

// within keeps a factor to its range.
func (p *pace) within(factor float64) float64 {
	low, high := p.span()
	return max(low, min(high, factor))
}

// span is the range of the factor; twice that of a blast nobody metered.
func (p *pace) span() (low, high float64) {
	for _, row := range shaft.ParamTable {
		if row.Name == "air_factor" {
			low, high = row.Low, row.High
		}
	}
	if !p.known {
		low, high = low/2, high*2
	}
	return low, high
}
