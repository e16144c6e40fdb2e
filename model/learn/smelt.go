package learn

import (
	"slices"
	"strings"
)

// Smelt is a smelt that is over, as far as it teaches anything.
type Smelt struct {
	Date string // as 2026-05-09, 2026-05 or 2026; blank when unknown
	Crew string
	Mix  Mix
	Ore  float64 // kg dry, iron-rich slag that was charged counted with it; see [SlagAsOre]
	// Bloom is in kg, cold, not compacted; 0 when there was no compact bloom.
	Bloom float64
}

// Yield gives kg of bloom per kg of ore, and whether there was a bloom.
func (s Smelt) Yield() (float64, bool) { return s.Bloom / s.Ore, s.Bloom > 0 && s.Ore > 0 }

// UsualOreIron and UsualSlagIron are the shares of iron taken for a roasted ore
// and for iron-rich slag of which nothing is known (assumed; 14 published slags of
// this trade hold 31 to 58 %, Freiberger Forschungshefte D 6, table 2).
const (
	UsualOreIron  = 0.48
	UsualSlagIron = 0.50
)

// SlagAsOre gives how many kg of an ore hold the iron of some kg of iron-rich
// slag: what such slag counts for when it is charged with ore of an iron share.
// An iron share that is not positive is taken for [UsualOreIron].
func SlagAsOre(slag, oreIron float64) float64 {
	if !(oreIron > 0) {
		oreIron = UsualOreIron
	}
	return slag * UsualSlagIron / oreIron
}

// InOrder puts smelts in the order of their dates. Those of one date stay as
// they stand; those without a date come last, so that they teach no other.
func InOrder(smelts []Smelt) []Smelt {
	ordered := slices.Clone(smelts)
	slices.SortStableFunc(ordered, func(a, b Smelt) int {
		if (a.Date == "") != (b.Date == "") {
			return strings.Compare(b.Date, a.Date)
		}
		return strings.Compare(a.Date, b.Date)
	})
	return ordered
}

// OwnYields gives the yields of a crew's earlier smelts on a mix that gave a
// bloom.
func OwnYields(earlier []Smelt, crew string, mix Mix) []float64 {
	var own []float64
	for _, s := range earlier {
		if y, ok := s.Yield(); ok && s.Crew == crew && s.Mix.Same(mix) {
			own = append(own, y)
		}
	}
	return own
}

// Failures gives how many smelts a crew has made, and how many of them gave no
// compact bloom.
func Failures(earlier []Smelt, crew string) (failures, smelts int) {
	for _, s := range earlier {
		if s.Crew == crew {
			smelts++
			if s.Bloom <= 0 {
				failures++
			}
		}
	}
	return failures, smelts
}

// LeftOut counts what a table of smelts holds that is not scored.
type LeftOut struct {
	NoSmelts  int // totals of a year, notes and typical figures
	Unknown   int // ore or bloom not given
	TooLittle int // less ore than asked for
}

// From leaves out the smelts with less ore, in kg, and counts them.
func From(least float64, smelts []Smelt) (kept []Smelt, tooLittle int) {
	for _, s := range smelts {
		if s.Ore >= least {
			kept = append(kept, s)
		}
	}
	return kept, len(smelts) - len(kept)
}
