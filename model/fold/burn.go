package fold

import (
	"time"

	"chargehand/model/entry"
)

// Burn is what burned over some intervals between charges: the burden is
// brought back to the same level by each charge, so what a charge holds is what
// burned since the one before.
type Burn struct {
	From, To  time.Duration
	Hours     float64 // without those in which no blast was on: next to nothing burned in them
	Intervals int     // between whole charges; see package pace
	Charcoal  Total
	Ore       Total
	Measures  entry.Count
	Counted   bool // every charge was counted in measures
}

// lastIntervals is over how many intervals the burn rate goes.
const lastIntervals = 3

// Burning is the burn over the last three intervals, fewer in the beginning.
func (s State) Burning() (Burn, bool) { return s.burning(len(s.Charges)) }

// BurningOver is the burn over the last so many intervals, fewer in the beginning.
func (s State) BurningOver(intervals int) (Burn, bool) { return s.burnOver(intervals, len(s.Charges)) }

// burning is the burn as it was after so many charges.
func (s *State) burning(charges int) (Burn, bool) { return s.burnOver(lastIntervals, charges) }

// burnOver is the burn over so many intervals as it was after so many charges.
func (s *State) burnOver(intervals, charges int) (Burn, bool) {
	over, ok := s.Pace.Last(intervals, charges)
	if !ok {
		return Burn{}, false
	}
	b := Burn{From: over.From, To: over.To, Hours: over.Burning().Hours(), Intervals: over.Wholes, Counted: true}
	for _, c := range s.Charges[charges-over.Charges : charges] {
		b.Charcoal = b.Charcoal.plus(c.Charcoal)
		b.Ore = b.Ore.plus(c.Ore)
		b.Measures += c.Measures
		b.Counted = b.Counted && c.Measures > 0
	}
	return b, b.Hours > 0
}

// Unblown is how long the blast was off between two moments.
func (s State) Unblown(from, to time.Duration) time.Duration { return s.Pace.Unblown(from, to) }
