package fold

import (
	"time"

	"chargehand/model/entry"
	"chargehand/model/grow"
	"chargehand/model/pace"
	"chargehand/physics"
)

// State is a smelt at a moment, as known by one entry.
type State struct {
	Known    uint64
	At       time.Duration
	Lit      time.Time // wall time of light, in force
	Light    entry.Light
	Lines    grow.Pages[Line] // those that say something of the smelt, in force and happened by At, in order
	Phase    entry.Phase
	Since    time.Duration // when the phase began
	Turns    []Turn        // every phase that began, in order
	Charges  []Charge
	Pace     pace.Log // the time between them
	Charcoal Total    // fill included
	Ore      Total
	// OrePlanned is the ore that the plan has for the whole smelt, kg dry.
	OrePlanned  entry.Maybe[float64]
	Blast       []Blast       // every change, in order; the last one is in force
	Blower      []entry.Blast // what the blower gave at settings that were metered
	Level       physics.Level
	LevelAt     time.Duration // last observation of the level by a dip; negative for none
	HasLevel    bool          // the furnace's bore and stack are known and something was put in, so there is a level
	Uneven      float64       // by how many times the pace of this smelt is in more doubt than on a usual day, 1 at the least; 0 where there is no level
	Recipe      []Part        // what the next charge is
	Paused      bool
	OreHeld     bool
	LastOre     bool
	By          string
	SlagWeighed entry.Kilogram // what was weighed of its slag so far, taps and tubs together; until then how much there is, and so how high it stands, rests on the model alone
	Bloom       entry.Maybe[entry.Kilogram]
	BloomNever  bool                       // it was said that the bloom will not be weighed, and it was not
	Ambient     entry.Maybe[entry.Celsius] // the air outside, when somebody read it
	Measures    []entry.Measure            // by name as first met, with what they weigh at At
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
	return Trace(entries, known, at).State
}
