package solve

import (
	"errors"
	"math"
	"time"

	"chargehand/model/entry"
	"chargehand/physics"
)

// What the preheating fire leaves where no log says it: a wall of 760 K at the
// tuyere and 430 K at the mark (between the two that the calibration study took
// for the published smelts of 2016 and 2021), and a tenth of a metre of embers
// at 1200 K.
const (
	preheatBottom, preheatTop = 760.0, 430.0
	embersDeep, embersKelvin  = 0.10, 1200.0
)

const (
	// tapShare is how much of the slag a tap of unknown mass lets out: a guess.
	tapShare = 0.7
	// fillsTo is how much of the stack a fill of unknown mass takes up where the
	// estimator has no level either: a guess.
	fillsTo = 0.75
	// asleep is how long after the last event the solver goes on.
	asleep = 12 * time.Hour
	// smoothing is the time constant in s of what is said of the top gas: it
	// swings with each charge, and a reader wants the last minutes.
	smoothing = 150.0
	// The solver has let its fire go out, which people seldom do, when with more
	// than burdenLeft m of burden it burns for wentOutFor s less than wentOut of
	// what the blast could at most.
	wentOut, wentOutFor, burdenLeft = 0.05, 900.0, 0.10
	// settled is how long in s a guessed blast colours what follows: the wall
	// forgets it in about an hour.
	settled = 3600.0
)

// run is the solver on its way: the shaft and what is remembered beside it. It
// is a value; a copy goes its own way.
type run struct {
	shaft   physics.Shaft
	lit     lit
	ambient physics.Air
	air     air
	pace    pace

	waiting []physics.Portion // the fill, until the blast blows through it
	filled  bool              // there is a fill
	fire    bool              // the blast has begun to blow through charcoal
	charged bool              // the main burn has begun
	open    bool              // the arch
	over    bool              // the bloom is out
	failed  bool              // something it was told cannot be
	noOre   bool              // ore of unknown mass went in
	guessed bool              // charcoal of unknown mass went in

	last       float64 // when it was last told something, s
	blownSince float64 // when the blast first went through charcoal, s; negative while it has not
	burns      float64 // when it last burned as it should, s
	most       float64 // the carbon the blast burns at most, kg/s
	standIn    float64 // when a guessed blast last blew, s; negative for never
	top        top
}

// air is the blast as it was last told.
type air struct {
	lMin    float64 // metered
	known   bool
	told    bool
	instead float64 // what stands in for it when it is not metered, l/min
}

// blows is what blows in l/min. A blast of which nothing is known blows from the
// first charge on: before it, in the fill, nobody can say whether any does.
func (r *run) blows() float64 {
	switch {
	case r.air.known:
		return r.air.lMin
	case !r.charged:
		return 0
	case r.air.instead > 0:
		return r.air.instead
	}
	return usualPerArea * 1e4 * r.lit.geometry.Bore.Area(0)
}

// top is the gas over the burden, smoothed.
type top struct {
	kelvin, co, co2 float64
	begun           bool
}

// apply does one event.
func (r *run) apply(ev Event) {
	at := ev.At.Seconds()
	if at-r.last > asleep.Seconds() {
		r.failed = true
	}
	r.last = at
	if r.failed || r.over {
		return
	}
	r.advance(at)
	if err := ev.act.do(r, at); err != nil {
		r.failed = true
	}
}

// advance takes whole steps of the grid up to a moment, each as if nobody
// looked.
func (r *run) advance(to float64) {
	if r.failed || r.over {
		return
	}
	to = min(to, r.last+asleep.Seconds())
	for next := physics.ShaftStep * (math.Floor(r.shaft.Time()/physics.ShaftStep) + 1); next <= to; next += physics.ShaftStep {
		r.shaft.AdvanceTo(next)
		r.sample(next)
	}
}

func (r *run) sample(at float64) {
	if !r.fire || r.blows() <= 0 {
		return
	}
	if r.blownSince < 0 {
		r.blownSince = at
	}
	if !r.air.known {
		r.standIn = at
	}
	if r.shaft.Totals().LastStepCarbon > wentOut*r.most || r.shaft.StackHeight() < burdenLeft {
		r.burns = at
	}
	r.failed = r.failed || at-max(r.burns, r.blownSince) > wentOutFor
	g := r.shaft.TopGas()
	share := 1.0
	if r.top.begun {
		share = 1 - math.Exp(-physics.ShaftStep/smoothing)
	}
	r.top.kelvin += share * (g.Temperature - r.top.kelvin)
	r.top.co += share * (g.CO - r.top.co)
	r.top.co2 += share * (g.CO2 - r.top.co2)
	r.top.begun = true
}

func (a lit) do(r *run, _ float64) error {
	shaft, err := physics.NewShaft(a.geometry, physics.DefaultShaftParams(), a.ambient)
	*r = run{shaft: shaft, lit: a, ambient: a.ambient, pace: newPace(), blownSince: -1, standIn: -1}
	return err
}

func (a weather) do(r *run, at float64) error {
	r.ambient = a.ambient
	return errors.Join(r.shaft.SetAmbient(at, a.ambient), r.setBlast(at))
}

// do lays the parts; charcoal of unknown mass brings the burden up to its level.
// Until the blast blows they wait: what a fire without a blast does to its fill
// is not in the solver, which would let the embers die.
func (a lay) do(r *run, at float64) error {
	r.filled = true
	r.charged = r.charged || !a.fill
	waits := r.blows() <= 0 && !r.fire
	if !waits {
		if err := r.kindle(at); err != nil {
			return err
		}
	}
	var parts []physics.Portion
	for _, m := range a.parts {
		lot, err := m.lot()
		if err != nil {
			return err
		}
		if m.unknown && m.what == entry.Charcoal {
			r.guessed = true
			m.kg = max(m.kg, r.missing(a, m))
		}
		r.noOre = r.noOre || m.unknown && m.what == entry.Ore
		parts = append(parts, physics.Portion{Lot: lot, Mass: m.kg})
	}
	if waits {
		r.waiting = append(r.waiting[:len(r.waiting):len(r.waiting)], parts...) // a copy of the run keeps its own
		return nil
	}
	if err := errors.Join(r.shaft.Charge(at, parts...), r.pack(at)); err != nil {
		return err
	}
	if !a.fill {
		r.pace.charge(r, a, at)
	}
	return r.setBlast(at)
}

// kindle leaves the furnace as the preheating fire does, with the fill that has
// waited on the embers; once. Of a fill that would stand above the mark the rest
// has burned while it was filled.
func (r *run) kindle(at float64) error {
	if r.fire {
		return nil
	}
	r.fire = true
	usual, err := physics.CharcoalLot(physics.DefaultCharcoal(), physics.DefaultBed(), physics.DefaultLump)
	if err != nil {
		return err
	}
	bore, stack := r.lit.geometry.Bore, r.lit.geometry.Stack
	kg := physics.DefaultCharcoal().ChargedMass(bore.VolumeBelow(min(embersDeep, stack/2)) * physics.DefaultCharcoalBulk)
	err = errors.Join(r.shaft.PreheatWall(at, preheatBottom, preheatTop), r.shaft.Embers(at, embersKelvin, physics.Portion{Lot: usual, Mass: kg}))
	if err != nil || len(r.waiting) == 0 {
		return err
	}
	before := r.shaft.Clone()
	if err := r.shaft.Charge(at, r.waiting...); err != nil {
		return err
	}
	if over := bore.VolumeBelow(r.shaft.StackHeight()) / bore.VolumeBelow(stack); over > 1 {
		r.shaft = before
		embers := bore.VolumeBelow(before.StackHeight()) / bore.VolumeBelow(stack)
		share := (1 - embers) / (over - embers)
		for _, p := range r.waiting {
			if err := r.shaft.Charge(at, physics.Portion{Lot: p.Lot, Mass: p.Mass * share}); err != nil {
				return err
			}
		}
	}
	r.waiting = nil
	return nil
}

// pack presses down what would stand clear of the mark: nobody charges past it,
// so the charcoal lies closer than was taken, or burned while it was filled.
func (r *run) pack(at float64) error {
	height := r.shaft.StackHeight()
	over := height - r.lit.geometry.Stack - physics.MarkSD
	if over <= 0 {
		return nil
	}
	return r.shaft.Poke(at, min(over, height/2.1))
}

// missing is the charcoal in kg as charged between the burden and its level.
func (r *run) missing(a lay, m material) float64 {
	g := r.lit.geometry
	level := a.level
	if !a.levels {
		level = g.Stack
		if a.fill {
			level *= fillsTo
		}
	}
	room := g.Bore.VolumeBetween(min(level, r.shaft.StackHeight()), level)
	return physics.Charcoal{Moisture: m.moisture, Carbon: m.carbon, Ash: m.ash}.ChargedMass(room * m.bed().CharcoalBulk)
}

func (a blow) do(r *run, at float64) error {
	r.air.lMin, r.air.known, r.air.told = a.lMin, a.known, true
	if a.known && a.lMin > 0 {
		r.air.instead = a.lMin
	}
	if a.other {
		r.pace.forget()
	}
	return r.setBlast(at)
}

// usualPerArea is the blast in l/min per cm2 of bore that stands in for one of
// which nothing is known, until the charges tell: the middle of 1.0 to 1.5 that
// published smelts of this kind were blown with.
const usualPerArea = 1.2

// setBlast gives the shaft the air that blows, with the factor in force.
func (r *run) setBlast(at float64) error {
	lMin := r.blows()
	if lMin > 0 {
		r.pace.regime(r.air.known)
		if r.filled {
			if err := r.kindle(at); err != nil {
				return err
			}
		}
	}
	flow, err := r.ambient.Flow(physics.FromLitresPerMinute(lMin))
	if err != nil {
		return err
	}
	r.most = flow.MostCarbon() * r.pace.factor
	params := physics.DefaultShaftParams()
	params.AirFactor = r.pace.factor
	return errors.Join(r.shaft.SetParams(at, params), r.shaft.SetBlast(at, physics.Blast{Flow: flow, Temperature: r.ambient.Temperature}))
}

// do drops the burden by the usual, or by what there is to drop.
func (poke) do(r *run, at float64) error {
	r.pace.broken()
	return r.shaft.Poke(at, min(physics.PokeDrop, r.shaft.StackHeight()/2.1))
}

func (a tap) do(r *run, at float64) error {
	share := tapShare
	if slag := r.shaft.Hearth().Slag.Sum(); a.known && slag > 0 {
		share = min(1, a.kg/slag)
	}
	return r.shaft.Tap(at, share)
}

// do of an arch that is opened lets the slag out.
func (a arch) do(r *run, at float64) error {
	r.open = a.open
	if !a.open {
		return nil
	}
	return r.shaft.Tap(at, tapShare)
}

func (taken) do(r *run, at float64) error {
	r.over = true
	return r.shaft.TakeBloom(at)
}
