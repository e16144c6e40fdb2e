package rule

import "time"

// Heard says what the bell sounds for. It is a choice of the house; the zero value, an
// act only, is the first.
type Heard int

// What it sounds for.
const (
	HeardAct Heard = iota // a warning that wants an act, and what one asked to be reminded of
	HeardAll              // a charge that is due as well
	HeardOff              // nothing
	heards
)

var heardWords = [heards]string{"act", "all", "off"}

// String is the word under which the house keeps the choice.
func (h Heard) String() string { return heardWords[h] }

// Next is the choice after this one, the first again after the last.
func (h Heard) Next() Heard { return (h + 1) % heards }

// HeardOf is the choice of a word; an act only for one that is not known.
func HeardOf(word string) Heard {
	for h, w := range heardWords {
		if w == word {
			return Heard(h)
		}
	}
	return HeardAct
}

// Sound is what the bell goes by at one moment.
type Sound struct {
	Heard    Heard
	Replayed bool          // the past is shown: nothing sounds
	At       time.Duration // any clock that only runs on
	Warnings []Warning     // that stand, as Active gives them
	Charges  int           // how many went in
	Waits    bool          // one is waited for: nothing stands still, and there is a forecast
	Left     time.Duration // until the middle of that forecast
	Reminded time.Time     // when something one asked to be reminded of last came up; zero for never
}

// againAfter is how long after it sounded for an act the bell sounds again, until the
// warning is acknowledged or clears.
const againAfter = time.Minute

// Bell is what has sounded so far. It is a value; the zero Bell has been silent.
type Bell struct {
	acts     bool          // it has sounded for the acts that stand
	acted    time.Duration // when it last did
	standing int           // how many there were then
	charges  int           // for the charge after so many it has sounded
	reminded time.Time     // for what one asked to be reminded of, up to then
}

// Ring tells whether the bell sounds at a moment, and what it remembers of that: for an
// act at once, for another one beside it, and again each minute until somebody has seen
// it; once for a charge that falls due by the middle of the forecast and is not keyed;
// once each time something asked for comes up. Whoever opens a smelt hears what stands.
func (b Bell) Ring(s Sound) (Bell, bool) {
	if s.Replayed {
		return b, false
	}
	acts := 0
	for _, w := range s.Warnings {
		if w.Raised() && w.Grade == Act && !w.Acknowledged {
			acts++
		}
	}
	act := acts > 0 && (!b.acts || acts > b.standing || s.At-b.acted >= againAfter)
	due := s.Waits && s.Charges > 0 && s.Left <= 0 && s.Charges != b.charges
	asked := s.Reminded.After(b.reminded)
	b.acts, b.standing = acts > 0, acts
	if act {
		b.acted = s.At
	}
	if due {
		b.charges = s.Charges
	}
	if asked {
		b.reminded = s.Reminded
	}
	return b, s.Heard != HeardOff && (act || asked || due && s.Heard == HeardAll)
}
