package house

import (
	"math"
	"time"

	"chargehand/model/entry"
)

// Lot is a lot with what came, what went and what is left of it.
type Lot struct {
	entry.Lot               // as last described
	ID        entry.UID     // its uid, else its name
	Assays    []entry.Assay // of this lot, in order; the last counts
	Came      Mass          // given to it
	Went      Mass          // taken from it
	Left      Mass          // what there is; less than nothing says Short
	Volume    float64       // m3 stacked, of what was said so, less what went so
	Counted   time.Time     // when it was last counted; zero for never
	Changes   []Change      // in order
	damp      bool          // its description says its moisture
	roasted   bool          // a roast gave it, or it came of ore that was
}

// Change is one line of a lot's came and went.
type Change struct {
	At    time.Time
	Seq   uint64     // the entry of the house stream, 0 for a smelt's
	Smelt string     // the smelt's stream
	Does  entry.Does // the deed, if it is one
	Dry   Mass       // taken is less than nothing; of a count what there was
	Kg    float64    // as it weighed then, water and all; 0 where nobody weighed it
	Count bool
	Took  bool    // from the lot, not given to it
	Off   float64 // kg dry that a count found more than was thought; nought where that was not known

	guessed bool // dried by the usual moisture of its material, since nobody had said any
}

// Roasted tells whether a roast gave the lot, it was crushed, sieved or put together of ore that was roasted, or its assay is
// of roasted ore.
func (l Lot) Roasted() bool {
	if n := len(l.Assays); n > 0 && (l.Assays[n-1].Basis == entry.AsRoasted || l.Assays[n-1].Basis == entry.AsIgnited) {
		return true
	}
	return l.roasted
}

// Fines tells whether a lot is what fell through a sieve or was crumbled in a burn: it has
// no size at all, and counts in no sum of what can be charged.
func (l Lot) Fines() bool { return len(l.Sizes) == 1 && l.Sizes[0].Over == 0 }

// AsFines is a lot described as such.
func AsFines(l entry.Lot) entry.Lot {
	l.Sizes = []entry.SizeShare{{Over: 0, Share: 1}}
	return l
}

// Weight is what a dry mass of the lot weighs as it lies: with its water.
func (l Lot) Weight(dry float64) float64 { return Weight(l.Lot, dry) }

// Snapshot is the lot as a smelt takes it down when it is lit: with what is left
// of it now, as it weighs, where that is known, and its last assay. The smelt then
// reckons how long it lasts.
func (l Lot) Snapshot() entry.Lot {
	s := l.Lot
	s.Mass = entry.None[entry.Kilogram]()
	if l.Left.Known() {
		s.Mass = entry.Some(entry.Kilogram(max(l.Weight(l.Left.Kg), 0)))
	}
	if n := len(l.Assays); n > 0 {
		s.Assay = &l.Assays[n-1]
	}
	return s
}

// shortFrom is from how many kilograms below nothing a lot is said to be short:
// what weighing rounds off.
const shortFrom = 0.05

// Short is by how many kilograms, dry, more was used than there was. Then an
// entry is wrong, or it has to be counted again.
func (l Lot) Short() (kg float64, short bool) {
	if l.Left.More || l.Left.Kg > -shortFrom {
		return 0, false
	}
	return -l.Left.Kg, true
}

// asItLay is for how long after a weighing a first sample dried still tells how wet a lot
// was when it was weighed: longer, and it has dried in the heap or was rained on (assumed).
const asItLay = 72 * time.Hour

// lay takes the first moisture that is said of a lot for that of the weighings shortly
// before, which were dried by a guess. It changes nothing where one of them is older, where
// a smelt drew on the lot with the guess, or where it was dried since.
func (l *Lot) lay(described entry.Lot, at time.Time) {
	for _, c := range l.Changes {
		if !c.guessed || at.Sub(c.At) > asItLay || c.Does == entry.Dried || c.Does == entry.Seasoned {
			return
		}
	}
	by := (1 + moistureOf(l.Lot)) / (1 + moistureOf(described))
	for _, m := range []*Mass{&l.Came, &l.Went, &l.Left} {
		m.Kg, m.SD = by*m.Kg, by*m.SD
	}
	for i := range l.Changes {
		c := &l.Changes[i]
		c.Dry.Kg, c.Dry.SD, c.Off = by*c.Dry.Kg, by*c.Dry.SD, by*c.Off
	}
}

func (l *Lot) give(c Change) {
	l.Came, l.Left = l.Came.Plus(c.Dry), l.Left.Plus(c.Dry)
	l.Changes = append(l.Changes, c)
}

func (l *Lot) take(c Change) {
	l.Went, l.Left = l.Went.Plus(c.Dry), l.Left.Minus(c.Dry)
	c.Took, c.Dry.Kg = true, -c.Dry.Kg
	l.Changes = append(l.Changes, c)
}

// count sets what there is. "Some" counted is no count.
func (l *Lot) count(c Change) {
	if !c.Dry.Known() {
		l.Left.More, l.Left.Less = true, true
		l.Changes = append(l.Changes, c)
		return
	}
	if len(l.Changes) > 0 && l.Left.Known() {
		c.Off = c.Dry.Kg - l.Left.Kg
	}
	if len(l.Changes) == 0 { // the first count is all there ever was of it
		l.Came = c.Dry
	}
	c.Count, l.Left, l.Counted = true, c.Dry, c.At
	l.Changes = append(l.Changes, c)
}

func sqrt(v float64) float64 { return math.Sqrt(max(v, 0)) }
