package solve

import (
	"errors"
	"math"
	"time"

	"chargehand/physics"
	"chargehand/physics/shaft"
)

const (
	// asleep is how long after the last event the solver goes on.
	asleep = 12 * time.Hour
	// smoothing is the time constant in s of what is said of the top gas: it
	// swings with each charge, and a reader wants the last minutes.
	smoothing = 150.0
	// alight is the heat in K that the raceway is held at least where the blast
	// blows: people do not let their fire go out, and where the solver's would it
	// has it colder or damper than theirs. From lightingUp s after the blast began
	// that means that it does not follow the furnace, for heldFor s.
	alight, lightingUp, heldFor = 1000.0, 3600.0, 900.0
	// settled is how long in s a guessed blast colours what follows: the wall
	// forgets it in about an hour.
	settled = 3600.0
)

// run is the solver on its way: the shaft and what is remembered beside it. It
// is a value; a copy goes its own way.
type run struct {
	grid    shaft.Grid
	shaft   shaft.Shaft
	lit     lit
	ambient physics.Air
	air     air
	pace    pace

	waiting []shaft.Portion // the fill, until the blast blows through it
	filled  bool            // there is a fill
	fire    bool            // the blast has begun to blow through charcoal
	charged bool            // the main burn has begun
	open    bool            // the arch
	over    bool            // the bloom is out
	failed  bool            // something it was told cannot be
	noOre   bool            // ore of unknown mass went in
	usual   bool            // ore that nobody assayed went in
	follow  follow          // how well the shaft keeps to the level
	guessed bool            // charcoal of unknown mass went in

	nozzle     float64      // bore of the tuyere, m; 0 when it is not known
	seen       *history     // what the rules read
	filledAt   float64      // when the fill began, s
	end        shaft.Hearth // as the bloom was taken out
	last       float64      // when it was last told something, s
	blownSince float64      // when the blast first went through charcoal, s; negative while it has not
	held       float64      // when the raceway last had to be held alight though the fire was hours old, s; negative for never
	standIn    float64      // when a guessed blast last blew, s; negative for never
	top        top
}

// air is the blast as it was last told.
type air struct {
	lMin    float64 // metered
	known   bool
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
	step := r.grid.Step
	for next := step * (math.Floor(r.shaft.Time()/step) + 1); next <= to && !r.failed; next += step {
		r.shaft.AdvanceTo(next)
		r.sample(next)
		if math.Mod(next, 60) == 0 {
			r.record(next)
		}
	}
}

func (r *run) sample(at float64) {
	r.pace.burn(r, at)
	if !r.fire || r.blows() <= 0 {
		r.top = top{} // no gas to speak of
		return
	}
	if r.blownSince < 0 {
		r.blownSince = at
	}
	if !r.air.known {
		r.standIn = at
	}
	if r.shaft.HoldAlight(alight) && at-r.blownSince > lightingUp {
		r.held = at
	}
	g := r.shaft.TopGas()
	share := 1.0
	if r.top.begun {
		share = 1 - math.Exp(-r.grid.Step/smoothing)
	}
	r.top.kelvin += share * (g.Temperature - r.top.kelvin)
	r.top.co += share * (g.CO - r.top.co)
	r.top.co2 += share * (g.CO2 - r.top.co2)
	r.top.begun = true
}

// usualPerArea is the blast in l/min per cm2 of bore that stands in for one of
// which nothing is known, until the charges tell: the middle of 1.0 to 1.5 that
// published smelts of this kind were blown with.
const usualPerArea = 1.2

// astray tells whether the solver goes another way than the furnace.
func (r *run) astray() bool {
	return r.follow.astray || r.held >= 0 && r.shaft.Time()-r.held < heldFor
}

// setBlast gives the shaft the air that blows, with the factor in force.
func (r *run) setBlast(at float64) error {
	lMin := r.blows()
	if lMin > 0 {
		r.pace.regime(r.air.known)
		if r.filled {
			if err := r.kindle(at, r.lit.geometry.Bore.VolumeBelow(r.lit.geometry.Stack)); err != nil {
				return err
			}
		}
	}
	flow, err := r.ambient.Flow(physics.FromLitresPerMinute(lMin * r.pace.share))
	if err != nil {
		return err
	}
	params := r.lit.params
	params.AirFactor = r.pace.factor
	return errors.Join(r.shaft.SetParams(at, params), r.shaft.SetBlast(at, shaft.Blast{Flow: flow, Temperature: r.ambient.Temperature}))
}
