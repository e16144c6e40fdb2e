package solve

import (
	"math"
	"time"

	"chargehand/physics"
	"chargehand/physics/shaft"
)

// Status says whether the shaft is computed, and why not.
type Status int

// What may be so.
const (
	Computes Status = iota // there are figures
	NoFire                 // no charcoal has been filled in yet
	NoAir                  // the blast is unknown, and the charges have not told it yet
	IsLost                 // it was told something that cannot be, or nothing for half a day
	IsOver                 // the bloom is out; the hearth is as it was then
	NoBlast                // the fill is in, and the blast is known to be off
	Begins                 // the blast is known and blows through the fill since less than a step of the grid
)

// Solution is the shaft at a moment, as solved: everything that figures,
// zones and rules read. It is a value that nothing shares.
type Solution struct {
	Known  uint64        // the last entry that was known
	Asked  time.Duration // the moment it was asked for
	At     time.Duration // the moment of the state: the last grid point or event before
	Status Status

	Profile []shaft.Layer // from the bottom up
	Height  float64       // m, of the solver's own burden
	Astray  bool          // the solver does not follow this furnace: the last two charges found it far from the level, or its fire would go out
	Hearth  shaft.Hearth
	Totals  shaft.Totals
	Ambient physics.Air

	// TopGas is its temperature in K and its shares of CO and CO2 over the last
	// minutes; it swings with each charge.
	TopGas struct{ Temperature, CO, CO2 float64 }

	AirFactor physics.Band // of the metered blast; zero when it is not metered
	Intervals int          // charge intervals behind it

	GuessedSizes  bool         // bore or stack were not given
	GuessedAir    bool         // the air is what the charges told, or was until lately
	GuessedMasses bool         // charcoal of unknown mass went in
	UsualOre      bool         // ore that nobody assayed went in, and was taken as a usual one
	UnknownOre    bool         // ore of unknown mass went in
	Bath          physics.Band // m, how deep the slag stands; zero when it does not gather: an open arch, a pit

	history *history
}

// solution reads a run.
func (r *run) solution() Solution {
	s := Solution{
		At: time.Duration(r.shaft.Time() * float64(time.Second)), Status: r.status(),
		GuessedSizes: !r.lit.given, GuessedMasses: r.guessed, UsualOre: r.usual, UnknownOre: r.noOre,
		history: r.seen, Astray: r.astray(),
	}
	if s.Status == NoFire || s.Status == IsLost {
		return s
	}
	now := r.shaft.Time()
	s.GuessedAir = r.standIn >= 0 && now-r.standIn < settled
	s.Profile = r.shaft.AppendProfile(nil)
	s.Height, s.Hearth, s.Totals = r.shaft.StackHeight(), r.shaft.Hearth(), r.shaft.Totals()
	if r.over {
		s.Hearth = r.end
	}
	s.Ambient, s.Bath = r.ambient, r.bath(s.Hearth)
	s.TopGas.Temperature, s.TopGas.CO, s.TopGas.CO2 = r.top.kelvin, r.top.co, r.top.co2
	if r.air.known && r.pace.known {
		s.AirFactor, s.Intervals = r.pace.estimate(), len(r.pace.metered)
	}
	return s
}

func (r *run) status() Status {
	switch {
	case r.over:
		return IsOver
	case r.failed:
		return IsLost
	case !r.filled:
		return NoFire
	case !r.air.known && (r.blownSince < 0 || !r.pace.tells()):
		return NoAir
	case r.blownSince < 0 && r.blows() > 0:
		return Begins
	case r.blownSince < 0:
		return NoBlast
	}
	return Computes
}

const (
	// coolsOff is what share of its fall within coolsOver a hearth that cools may be hotter or colder by (assumed: no published
	// reading tells how fast one cools that gets too little air).
	coolsOff, coolsOver = 1.0 / 3, 2 * time.Hour
)

// HearthBand is the heat of the hearth, K, as far as the solver knows it.
func (s Solution) HearthBand() physics.Band {
	b := shaft.HearthBand(s.Hearth.Temperature, s.Ambient.Temperature)
	fell := 0.0
	for t := s.history; t != nil && s.At-t.At <= coolsOver; t = t.before {
		fell = max(fell, t.Hearth.P50-b.P50)
	}
	b.P10 = max(min(b.P50, s.Ambient.Temperature), b.P50-math.Hypot(b.P50-b.P10, coolsOff*fell))
	b.P90 = b.P50 + math.Hypot(b.P90-b.P50, coolsOff*fell)
	return b
}
