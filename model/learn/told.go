package learn

import "chargehand/physics"

// FewSmelts is below how many smelts on a mix nothing is said of what they teach
// beyond the forecast itself.
const FewSmelts = 5

// Told is what the smelts on one mix teach the next.
type Told struct {
	Mix        string
	Yields     []float64    // kg of bloom, cold and not compacted, per kg of ore
	Compacted  []float64    // kg of compacted bloom per kg of ore
	Next       physics.Band // of the next smelt that gives a bloom
	Billets    []float64    // kg of billet per kg of ore, of those whose billets were all weighed
	NextBillet physics.Band // kg of billet per kg of ore of the next smelt that gives a bloom
}

// Few tells whether there are too few to tell more than the forecast.
func (t Told) Few() bool { return len(t.Yields) < FewSmelts }

// Told gives what a house's smelts teach, a mix at a time, as first met.
func (h History) Told() []Told {
	var all []Told
	for _, m := range h.mixes {
		t := Told{Mix: m.name}
		for _, s := range m.smelts {
			if s.yield > 0 {
				t.Yields = append(t.Yields, s.yield)
			}
			if s.compacted > 0 {
				t.Compacted = append(t.Compacted, s.compacted)
			}
			if s.billet > 0 {
				t.Billets = append(t.Billets, s.billet)
			}
		}
		t.Next, t.NextBillet = Yield(t.Yields), Billet(t.Billets)
		all = append(all, t)
	}
	return all
}

// Ends gives how many smelts of the house are known to have ended, and how many of
// them gave no compact bloom.
func (h History) Ends() (smelts, failures int) {
	for _, e := range h.ends {
		if e.none {
			failures++
		}
	}
	return len(h.ends), failures
}
