package words

import (
	"fmt"
	"math"
	"strings"

	"chargehand/model/figure"
	"chargehand/model/solve"
	"chargehand/physics"
	"chargehand/physics/shaft"
)

// What is said beside the furnace as it is worked out.
const (
	BeingWorkedOut = "being worked out" // beside figures of entries as they were before
	NotesWorkedOut = "notes being worked out"
	HearthWord     = "hearth"
	SlagIsGuess    = "slag a guess"
	BloomIsOut     = "the bloom is out"
)

// SolverStatus says why the furnace is not computed, and what would let it be.
func SolverStatus(l solve.Status) string {
	switch l {
	case solve.NoFire:
		return "nothing to work out before the fill"
	case solve.NoAir:
		return "needs the blast in l/min, or a few weighed charges without it"
	case solve.IsLost:
		return "lost touch with the furnace: an entry cannot be right, or half a day is missing"
	case solve.IsOver:
		return BloomIsOut
	case solve.NoBlast:
		return "nothing to work out before the blast blows through the fill"
	case solve.Begins:
		return "the blast has just begun: in seconds"
	}
	return ""
}

// SolverStatusBrief is the same where there is little room, the longest first; none
// where it is short.
func SolverStatusBrief(l solve.Status) []string {
	switch l {
	case solve.NoFire:
		return []string{"nothing before the fill", "before the fill"}
	case solve.NoAir:
		return []string{"needs the blast in l/min", "needs l/min"}
	case solve.IsLost:
		return []string{"lost: an entry is wrong, or missing", "lost touch"}
	case solve.NoBlast:
		return []string{"nothing before the blast", "before the blast"}
	case solve.Begins:
		return []string{"in seconds"}
	}
	return nil
}

// MeterNotBelieved is said where more carbon burned than the metered blast can burn, or
// less than it must, and beside the zones that rest on that blast.
const MeterNotBelieved = "the meter is not believed"

// ZonesDoubt is what has to be said beside the zones of the shaft; nothing when all is
// well.
func ZonesDoubt(r *figure.Reading) string {
	if t := SolverTrouble(r); t != "" {
		return t
	}
	if r.MeterDoubted() && r.Solver != figure.Unsolved {
		return MeterNotBelieved
	}
	if r.BeyondReadings() {
		return fmt.Sprintf("hotter than %s was read in no furnace of this kind; the hottest places lay at %s to %s: a guess, and likely less",
			Units{}.Value(shaft.HottestReadHigh, "°C", 0), Units{}.Value(shaft.HottestReadLow, "°C", 0), Units{}.Value(shaft.HottestReadHigh, "°C", 0))
	}
	return ""
}

// DoesNotFollow is said where the solver goes another way than the furnace.
const DoesNotFollow = "the model does not follow this furnace"

// SolverTrouble says why the furnace is not computed, or that what is computed
// is not this furnace; nothing when all is well.
func SolverTrouble(r *figure.Reading) string {
	if r.Status == solve.Computes && r.Astray {
		return DoesNotFollow
	}
	return SolverStatus(r.Status)
}

// Carbon is what a smith would call the iron.
func Carbon(c physics.CarbonClass) string {
	return [...]string{
		physics.SoftIron: "soft iron", physics.SteelyIron: "steely iron", physics.Steel: "steel",
		physics.HighCarbon: "high-carbon steel", physics.CastIron: "cast iron",
	}[c]
}

// CarbonSpan is what it lies between, and what the slag does about it.
func CarbonSpan(s figure.CarbonSpan) string {
	slag := "; the slag does not protect it"
	if s.Protected {
		slag = "; the slag protects it"
	}
	return carbonBetween(s) + slag
}

// CarbonShort is what it lies between alone, where there is little room.
func CarbonShort(s figure.CarbonSpan) string { return carbonBetween(s) }

func carbonBetween(s figure.CarbonSpan) string {
	if s.Low == s.High {
		return Carbon(s.Low)
	}
	return Carbon(s.Low) + " to " + Carbon(s.High)
}

// Solved is what the shaft solver adds to the plain lines of a reading: the iron,
// what it lacks, and the zones from the top.
func Solved(r *figure.Reading) string {
	var b strings.Builder
	line := func(name, value string) { fmt.Fprintf(&b, "  %-20s %s\n", name, value) }
	if end := r.Figure(figure.BloomEnd); end.Known() && !r.Bloom.Known {
		line("bloom to come", fmt.Sprintf("%s: %s; %s", OreOf(r), joined(PerTen(r.Figure(figure.Yield)), OwnMix(r)), joined(OrNone(r.Figure(figure.NoBloom)), OwnEnds(r))))
	}
	if r.Figure(figure.BloomCarbon).Known() {
		line("iron so far", CarbonSpan(r.Carbon)+", "+r.Figure(figure.BloomCarbon).Basis.String())
		p, m := r.Traces.Phosphorus.Scale(100), r.Traces.Manganese.Scale(100)
		line("of the ore's", fmt.Sprintf("phosphorus %.0f to %.0f %% goes into the iron, manganese %.0f to %.0f %%, %s", p.P10, p.P90, m.P10, m.P90, figure.Guessed))
	}
	if r.Running != (physics.Running{}) {
		line("slag", RunsWhole(r.Running))
	}
	if len(r.Poorer) > 0 {
		line("slag at that heat", SlagByIron(r.Poorer))
	}
	switch {
	case r.Solver == figure.Resolving:
		line("furnace", BeingWorkedOut)
	case r.Solver == figure.Solved && ZonesDoubt(r) != "":
		line("furnace", ZonesDoubt(r))
	}
	for _, z := range r.Zones {
		wall, spread := z.AtTheWall()
		at := Units{}.About(spread.P10, wall, spread.P90) + " at the wall"
		if z.WallSide.Known {
			at += ", " + Units{}.About(z.Spread.P10, z.Degrees, z.Spread.P90) + " in the middle"
		}
		line(fmt.Sprintf("%.0f to %.0f cm", z.Bottom, z.Top), fmt.Sprintf("%s, %s, %s", Process(z.What), at, z.Basis))
	}
	return b.String()
}

// SlagByIron is how stiff a slag would be with other shares of iron, the reason
// why one with too little does not run.
func SlagByIron(points []figure.SlagPoint) string {
	said := make([]string, len(points))
	for i, p := range points {
		said[i] = fmt.Sprintf("%s with %.0f %% FeO", Stiffness(p.Stiffness), p.Ferrous)
	}
	return strings.Join(said, ", ")
}

// frozen is from how many Pa s a slag counts as standing still: thick as a paste
// (order of magnitude, from memory, unverified).
const frozen = 100.0

const paS = " Pa s"

// Stiffness is how a slag of so many Pa s runs, in a number as far as that says
// anything.
func Stiffness(v float64) string {
	if v >= frozen {
		return "does not run"
	}
	return plain(Rough(v)) + paS
}

// Rough keeps two digits of a number that is known to a factor or so.
func Rough(v float64) float64 {
	if v <= 0 {
		return v
	}
	step := math.Pow(10, math.Floor(math.Log10(v))-1)
	return math.Round(v/step) * step
}

// Range is a band too wide for a middle: "1 to 11 kg".
func (u Units) Range(low, high float64, unit string, decimals int) string {
	return fixed(u.Shown(low, unit), decimals) + " to " + fixed(u.Shown(high, unit), decimals) + " " + u.Name(unit)
}

// SolverBroke says that the shaft solver broke down on a smelt.
func SolverBroke(err error) string {
	return "the computed figures could not be worked out (" + err.Error() + "); the others stand"
}
