package fold

import (
	"time"

	"chargehand/model/entry"
	"chargehand/physics"
)

// State is a smelt at a moment, as known by one entry.
type State struct {
	Known    uint64
	At       time.Duration
	Lit      time.Time // wall time of light, in force
	Light    entry.Light
	Lines    []Line // in force and happened by At, in order
	Phase    entry.Phase
	Since    time.Duration // when the phase began
	Turns    []Turn        // every phase that began, in order
	Charges  []Charge
	Charcoal Total // fill included
	Ore      Total
	Blast    []Blast       // every change, in order; the last one is in force
	Blower   []entry.Blast // what the blower gave at settings that were metered
	Level    physics.Level
	LevelAt  time.Duration // last observation of the level by a dip; negative for none
	HasLevel bool          // the furnace's bore and stack are known and something was put in, so there is a level
	Recipe   []Part        // what the next charge is
	Paused   bool
	OreHeld  bool
	LastOre  bool
	By       string
	Bloom    entry.Maybe[entry.Kilogram]
	Ambient  entry.Maybe[entry.Celsius] // the air outside, when somebody read it
	Measures []entry.Measure            // by name as first met, with what they weigh at At
}

// Total is a sum of charges, as charged and dry.
type Total struct {
	Charged, Dry Mass
}

func (t Total) plus(o Total) Total {
	return Total{t.Charged.Plus(o.Charged), t.Dry.Plus(o.Dry)}
}

// Part is one part of the recipe with what it weighs.
type Part struct {
	entry.Part
	Mass Mass
}

// Fold gives the state at a moment on the smelt's clock, from the entries up to
// known (All for every one). Without a light there is no smelt and the state is
// empty.
func Fold(entries []entry.Entry, known uint64, at time.Duration) State {
	all := Lines(entries, known)
	held := inForce(all)
	s := State{Known: known, At: at, LevelAt: -1}
	if len(all) > 0 {
		s.Known = min(known, all[len(all)-1].Seq())
	}
	light, ok := lightOf(held)
	if !ok {
		return s
	}
	s.Light = light.Event.(entry.Light)
	s.Lit = light.Entry.Happened
	if by := light.AmendedBy; by != 0 {
		if a, ok := amendOf(all, by); ok && !a.Happened.IsZero() {
			s.Lit = a.Happened
		}
	}
	scale := newScales(s.Light, held)
	remarks := remarksOf(held)
	s.Lines = happened(held, at)
	s.phases()
	s.Charges = charges(s.Lines, scale, remarks, s.Light.Furnace.OreUnder)
	s.totals(scale)
	by := blowerOf(s.Light.Furnace, held, AirAt(s.Light.Furnace, entry.None[entry.Celsius]()))
	s.Blast, s.Blower = blasts(s.Lines, s.Light.Furnace, by), by.seen
	s.level(scale, remarks)
	s.recipe(scale)
	s.rest(scale)
	return s
}

func lightOf(held []Line) (Line, bool) {
	for _, l := range held {
		if _, ok := l.Event.(entry.Light); ok {
			return l, true
		}
	}
	return Line{}, false
}

func amendOf(all []Line, seq uint64) (entry.Amend, bool) {
	for _, l := range all {
		if l.Seq() == seq {
			a, ok := l.Event.(entry.Amend)
			return a, ok
		}
	}
	return entry.Amend{}, false
}

func happened(held []Line, at time.Duration) []Line {
	for i, l := range held {
		if l.At > at {
			return held[:i]
		}
	}
	return held
}

// totals adds up all that went in: fills, charges and ore on its own.
func (s *State) totals(scale scales) {
	for _, l := range s.Lines {
		parts := entry.PartsIn(l.Event)
		c, cd := scale.sum(parts, entry.Charcoal, l.At)
		o, od := scale.sum(parts, entry.Ore, l.At)
		s.Charcoal = s.Charcoal.plus(Total{c, cd})
		s.Ore = s.Ore.plus(Total{o, od})
	}
}

// rest gathers what is read straight off the lines.
func (s *State) rest(scale scales) {
	for _, l := range s.Lines {
		if l.Entry.By != "" {
			s.By = l.Entry.By
		}
		switch ev := l.Event.(type) {
		case entry.Pause:
			s.Paused = true
		case entry.Resume:
			s.Paused = false
		case entry.HandOver:
			s.By = ev.To
		case entry.Weigh:
			if ev.What == entry.WeighBloom && !ev.Closed {
				s.Bloom = entry.Some(ev.Mass)
			}
		case entry.Temperature:
			if ev.Where == WhereOutside {
				s.Ambient = entry.Some(ev.Degrees)
			}
		}
	}
	for _, m := range s.Light.Measures {
		w, _ := scale.of(m.Name, s.At)
		m.Mass, m.Guessed = entry.None[entry.Kilogram](), w.guessed
		if w.known {
			m.Mass = entry.Some(entry.Kilogram(w.kg))
		}
		s.Measures = append(s.Measures, m)
	}
}
