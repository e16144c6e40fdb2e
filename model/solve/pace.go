package solve

import (
	"slices"

	"chargehand/model/entry"
	"chargehand/physics"
	"chargehand/physics/shaft"
)

// pace learns from the charges how much of the blast burns. Each charge brings
// the burden back to where the one before it left it, so what it holds is what
// burned in the interval that package pace has between the two; the shaft burned
// something too, at the factor it had.
//
// Two numbers come of that. The one shown leans on what is usual, because one
// interval scatters. The one the shaft runs at does not, from the third interval
// on: it has to burn what this furnace burns, whatever its meter says.
type pace struct {
	usual           float64 // before anything is learned
	factor          float64 // in force
	metered, unread []shaft.ChargeInterval
	blower          string  // that they were blown with
	aside           []blown // the metered ones of the others
	known           bool    // the blast is metered
	clean           bool    // nothing since the last charge spoils the interval
	learned         bool    // the last charge told of its interval
	carbon          float64 // kg in that charge, all goes of it
	burned, full    float64 // kg of carbon that the shaft burned since in so many s of blast, while there was enough in it to burn
	factored        float64 // factor and share over those s, summed up
	share           float64 // of the blast that gets in while a charge is late; 1 while none is
	at, total       float64 // how far this has been counted: s, kg of carbon
}

const (
	// fewest is how many intervals tell the air of a blast nobody metered, and
	// the factor that the shaft runs at.
	fewest = 3
	// unreadSpread is the prior's relative spread where even the blast is a
	// guess: published blasts run from 0.5 to 2 l/min per cm2.
	unreadSpread = 0.5
	// levelOver is over how many charges the shaft is brought back to the level
	// where the estimator has the burden.
	levelOver = 4
	// lately is how many intervals tell the air: a tuyere slags up and a gap
	// opens, so those of the morning say little in the evening. levelLately is
	// how many the shaft runs at: their median, so that a charge left out or
	// written down twice moves little.
	lately, levelLately = 8, 4
	// leastFactor and mostFactor hold the factor that the shaft runs at. Meters
	// of this trade have been wrong by a factor of two either way; below the
	// least nothing would burn.
	leastFactor, mostFactor = 0.15, 2.5
)

// blown are the intervals of a metered blast by the blower that blew it.
type blown struct {
	blower  string
	metered []shaft.ChargeInterval
}

func newPace(usual float64) pace { return pace{usual: usual, factor: usual, share: 1, known: true} }

// regime says whether the blast that blows is metered. What is learned of the
// one says nothing of the other, nor does an interval with both.
func (p *pace) regime(known bool) {
	if p.known != known {
		p.known, p.clean, p.learned = known, false, false
		p.factor, p.share = p.runsAt(), 1
	}
}

// exchange says which blower blows. How far a reading is off is its meter's and its hose's: what was learned of one says
// nothing of another, and comes back with it.
func (p *pace) exchange(blower string) {
	if blower == p.blower {
		return
	}
	others := append(slices.Clip(p.aside), blown{p.blower, p.metered}) // a copy of the run keeps its own
	p.blower, p.metered = blower, nil
	if i := slices.IndexFunc(others, func(b blown) bool { return b.blower == blower }); i >= 0 {
		p.metered = others[i].metered
		others = slices.Delete(others, i, i+1)
	}
	p.aside, p.clean, p.learned = others, false, false
	p.factor, p.share = p.runsAt(), 1
}

// forget drops what was learned of a blast nobody metered: another one blows.
func (p *pace) forget() { p.unread, p.clean, p.learned = nil, false, false }

// broken spoils the interval: the burden moved by something else than burning.
func (p *pace) broken() { p.clean = false }

// estimate is the factor shown, with its band.
func (p *pace) estimate() physics.Band {
	spread := shaft.AirFactorPrior().RelSD()
	if !p.known {
		spread = unreadSpread
	}
	return shaft.EstimateAirFactor(physics.LogNormal(p.usual, spread), p.intervals())
}

func (p *pace) intervals() []shaft.ChargeInterval { return *p.ofBlast() }

// runsAt is the factor that the shaft runs at.
func (p *pace) runsAt() float64 {
	all := p.intervals()
	if len(all) < fewest {
		return within(p.estimate().P50)
	}
	var says []float64
	for _, i := range all[max(0, len(all)-levelLately):] {
		says = append(says, i.Factor())
	}
	return within(shaft.MedianFactor(says))
}

// tells says whether the air is known well enough for figures.
func (p *pace) tells() bool { return p.known || len(p.unread) >= fewest }

// burn counts what burned up to a moment.
func (p *pace) burn(r *run, at float64) {
	total, dt := r.shaft.Totals().CarbonBurned, at-p.at
	if r.fire && r.blows() > 0 {
		if r.shaft.StandsOver(r.lit.params.RacewayHeight) { // lower, the blast finds too little to burn
			p.burned += total - p.total
			p.full += dt
			p.factored += p.factor * p.share * dt
		}
	}
	p.at, p.total = at, total
}

// charge takes a charge that has just been laid.
func (p *pace) charge(r *run, a lay, at float64) {
	carbon, holds, weighed := 0.0, false, true
	for _, m := range a.parts {
		if m.what == entry.Charcoal {
			carbon += m.carbonToBurn()
			holds, weighed = true, weighed && !m.unknown
		}
	}
	if !holds {
		return // ore on its own
	}
	p.burn(r, at)
	if a.took.goes {
		p.another(carbon, weighed)
	} else {
		p.learned = p.clean && a.paces && weighed && a.took.burning > 0 && p.burned > 0
		if p.learned {
			p.learn(shaft.ChargeInterval{Measured: a.took.burning, Modelled: carbon * p.full / p.burned, AtFactor: p.factored / p.full})
		}
		p.carbon, p.burned, p.full, p.factored, p.clean = carbon, 0, 0, 0, a.paces
	}
	p.factor = within(p.runsAt() * p.correction(r, a, carbon))
	p.share = 1
}

const (
	// lateFrom is from how many charges on, burned since the last, the burden is believed rather than the pace; in a shaft that
	// holds fewer over the tuyere, from when none of them is left. One that hangs burns on below until it comes down, mostly by
	// then (assumed).
	lateFrom = 1.8
	// burnsOver is by how much of a charge, burned more than the burden has sunk, the shaft burns leastShare of what it did.
	burnsOver, leastShare = 0.3, 0.1
)

// stands takes where the burden stands while a charge is waited for.
func (p *pace) stands(r *run, level, at float64) {
	p.burn(r, at)
	low := !r.shaft.StandsOver(r.lit.params.RacewayHeight)
	if p.carbon <= 0 || p.share == 1 && p.burned < lateFrom*p.carbon && !low {
		return
	}
	bore := r.lit.geometry.Bore
	over := (bore.VolumeBelow(level) - bore.VolumeBelow(r.shaft.StackHeight())) * physics.DefaultCharcoalBulk * physics.DefaultCarbonShare
	p.share = max(leastShare, min(1, 1-over/(burnsOver*p.carbon)))
}

// another takes one more go of the last charge: what it holds burned before that
// one too.
func (p *pace) another(carbon float64, weighed bool) {
	of := p.ofBlast()
	if n := len(*of); p.learned && n > 0 && p.carbon > 0 {
		last := slices.Clone(*of) // a copy of the run keeps its own
		last[n-1].Modelled *= 1 + carbon/p.carbon
		if *of = last; !weighed {
			*of, p.learned = last[:n-1], false
		}
	}
	p.carbon += carbon
}

// ofBlast are the intervals of the blast that blows.
func (p *pace) ofBlast() *[]shaft.ChargeInterval {
	if p.known {
		return &p.metered
	}
	return &p.unread
}

// learn adds an interval to those of its blast.
func (p *pace) learn(i shaft.ChargeInterval) {
	of := p.ofBlast()
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
	height := r.shaft.StackHeight()
	bore := r.lit.geometry.Bore
	over := bore.VolumeBelow(height) - bore.VolumeBelow(a.level)
	surplus := over * physics.DefaultCharcoalBulk * physics.DefaultCarbonShare
	return max(0.5, min(2, 1+surplus/(levelOver*carbon)))
}

// within keeps a factor to what the shaft can run at.
func within(factor float64) float64 { return max(leastFactor, min(mostFactor, factor)) }
