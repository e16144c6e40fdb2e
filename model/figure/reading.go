package figure

import (
	"time"

	"chargehand/model/entry"
	"chargehand/model/forecast"
	"chargehand/model/solve"
	"chargehand/physics"
)

// Figure is one figure with its spread: the 10th, 50th and 90th percentile in
// the unit of Table, and what it rests on. An unknown figure has no value; of
// a total with unknown parts the known part stands in AtLeast.
type Figure struct {
	physics.Band
	Basis   Basis
	AtLeast entry.Maybe[float64]
}

// wide is from how many times its low end the high end of a band tells nothing in
// numbers.
const wide = 30

// Wide tells whether the ends of the band lie so far apart that it is said in words.
func (f Figure) Wide() bool { return f.Known() && f.P10 > 0 && f.P90 > wide*f.P10 }

// Known tells whether the figure has a value.
func (f Figure) Known() bool { return f.Basis != Unknown }

// none is a figure without a value.
var none = Figure{Basis: Unknown}

// Layer is one charge as it stands in the shaft: a slice of the burden between
// two heights above the tuyere. The fill is charge 0.
type Layer struct {
	Charge      int           // number of the charge, 0 for the fill
	Seq         uint64        // its entry
	Top, Bottom float64       // cm above the tuyere
	Charcoal    Figure        // kg as charged, of what is left of the charge
	Ore         Figure        // kg, likewise
	Age         time.Duration // since it was charged
}

// Zone is what happens in a stretch of the shaft. Until the solver feeds it,
// the temperature is a stated simple guess and there is none of the wall side.
type Zone struct {
	What        Process
	Top, Bottom float64      // cm above the tuyere
	Degrees     float64      // Celsius, in the middle of the stretch; solved, the mean across the bore
	Spread      physics.Band // of Degrees, Celsius
	WallSide    entry.Maybe[entry.Celsius]
	WallSpread  physics.Band // of WallSide, Celsius
	Gas         Gas          // what of it is known
	Basis       Basis
}

// AtTheWall is the temperature that a peep or a probe sees in the zone, with its
// spread, Celsius: that of the wall side. The guess is one of readings there.
func (z Zone) AtTheWall() (celsius float64, spread physics.Band) {
	if z.WallSide.Known {
		return float64(z.WallSide.Value), z.WallSpread
	}
	return z.Degrees, z.Spread
}

// Process is what happens at a height of the shaft.
type Process int

// From the top of the stack to the bottom of the hearth.
const (
	Drying      Process = iota // water leaves
	Roasting                   // ore gives off its bound water
	RedToBlack                 // Fe2O3 to Fe3O4
	LosesOxygen                // Fe3O4 to FeO
	IronForms                  // FeO to iron
	SlagRuns                   // FeO and gangue run
	Burning                    // charcoal burns in the blast
	Heating                    // charcoal gets hot, where there is no ore yet
)

// Charge is one charge as it counts, for the history strip and the lines of
// the log: charcoal entries and the ore that belongs to them.
type Charge struct {
	Number   int
	Seq      uint64
	At       time.Duration // on the smelt's clock
	Minutes  float64       // since the charge before it; 0 for the first
	Charcoal Figure        // kg as charged
	Ore      Figure        // kg as charged, of every ore entry that belongs to it
	Measures entry.Count   // of charcoal; 0 when it was not counted
	Ratio    Figure
	Parts    entry.Parts // as keyed, of all its entries
	Double   bool        // a second full charge within a quarter of the usual interval
}

// Part is one part of the recipe with what it weighs.
type Part struct {
	entry.Part
	Mass Figure
}

// Reading is everything that is known of a smelt at one moment, as known by
// one entry: what a screen paints, what state prints. It is large and handed on
// by pointer, to be read and never changed; two of the same entries, known and at
// hold the same.
type Reading struct {
	Smelt                  string
	At                     time.Duration // on the smelt's clock
	Known                  uint64        // the last entry that was known
	Lit                    time.Time     // wall time of light
	Light                  entry.Light
	Phase                  entry.Phase
	Since                  time.Duration // when the phase began
	Figures                [Count]Figure
	Charges                []Charge
	Layers                 []Layer // from the top
	Zones                  []Zone  // from the top
	Next                   []Part  // the recipe: what the next charge is
	NextRatio              Figure
	Due                    forecast.Due // when the next charges are due; see HasDue
	HasDue                 bool
	Blast                  entry.Blast   // as last observed, with what the entries since left standing
	BlastAt                time.Duration // when it was, or since when it is off
	BlastOff               bool
	PressedAt              time.Duration        // when the pressure before the tuyere was last read; see BackPressure
	Blower                 []entry.Blast        // what the blower gave at settings that were metered
	Dipped                 entry.Maybe[float64] // when the level was last measured, s on the smelt's clock
	Paused                 bool
	OreHeld                bool
	LastOre                bool
	Uneven                 float64              // by how many times the pace is in more doubt than on a usual day, 1 at the least; 0 where there is no level
	By                     string               // who is in charge
	Bloom                  entry.Maybe[float64] // kg, once weighed
	BloomNever             bool                 // it was not, and it was said that it will not be
	OreTaken               Figure               // kg dry: the ore of the whole smelt, where the past is shown and that is known; else zero
	OwnYields              int                  // how many own smelts on this ore mix stand behind the yield; 0 where the plan promised it
	OwnSmelts, OwnFailures int                  // how many own smelts, and how many without a compact bloom, stand behind the chance of none
	Unfilled               bool                 // neither fill nor charge was keyed: the first charge would go into an empty shaft
	Usual                  time.Duration        // this smelt's usual interval between charges; 0 before the second
	Measures               []entry.Measure      // by name, with what they weigh now
	Solver                 Solver               // how the figures and zones of the shaft solver stand
	Status                 solve.Status         // whether it computes, and why not, once it was asked
	Astray                 bool                 // it does not follow this furnace: what it gives is a guess
	Poorer                 []SlagPoint          // how stiff this slag would be with other shares of iron
	Traces                 Traces               // zero without iron
	SlagWeighed            entry.Maybe[float64] // kg of its slag on the scales so far: since then how high it stands in the hearth can be told
	Carbon                 CarbonSpan           // what a smith would call the iron gathered so far; see BloomCarbon
	Signs                  Signs                // what was seen that tells of the hearth's heat
	Running                physics.Running      // how the slag runs, as chances; zero while there is too little of it
}

// SlagPoint is how stiff the slag in the hearth would be, at the same heat, with
// another share of iron in it.
type SlagPoint struct {
	Ferrous   float64 // per cent of the mass, all iron counted as FeO
	Stiffness float64 // Pa s
}

// Traces is where the ore's phosphorus and manganese go: the share of each, of
// what was charged, that ends in the iron. Notes to a smith.
type Traces struct{ Phosphorus, Manganese physics.Band }

// CarbonSpan is between what classes the iron lies, and whether the slag over it
// keeps it soft: one with free iron oxide does.
type CarbonSpan struct {
	Low, High physics.CarbonClass
	Protected bool
}

// Solver says how the figures of the shaft solver stand in a reading.
type Solver int

// A reading is unsolved until WithSolution puts them in.
const (
	Unsolved  Solver = iota // not asked: they are unknown, the zones a guess
	Solved                  // they are of these entries and this moment
	Resolving               // they are of other entries or an earlier moment: being solved anew
)

// Figure gives a figure by name.
func (r *Reading) Figure(n Name) Figure { return r.Figures[n] }

// Wall is the wall time of a moment of the smelt, in the smelt's own offset.
func (r *Reading) Wall(at time.Duration) time.Time { return r.Lit.Add(at) }

// copied is one to change: a Reading that was handed on is only read.
func (r *Reading) copied() *Reading {
	c := *r
	return &c
}
