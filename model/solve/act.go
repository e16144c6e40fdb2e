package solve

import (
	"errors"

	"chargehand/model/entry"
	"chargehand/physics"
	"chargehand/physics/shaft"
)

// What the preheating fire leaves where no log says it: a wall of 760 K at the
// tuyere and 430 K at the mark (assumed, between the two that physics/shaft takes
// for the published smelts of 2016 and 2021), and a tenth of a metre of embers
// at 1200 K; twice that under a fill that has waited for the blast so many
// seconds: its lowest part has caught (a guess).
const (
	preheatBottom, preheatTop = 760.0, 430.0
	embersDeep, embersKelvin  = 0.10, 1200.0
	caughtDeep, caughtAfter   = 0.20, 600.0
)

const (
	// tapShare is how much of the slag a tap of unknown mass lets out: a guess.
	tapShare = 0.7
	// fillsTo is how much of the stack a fill of unknown mass takes up where the
	// estimator has no level either: a guess.
	fillsTo = 0.75
)

func (a lit) do(r *run, _ float64) error {
	furnace, err := shaft.New(r.grid, a.geometry, a.params, a.ambient)
	if err == nil && a.again.is {
		var left []shaft.Portion
		if left, err = a.leftIn(); err == nil {
			err = furnace.LitAgain(a.again.rested, left...)
		}
	}
	*r = run{grid: r.grid, shaft: furnace, lit: a, ambient: a.ambient, pace: newPace(a.params.AirFactor), blownSince: -1, standIn: -1, held: -1}
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
	if !r.filled {
		r.filled, r.filledAt = true, at
	}
	r.charged = r.charged || !a.fill
	waits := r.blows() <= 0 && !r.fire
	if !waits {
		if err := r.kindle(at, r.below(a)); err != nil {
			return err
		}
	}
	var parts []shaft.Portion
	for _, m := range a.parts {
		lot, err := m.lot()
		if err != nil {
			return err
		}
		if m.unknown && m.what == entry.Charcoal {
			r.guessed = true
			m.kg = max(m.kg, r.missing(a, m))
		}
		r.usual = r.usual || m.usual
		r.noOre = r.noOre || m.unknown && m.what == entry.Ore
		parts = append(parts, shaft.Portion{Lot: lot, Mass: m.kg})
	}
	if waits {
		r.waiting = append(r.waiting[:len(r.waiting):len(r.waiting)], parts...) // a copy of the run keeps its own
		return nil
	}
	share, unlaid := r.fits(a)
	var over []shaft.Portion
	for i := range parts {
		if a.parts[i].what == entry.Charcoal {
			over = append(over, shaft.Portion{Lot: parts[i].Lot, Mass: parts[i].Mass * (1 - share)})
			parts[i].Mass *= share
		}
	}
	if err := errors.Join(r.shaft.Charge(at, parts...), r.shaft.Surplus(at, over...), r.pack(at)); err != nil {
		return err
	}
	if !a.fill {
		if err := r.assimilate(a, at, unlaid); err != nil {
			return err
		}
		r.pace.charge(r, a, at)
	}
	return r.setBlast(at)
}

// below is the room in m3 that a charge leaves under itself when it reaches its
// level: what the fill can still take up when the first charge comes.
func (r *run) below(a lay) float64 {
	bore := r.lit.geometry.Bore
	room := bore.VolumeBelow(r.lit.geometry.Stack)
	if a.fill {
		return room
	}
	if a.levels {
		room = min(room, bore.VolumeBelow(a.level))
	}
	for _, m := range a.parts {
		if m.what == entry.Charcoal {
			room -= m.room()
		}
	}
	return room
}

// kindle leaves the furnace as the preheating fire does, with the fill that has
// waited on the embers; once. Of a fill that takes up more than the room it has
// in m3 the rest has burned while it was filled and waited.
func (r *run) kindle(at, room float64) error {
	if r.fire {
		return nil
	}
	r.fire = true
	usual, err := shaft.CharcoalLot(physics.DefaultCharcoal(), physics.DefaultBed(), shaft.DefaultLump)
	if err != nil {
		return err
	}
	bore := r.lit.geometry.Bore
	deep := embersDeep
	if r.lit.again.embers || len(r.waiting) > 0 && at-r.filledAt >= caughtAfter {
		deep = caughtDeep
	}
	embers := bore.VolumeBelow(min(deep, r.lit.geometry.Stack/2))
	kg := physics.DefaultCharcoal().ChargedMass(embers * physics.DefaultCharcoalBulk)
	err = errors.Join(r.shaft.PreheatWall(at, preheatBottom, preheatTop), r.shaft.Embers(at, embersKelvin, shaft.Portion{Lot: usual, Mass: kg}))
	if err != nil || len(r.waiting) == 0 {
		return err
	}
	filled := r.shaft.Clone()
	if err := filled.Charge(at, r.waiting...); err != nil {
		return err
	}
	share := 1.0
	if all := bore.VolumeBelow(filled.StackHeight()); all > room {
		share = max(0, room-embers) / (all - embers)
	}
	fill, over := make([]shaft.Portion, len(r.waiting)), make([]shaft.Portion, len(r.waiting))
	for i, p := range r.waiting {
		fill[i], over[i] = shaft.Portion{Lot: p.Lot, Mass: p.Mass * share}, shaft.Portion{Lot: p.Lot, Mass: p.Mass * (1 - share)}
	}
	r.waiting = nil
	return errors.Join(r.shaft.Charge(at, fill...), r.shaft.Surplus(at, over...))
}

// pack presses down what still stands clear of the mark, as a poke does.
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
	r.air.lMin, r.air.known = a.lMin, a.known
	if a.known && a.lMin > 0 {
		r.air.instead = a.lMin
	}
	r.pace.exchange(a.blower)
	if a.other {
		r.pace.forget()
	}
	return r.setBlast(at)
}

func (a nozzle) do(r *run, _ float64) error {
	r.nozzle = a.bore
	return nil
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

// do ends the run; what there was in the hearth is kept for the account.
func (taken) do(r *run, at float64) error {
	r.over = true
	if err := r.shaft.SetBlast(at, shaft.Blast{Temperature: r.ambient.Temperature}); err != nil {
		return err
	}
	r.end = r.shaft.Hearth()
	return r.shaft.TakeBloom(at)
}

// do burns so much less that the shaft goes back to where the burden stands: what has burned more than the furnace burns no
// second time. The hearth gets as much less air.
func (a stands) do(r *run, at float64) error {
	r.pace.stands(r, a.level, at)
	return r.setBlast(at)
}
