package solve

import (
	"hash/maphash"
	"iter"
	"slices"
	"time"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/physics"
	"chargehand/physics/shaft"
)

// Event is one thing that the solver is told, at a moment of the smelt.
type Event struct {
	At  time.Duration
	act act
}

// act is what happens. It changes a run at a time in s since light.
type act interface {
	do(r *run, at float64) error
	sum(h *maphash.Hash)
}

// The acts, as values: what they say in full, so that a hash of them says
// everything that the solver was told.
type (
	lit struct { // the fire is lit
		geometry shaft.Geometry
		given    bool // bore and stack are the furnace's own
		ambient  physics.Air
		drains   bool // slag does not gather under the tuyere
		params   shaft.Params
		again    again
	}
	again struct { // the furnace was smelted in not long before
		is, slag, embers bool
		rested           float64 // s
		base             float64 // m from its floor to the tuyere; 0 when it was not measured
	}
	weather struct{ ambient physics.Air }
	lay     struct { // a fill or a charge
		parts   []material
		fill    bool
		paces   bool    // the charge tells, with the one before it, how fast the furnace burns
		took    took    // the interval that it ends
		level   float64 // m above the tuyere, where the estimator has the burden afterwards
		levels  bool    // it has one
		levelSD float64 // m, the standard deviation of that
	}
	blow struct {
		lMin   float64
		known  bool
		other  bool   // not metered, and another one than before
		blower string // that blows, by its name
	}
	nozzle struct{ bore float64 } // m, of the tuyere
	poke   struct{}
	tap    struct {
		kg    float64
		known bool
	}
	arch   struct{ open bool }
	taken  struct{}
	stands struct{ level float64 } // m above the tuyere, where the estimator has the burden while a charge is late
)

// took is the interval before a charge, as package pace has it.
type took struct {
	burning float64 // s without the stops of the blast; 0 before the first
	goes    bool    // both its ends are one charge put in in several goes
}

// Events gives what a timeline says to the solver, in order. Those of a timeline to
// an earlier moment, by the same entries, are the beginning of those to a later.
func Events(c *fold.Timeline) []Event { return eventsOf(c, nil) }

func eventsOf(c *fold.Timeline, irons Irons) []Event {
	if c.Phase == "" {
		return nil
	}
	geometry, given := geometryOf(c.Light.Furnace)
	practice := c.Light.Furnace.Practice
	ambient := airOf(c.Light.Furnace, entry.None[entry.Celsius]())
	evs := []Event{{0, lit{geometry: geometry, given: given, ambient: ambient, drains: practice == entry.SlagPit || practice == entry.SlagRunning, params: calibrated(c.Light.Calibration), again: againOf(c.Light)}}}
	if f := c.Light.Furnace; f.TuyereBore.Positive() {
		evs = append(evs, Event{0, nozzle{float64(f.TuyereBore.Value) / 1000}})
	}
	add := func(at time.Duration, a act) { evs = append(evs, Event{max(0, at), a}) }
	blast, charge, intervals := 0, 0, c.Pace.Intervals()
	var set entry.Blast // what was last seen of a blast that blows
	late := lateness{c: c}
	for l := range c.Lines.All() {
		evs = slices.AppendSeq(evs, late.before(l.At))
		switch ev := l.Event.(type) {
		case entry.Fill:
			add(l.At, layOf(c, irons, *l, ev.Parts, lay{fill: true}))
		case entry.Charge:
			a := lay{}
			if charge < len(c.Charges) && c.Charges[charge].Seq == l.Seq() {
				ch := c.Charges[charge]
				a.paces = ch.Remark != entry.NotToMark && ch.Remark != entry.Heaped && !ch.Double
				if charge > 0 && charge <= len(intervals) {
					i := intervals[charge-1]
					a.took.goes = i.TopUp && !i.Filled
					if !i.TopUp && !i.Double {
						a.took.burning = i.Burning().Seconds()
					}
				}
				charge++
				late.charged(l.At, charge)
			}
			add(l.At, layOf(c, irons, *l, ev.Parts, a))
		case entry.Blast:
			b := c.Blast[blast]
			blast++
			says := !ev.SaysNoSetting()
			add(l.At, blow{lMin: float64(b.Volume.Value), known: b.Volume.Known, other: !b.Volume.Known && says && ev != set, blower: b.Blower})
			if !b.Off && says {
				set = ev
			}
		case entry.Temperature, entry.Weather:
			if outside := fold.OutsideBy(ev); outside.Known {
				add(l.At, weather{airOf(c.Light.Furnace, outside)})
			}
		case entry.Tuyere:
			if ev.Bore.Positive() {
				add(l.At, nozzle{float64(ev.Bore.Value) / 1000})
			}
		case entry.Poke:
			add(l.At, poke{})
		case entry.Tap:
			add(l.At, tap{kg: float64(ev.Mass.Value), known: ev.Mass.Known})
		case entry.Arch:
			add(l.At, arch{ev.Open})
		case entry.Extract:
			add(l.At, taken{})
		}
	}
	return slices.AppendSeq(evs, late.before(c.At+1))
}

const (
	// lookFrom is from how many usual intervals after a charge on the burden is looked at again each lookEach, for lookFor.
	lookFrom, lookEach, lookFor = 1.2, 2 * time.Minute, 3 * time.Hour
	// paceOver is over how many intervals the estimator's pace goes.
	paceOver = 3
)

// lateness is when a charge that is waited for is late. Meanwhile the burden stands where the estimator has it: nobody has
// charged, so that no more can have burned than a charge holds, but for what nobody minded.
type lateness struct {
	c        *fold.Timeline
	next, to time.Duration // when it is looked at next, and until when; 0 before the second charge
}

// charged begins an interval after so many charges. Usual is the shorter of the last ones and of all of them: where the last
// ones were long, the next need not be.
func (l *lateness) charged(at time.Duration, charges int) {
	l.next, l.to = 0, 0
	last, ok := l.c.Pace.Last(paceOver, charges)
	all, ok2 := l.c.Pace.Last(charges, charges)
	if !ok || !ok2 {
		return
	}
	usual := min(last.Burning()/time.Duration(last.Wholes), all.Burning()/time.Duration(all.Wholes))
	l.next, l.to = at+time.Duration(lookFrom*float64(usual)), at+lookFor
}

// before are the looks before a moment that are still to come.
func (l *lateness) before(moment time.Duration) iter.Seq[Event] {
	return func(yield func(Event) bool) {
		for ; l.next > 0 && l.next < min(moment, l.to); l.next += lookEach {
			level, ok := l.c.LevelThen(l.next)
			if !ok || !l.c.Awaits(l.next) {
				continue
			}
			if !yield(Event{max(0, l.next), stands{level.Height}}) {
				return
			}
		}
	}
}

// airOf is the air round the furnace and in its blast, as damp as that of an
// ordinary day: nobody measures it, and its water takes heat from the fire.
func airOf(f entry.Furnace, outside entry.Maybe[entry.Celsius]) physics.Air {
	a := fold.AirAt(f, outside)
	a.RelativeHumidity = physics.UsualHumidity
	return a
}

// againOf is what a light says of the smelt before.
func againOf(l entry.Light) again {
	if !l.Rested.Known {
		return again{}
	}
	return again{
		is: true, slag: slices.Contains(l.LeftIn, entry.LeftSlag), embers: slices.Contains(l.LeftIn, entry.LeftEmbers),
		rested: 3600 * float64(l.Rested.Value), base: metres(l.Furnace.TuyereBase),
	}
}

// layOf fills in the parts and the level.
func layOf(c *fold.Timeline, irons Irons, l fold.Line, parts entry.Parts, to lay) lay {
	for _, p := range parts {
		if m := materialOf(c, irons, p, l); m.kg > 0 || m.unknown {
			to.parts = append(to.parts, m)
		}
	}
	level, ok := c.LevelThen(l.At)
	to.level, to.levelSD, to.levels = level.Height, level.SD(), ok
	return to
}

func (a lit) sum(h *maphash.Hash)     { maphash.WriteComparable(h, a) }
func (a weather) sum(h *maphash.Hash) { maphash.WriteComparable(h, a) }
func (a blow) sum(h *maphash.Hash)    { maphash.WriteComparable(h, a) }
func (a nozzle) sum(h *maphash.Hash)  { maphash.WriteComparable(h, a) }
func (a poke) sum(h *maphash.Hash)    { maphash.WriteComparable(h, a) }
func (a tap) sum(h *maphash.Hash)     { maphash.WriteComparable(h, a) }
func (a arch) sum(h *maphash.Hash)    { maphash.WriteComparable(h, a) }
func (a taken) sum(h *maphash.Hash)   { maphash.WriteComparable(h, a) }
func (a stands) sum(h *maphash.Hash)  { maphash.WriteComparable(h, a) }
func (a lay) sum(h *maphash.Hash) {
	for _, m := range a.parts {
		maphash.WriteComparable(h, m)
	}
	maphash.WriteComparable(h, struct {
		fill, paces, levels bool
		level, sd           float64
		took                took
	}{a.fill, a.paces, a.levels, a.level, a.levelSD, a.took})
}
