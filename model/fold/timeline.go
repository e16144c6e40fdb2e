package fold

import (
	"math"
	"slices"
	"sort"
	"time"

	"chargehand/model/entry"
	"chargehand/model/grow"
	"chargehand/physics"
)

// Timeline is a smelt on its way: its state and what the state alone has forgotten of
// the way there. Take lets a line happen; To gives the state at a moment. All of it
// goes by when things happened, so the timeline to an earlier moment is the beginning
// of the timeline to a later one.
type Timeline struct {
	State
	Dips      []Dipped
	Weighings []Weighing

	about    *About
	blasts   grow.List[Blast]
	charges  grow.List[Charge]
	walks    grow.Pages[walk] // the estimator after each line that tells of the level, to sink on from there
	walk     walk
	measured bool         // bore and stack are known: there is a walk
	shared   int          // how many of the charges a copy holds too
	waiting  Charge       // what was charged before the charcoal it belongs to
	planned  entry.Recipe // the last one keyed
	done     int          // charges since then
	blew     Blast        // what last blew
	air      physics.Air  // that the blower takes in
	believed scales       // what was believed of the measures until then
}

// Dipped is a dip with the level that the burden would have until then at the pace of the last charges. What is believed of it
// where no charge came for long is another one: a burden that hangs is told from one that sinks by the pace.
type Dipped struct {
	At       time.Duration
	Height   float64 // m above the tuyere, as read
	Expected physics.Level
	Uneven   float64 // by how many times that is in more doubt than on a usual day; 1 on an even one
}

// Weighing is a measure weighed, with what was believed of it until then.
type Weighing struct {
	At       time.Duration
	Weigh    entry.Weigh
	Believed entry.Maybe[entry.Kilogram]
	// RelSD is how far the two may differ by chance, as the standard deviation
	// of the logarithm of their ratio: each is one measure, filled by eye.
	RelSD float64
}

// NewTimeline begins the timeline of a smelt.
func NewTimeline(about *About) Timeline {
	c := Timeline{State: State{LevelAt: -1}, about: about}
	if !about.lit {
		return c
	}
	c.Light, c.Lit, c.Blower = about.light, about.Lit, about.blowers.seen()
	c.Phase, c.Turns = entry.Preheat, []Turn{{0, entry.Preheat}}
	c.planned = entry.Recipe{Next: c.Light.Recipe}
	c.OrePlanned = promised(c.Light)
	c.air = AirAt(c.Light.Furnace, entry.None[entry.Celsius]())
	c.believed = newScales(c.Light, nil)
	if bore, ok := ShaftBore(c.Light.Furnace); ok {
		c.measured, c.walk = true, newWalk(bore, c.Bed())
		c.walks.Append(c.walk)
	}
	return c
}

// Clone is a copy that may go on beside this one.
func (c *Timeline) Clone() Timeline {
	o := *c
	o.Turns = slices.Clip(o.Turns)
	o.Dips, o.Weighings = slices.Clip(o.Dips), slices.Clip(o.Weighings)
	o.Pace = o.Pace.Clone()
	o.shared = len(o.Charges)
	return o
}

// Take lets a line happen. Lines come in the order in which they happened.
func (c *Timeline) Take(l Line) {
	if c.Phase == "" || !reads(l.Event) {
		return
	}
	c.Lines.Append(l)
	if l.Entry.By != "" {
		c.By = l.Entry.By
	}
	c.turn(l)
	c.lay(l)
	switch ev := l.Event.(type) {
	case entry.Charge:
		c.charge(l, ev)
	case entry.Blast:
		c.blow(l, ev)
	case entry.Recipe:
		c.planned, c.done = ev, 0
		c.plan(ev.Ramp, l.At)
	case entry.AgainFromHere:
		c.planned, c.done = ev.Recipe(), 0
		c.plan(ev.Steps, l.At)
	case entry.Tap:
		c.SlagWeighed += ev.Mass.Value
	case entry.Pause:
		c.Paused = true
		c.Pace.Pause(l.At, true)
	case entry.Resume:
		c.Paused = false
		c.Pace.Pause(l.At, false)
	case entry.HandOver:
		if ev.Whole() {
			c.By = ev.To
		}
	case entry.Weigh:
		c.weigh(l, ev)
	case entry.MeasureNamed:
		c.believed = c.believed.clone()
		c.believed.name(ev.Measure)
	case entry.Temperature, entry.Weather:
		if outside := OutsideBy(ev); outside.Known {
			c.Ambient = outside
			c.air = AirAt(c.Light.Furnace, c.Ambient)
		}
	}
	c.level(l)
}

// lay adds up all that goes in: fills, charges and ore on its own.
func (c *Timeline) lay(l Line) {
	parts := entry.PartsIn(l.Event)
	coal, coalDry := c.about.scale.sum(parts, entry.Charcoal, l.At)
	ore, oreDry := c.about.scale.sum(parts, entry.Ore, l.At)
	c.Charcoal = c.Charcoal.plus(Total{coal, coalDry})
	c.Ore = c.Ore.plus(Total{ore, oreDry})
}

// level lets the estimator see a line, and keeps what it passes.
func (c *Timeline) level(l Line) {
	if !c.measured {
		return
	}
	dip, isDip := l.Event.(entry.Dip)
	if isDip {
		c.walk.sinkTo(&c.State, l.At)
		if h, ok := dipped(dip, c.Light.Furnace); ok {
			c.Dips = append(c.Dips, Dipped{l.At, h, c.walk.level, c.walk.strays.pace()})
		}
	}
	if c.walk.take(&c.State, l, c.about.scale) {
		c.walks.Append(c.walk)
		if isDip {
			c.LevelAt = l.At
		}
	}
	c.HasLevel = c.walk.laid
}

// To is the timeline at a moment not before the last line it took, with what the next
// charge is, what the measures weigh and where the burden stands just then. It may
// be read only: the timeline goes on from itself.
func (c *Timeline) To(at time.Duration) Timeline {
	o := *c
	o.At = at
	if o.Phase == "" {
		return o
	}
	if o.measured {
		o.walk.sinkTo(&o.State, at)
		o.Level, o.HasLevel = o.walk.believed(&o.State), o.walk.laid
		o.Uneven = o.walk.strays.pace()
	}
	o.Recipe = o.next(at)
	for _, m := range o.Light.Measures {
		w, _ := o.about.scale.of(m.Name, at)
		m.Mass, m.Guessed = entry.None[entry.Kilogram](), w.guessed
		if w.known {
			m.Mass = entry.Some(entry.Kilogram(w.kg))
		}
		o.Measures = append(o.Measures, m)
	}
	return o
}

// Trace gives the timeline to a moment, from the entries up to known (All for
// every one). Its State is that of Fold.
func Trace(entries []entry.Entry, known uint64, at time.Duration) Timeline {
	return JournalOf(entries).AsKnown(known).Trace(at)
}

// About is what holds for the whole smelt.
func (c *Timeline) About() *About { return c.about }

// MassOf is the mass of one material in parts that went in at a moment, as
// charged.
func (c *Timeline) MassOf(parts entry.Parts, w entry.What, at time.Duration) Mass {
	charged, _ := c.about.scale.sum(parts, w, at)
	return charged
}

// PartOf is the mass of one part that went in at a moment, and what is known of
// its lot: the named one, else the last one of that material that light named.
func (c *Timeline) PartOf(p entry.Part, at time.Duration) (Total, entry.Lot) {
	charged, dry := c.about.scale.part(p, at)
	lot, named := c.about.scale.lots[p.Lot]
	for i := len(c.Light.Lots) - 1; i >= 0 && !named; i-- {
		lot, named = c.Light.Lots[i], c.Light.Lots[i].What == p.What
	}
	if !named {
		lot = entry.Lot{}
	}
	return Total{charged, dry}, lot
}

// Planned is what a recipe has for the charge after so many.
func Planned(r entry.Recipe, done int) entry.Parts {
	if len(r.Ramp) > 0 {
		return step(r, done)
	}
	return r.Next
}

// LevelThen is the level at a moment, as far as the timeline knows it, and whether
// there is one.
func (c *Timeline) LevelThen(at time.Duration) (physics.Level, bool) {
	i := sort.Search(c.walks.Len(), func(i int) bool { return c.walks.At(i).at > at }) - 1
	if i < 0 {
		return physics.Level{}, false
	}
	w := *c.walks.At(i)
	w.sinkTo(&c.State, at)
	return w.believed(&c.State), true
}

// weigh takes a weighing: of the bloom, or of a measure beside what was believed of
// it until then.
func (c *Timeline) weigh(l Line, ev entry.Weigh) {
	switch ev.What {
	case entry.WeighSlag:
		c.SlagWeighed += ev.Mass
	case entry.WeighBloom:
		if c.BloomNever = ev.Closed && !c.Bloom.Known; !ev.Closed {
			c.Bloom = entry.Some(ev.Mass)
		}
	case entry.WeighMeasure:
		w := Weighing{At: l.At, Weigh: ev, RelSD: math.Sqrt2 * math.Hypot(physics.MeasureRelSD, scaleRel)}
		if was, ok := c.believed.of(ev.Name, l.At); ok && was.known {
			w.Believed = entry.Some(entry.Kilogram(was.kg))
			if was.guessed {
				w.RelSD = math.Hypot(guessedRel, math.Hypot(physics.MeasureRelSD, scaleRel))
			}
		}
		c.Weighings = append(c.Weighings, w)
		c.believed = c.believed.clone()
		c.believed.weigh(ev, l.At)
	}
}
