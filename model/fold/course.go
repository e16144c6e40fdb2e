package fold

import (
	"math"
	"sort"
	"time"

	"chargehand/model/entry"
	"chargehand/physics"
)

// Course is a smelt at a moment with the way there: what the state alone has
// forgotten. All of it goes by when things happened, so the course to an
// earlier moment is the beginning of the course to a later one.
type Course struct {
	State
	Dips      []Dipped
	Weighings []Weighing
	scale     scales
	walks     []walk // the estimator after each line, to sink on from there
}

// Dipped is a dip with what was believed of the level until then.
type Dipped struct {
	At       time.Duration
	Height   float64 // m above the tuyere, as read
	Expected physics.Level
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

// Trace gives the course to a moment, from the entries up to known (All for
// every one). Its State is that of Fold.
func Trace(entries []entry.Entry, known uint64, at time.Duration) Course {
	c := Course{State: Fold(entries, known, at)}
	if c.Phase == "" {
		return c
	}
	held := InForce(entries, known)
	c.scale = newScales(c.Light, held)
	c.weighings()
	c.levels(remarksOf(held))
	return c
}

// MassOf is the mass of one material in parts that went in at a moment, as
// charged.
func (c *Course) MassOf(parts entry.Parts, w entry.What, at time.Duration) Mass {
	charged, _ := c.scale.sum(parts, w, at)
	return charged
}

// PartOf is the mass of one part that went in at a moment, and what is known of
// its lot: the named one, else the last one of that material that light named.
func (c *Course) PartOf(p entry.Part, at time.Duration) (Total, entry.Lot) {
	charged, dry := c.scale.part(p, at)
	lot, named := c.scale.lots[p.Lot]
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

// LevelThen is the level at a moment up to the course's own, and whether there
// is one.
func (c *Course) LevelThen(at time.Duration) (physics.Level, bool) {
	i := sort.Search(len(c.walks), func(i int) bool { return c.walks[i].at > at }) - 1
	if i < 0 {
		return physics.Level{}, false
	}
	w := c.walks[i]
	w.sinkTo(min(at, c.At))
	return w.level, true
}

// weighings goes through the weighings of measures in the order in which they
// happened.
func (c *Course) weighings() {
	believed := newScales(c.Light, nil)
	for _, l := range c.Lines {
		switch ev := l.Event.(type) {
		case entry.MeasureNamed:
			believed.name(ev.Measure)
		case entry.Weigh:
			if ev.What != entry.WeighMeasure {
				continue
			}
			w := Weighing{At: l.At, Weigh: ev, RelSD: math.Sqrt2 * math.Hypot(physics.MeasureRelSD, scaleRel)}
			if was, ok := believed.of(ev.Name, l.At); ok && was.known {
				w.Believed = entry.Some(entry.Kilogram(was.kg))
				if was.guessed {
					w.RelSD = math.Hypot(guessedRel, math.Hypot(physics.MeasureRelSD, scaleRel))
				}
			}
			c.Weighings = append(c.Weighings, w)
			believed.weigh(ev, l.At)
		}
	}
}

// levels takes the same walk as State.level and keeps what it passed.
func (c *Course) levels(remarks map[uint64]entry.LevelRemark) {
	bore, ok := ShaftBore(c.Light.Furnace)
	if !ok {
		return
	}
	w := newWalk(&c.State, bore)
	c.walks = append(make([]walk, 0, len(c.Lines)+1), w)
	for _, l := range c.Lines {
		if ev, ok := l.Event.(entry.Dip); ok {
			w.sinkTo(l.At)
			if h, ok := dipped(ev, c.Light.Furnace); ok {
				c.Dips = append(c.Dips, Dipped{l.At, h, w.level})
			}
		}
		if w.take(l, c.scale, remarks) {
			c.walks = append(c.walks, w)
		}
	}
}
