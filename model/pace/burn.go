package pace

import "time"

// Stretch is some whole charges at the end of a Log, each of which brought the burden
// back to the level of the one before: what they hold burned from From to To.
type Stretch struct {
	From, To time.Duration
	Unblown  time.Duration
	Charges  int // how many of the last charges burned in it, every go of them counted
	Wholes   int // how many charges that is, with all goes of one as one
}

// Burning is the time in which it burned.
func (s Stretch) Burning() time.Duration { return s.To - s.From - s.Unblown }

// Last is the stretch over the last so many whole charges, fewer in the beginning,
// and whether there is any. It goes by what had been charged after so many charges,
// every go counted.
func (l Log) Last(wholes, charges int) (Stretch, bool) {
	n := min(charges, l.charges) - 1 // intervals that count
	s := Stretch{}
	for i := n - 1; i >= 0 && s.Wholes < wholes; i-- {
		s.Charges++
		if v := l.intervals.All()[i]; !v.TopUp {
			s.Wholes, s.From = s.Wholes+1, v.From
		}
	}
	if s.Wholes == 0 {
		return Stretch{}, false
	}
	if s.Wholes < wholes { // the goes of the very first charge lie before From
		s.Charges = n - l.goesOfFirst()
	}
	s.To = l.intervals.All()[n-1].To
	s.Unblown = l.Unblown(s.From, s.To)
	return s, true
}

// goesOfFirst is how many intervals are top-ups of the first charge.
func (l Log) goesOfFirst() int {
	n := 0
	for all := l.intervals.All(); n < len(all) && all[n].TopUp; {
		n++
	}
	return n
}
