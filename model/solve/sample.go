package solve

import (
	"math"
	"time"

	"chargehand/physics"
	"chargehand/physics/shaft"
)

// Sample is what the rules read of the shaft, once a minute.
type Sample struct {
	At     time.Duration
	Hearth physics.Band // K
	Top    physics.Band // K, of the gas over the last minutes; zero while nothing blows
	Slag   float64      // kg
	Iron   float64      // share of iron in the slag, by mass
	Stands float64      // chance that the slag does not run; 0 where its melting is not known
	Bath   physics.Band // m, how deep it stands; zero when it does not gather
	Carbon physics.Band // mass share of carbon in the iron, of whose middle nothing is to be said
	Soft   bool         // the slag protects the iron from more of it
	Holds  float64      // Pa that a clear tuyere and a sound burden hold against the blast; 0 when that is not known
	Ore    bool         // there is ore, and all of it was weighed
}

// history is the samples so far, the last first. It only grows at its head, so
// that the copies of a run share what they have in common.
type history struct {
	Sample
	before *history
}

// Samples are those from light to the solution's moment, in order. There is one
// for every minute in which the solver ran and had the air for it.
func (s Solution) Samples() []Sample {
	n := 0
	for t := s.history; t != nil; t = t.before {
		n++
	}
	gs := make([]Sample, n)
	for t := s.history; t != nil; t = t.before {
		n--
		gs[n] = t.Sample
	}
	return gs
}

// SameSamples tells whether another solution has the very same ones, as one has that went on from it within the minute.
func (s Solution) SameSamples(o Solution) bool { return s.history == o.history }

// SampleAt is the last one up to a moment, if it is of its last minutes.
func (s Solution) SampleAt(at time.Duration) (Sample, bool) {
	for t := s.history; t != nil; t = t.before {
		if t.At <= at {
			return t.Sample, at-t.At < Blind
		}
	}
	return Sample{}, false
}

// Blind is how old the last word of the solver may be: two of its minutes.
const Blind = 2 * time.Minute

// record adds one to the history.
func (r *run) record(at float64) {
	if r.status() != Computes || r.astray() {
		return
	}
	h := r.shaft.Hearth()
	g := Sample{
		At: seconds(at), Hearth: shaft.HearthBand(h.Temperature, r.ambient.Temperature), Slag: h.Slag.Sum(), Bath: r.bath(h),
		Carbon: h.BloomCarbon(), Soft: h.Protected(), Ore: !r.noOre && r.shaft.Totals().OreIron > leastOre,
	}
	if r.top.begun {
		g.Top, g.Holds = shaft.TemperatureBand(r.top.kelvin, r.shaft.StackHeight(), r.ambient.Temperature), r.holds()
	}
	if g.Slag > 0 {
		g.Iron = physics.IronShareFromOxides(h.Slag.FeO, h.Slag.Fe2O3) / g.Slag
		if !h.Slag.SpinelLast() {
			g.Stands = h.Slag.Running(g.Hearth).Not
		}
	}
	r.seen = &history{g, r.seen}
}

// holds is the pressure in Pa that the metered blast meets when nothing is in
// its way.
func (r *run) holds() float64 {
	density, err := r.ambient.Density()
	if err != nil || !r.air.known || r.nozzle <= 0 {
		return 0
	}
	tuyere, err := physics.TuyereDrop(physics.FromLitresPerMinute(r.air.lMin), density, r.nozzle, entranceLoss)
	if err != nil {
		return 0
	}
	return tuyere + r.shaft.PressureDrop(physics.LumpRoundness)
}

const (
	// entranceLoss is what a sharp entrance to the tuyere costs, in heads of
	// speed (textbook).
	entranceLoss = 0.5
	// leastOre is the iron in kg above which there is ore: charcoal ash holds a
	// trace.
	leastOre = 0.1
	// hearthVoid is the share of the hearth that slag can fill between fines,
	// charcoal and bloom, a guess; bathSpread, as the standard deviation of the
	// logarithm, holds that guess and the spread of the slag's mass (package
	// figure: 0.30).
	hearthVoid = 0.5
	bathSpread = 0.45
)

// bath is how deep the slag stands on the hearth, in m.
func (r *run) bath(h shaft.Hearth) physics.Band {
	if r.open || r.lit.drains {
		return physics.Band{}
	}
	depth, err := h.Slag.BathDepth(h.Temperature, r.lit.geometry.Bore.Bottom, hearthVoid)
	if err != nil || math.IsNaN(depth) {
		return physics.Band{}
	}
	return physics.LogNormal(depth, bathSpread)
}
