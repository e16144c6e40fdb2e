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
	Hours     float64
	Intervals int
	Charcoal  Total
	Ore       Total
	Measures  entry.Count
	Counted   bool // every charge was counted in measures
}

// lastIntervals is over how many intervals the burn rate goes.
const lastIntervals = 3

// Burning is the burn over the last three intervals, fewer in the beginning. The
// time without blast is left out: next to nothing burned in it.
func (s State) Burning() (Burn, bool) {
	b, ok := burnOver(s.Charges)
	if ok {
		b.Hours -= s.Unblown(b.From, b.To).Hours()
	}
	return b, ok
}

// Unblown is how long the blast was off between two moments.
func (s State) Unblown(from, to time.Duration) time.Duration {
	var off time.Duration
	for i, b := range s.Blast {
		until := to
		if i+1 < len(s.Blast) {
			until = min(to, s.Blast[i+1].At)
		}
		if begin := max(from, b.At); b.Off && until > begin {
			off += until - begin
		}
	}
	return off
}

// Together is how soon after a charge another one is still the same charge: no
// furnace eats a charge in two minutes (the least interval of the logs in testdata is
// four), so what follows so fast was put in or keyed together. It says nothing of
// the burn, nor of when the next charge is due.
const Together = 2 * time.Minute

func burnOver(cs []Charge) (Burn, bool) {
	n := min(lastIntervals, len(cs)-1)
	if n < 1 {
		return Burn{}, false
	}
	b := BurnBetween(cs[len(cs)-1-n:])
	return b, b.To-b.From >= time.Duration(n)*Together
}

// BurnBetween is the burn from the first to the last of some charges. What the
// first one holds burned before it, or lies in the shaft still.
func BurnBetween(cs []Charge) Burn {
	first, last := cs[0], cs[len(cs)-1]
	b := Burn{From: first.At, To: last.At, Hours: (last.At - first.At).Hours(), Intervals: len(cs) - 1, Counted: true}
	for _, c := range cs[1:] {
		b.Charcoal = b.Charcoal.plus(c.Charcoal)
		b.Ore = b.Ore.plus(c.Ore)
		b.Measures += c.Measures
		b.Counted = b.Counted && c.Measures > 0
	}
	return b
}
