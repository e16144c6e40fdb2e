package rule

import (
	"cmp"
	"slices"
	"strconv"
	"time"

	"chargehand/model/entry"
	"chargehand/physics"
)

// ID names a rule, on the wire too. It never changes its meaning.
type ID string

// Grade is how soon a warning needs an answer.
type Grade int

// The grades, mildest first.
const (
	Note Grade = iota // good to know
	Look              // go and see
	Act               // do something now
)

var gradeWords = [...]string{"note", "look", "act"}

func (g Grade) String() string {
	if g < Note || g > Act {
		return "grade " + strconv.Itoa(int(g))
	}
	return gradeWords[g]
}

// MarshalText writes the grade as a word.
func (g Grade) MarshalText() ([]byte, error) { return []byte(g.String()), nil }

// Unit is the unit of a piece of evidence, as the wire spells it.
type Unit string

// The units of evidence. A word has none.
const (
	Minutes     Unit = "min"
	Kilograms   Unit = "kg"
	Centimetres Unit = "cm"
	Degrees     Unit = "C"
	Kelvin      Unit = "K" // of a difference
	Ratio       Unit = "kg/kg"
	Percent     Unit = "%"
	Pascals     Unit = "Pa"
	Count       Unit = "count"
	CarbonShare Unit = "carbon" // of iron, by mass: told as what a smith calls it
	PerArea     Unit = "l/min/cm2"
	Word        Unit = ""
)

// Value is one piece of evidence.
type Value struct {
	Name   string // what it is, as the sentence of the rule calls it
	Number float64
	Unit   Unit
	Word   string // instead of a number, when Unit is Word

	Low, High float64 // its 10th and 90th percentile, where it has a spread
}

// Evidence is what a warning rests on, as it was last while that held: beside figures of
// now, one of when it was raised would contradict them.
type Evidence []Value

// Of gives the value of a name.
func (e Evidence) Of(name string) (Value, bool) {
	i := slices.IndexFunc(e, func(v Value) bool { return v.Name == name })
	if i < 0 {
		return Value{}, false
	}
	return e[i], true
}

func number(name string, v float64, u Unit) Value { return Value{Name: name, Number: v, Unit: u} }

// spread is a number with its spread.
func spread(name string, b physics.Band, u Unit) Value {
	return Value{Name: name, Number: b.P50, Unit: u, Low: b.P10, High: b.P90}
}

func minutes(name string, d time.Duration) Value { return number(name, d.Minutes(), Minutes) }

func word(name, w string) Value { return Value{Name: name, Word: w} }

// Warning is one time that a rule was raised.
type Warning struct {
	Rule         ID
	Grade        Grade
	Onset        time.Duration // on the smelt's clock, on the grid
	Cleared      time.Duration // 0 while it is raised
	Evidence     Evidence
	Acknowledged bool
}

// Raised tells whether the warning stands.
func (w Warning) Raised() bool { return w.Cleared == 0 }

// stood tells whether the warning stood at a moment.
func (w Warning) stood(at time.Duration) bool {
	return at >= w.Onset && (w.Raised() || at < w.Cleared)
}

// Active gives the warnings that stand, gravest first; of one grade those that
// nobody has acknowledged first, and then the newest first.
func Active(ws []Warning) []Warning {
	var active []Warning
	for _, w := range ws {
		if w.Raised() {
			active = append(active, w)
		}
	}
	seen := func(w Warning) int {
		if w.Acknowledged {
			return 1
		}
		return 0
	}
	slices.SortStableFunc(active, func(a, b Warning) int {
		return cmp.Or(cmp.Compare(b.Grade, a.Grade), cmp.Compare(seen(a), seen(b)), cmp.Compare(b.Onset, a.Onset))
	})
	return active
}

// acknowledge marks what a person has seen. The onset may have moved since, by an entry
// made late, and the whole clock with the grid on it, where the light was put right: the
// warning that stood as the key was pressed is meant all the same, or the one that the
// grid now brings up just after it. Only where there is none the onset tells.
func acknowledge(ws []Warning, at time.Duration, a entry.Acknowledge) {
	onset := time.Duration(a.OnsetMs) * time.Millisecond
	for _, means := range []func(Warning) bool{
		func(w Warning) bool { return w.stood(at) },
		func(w Warning) bool { return w.Onset > at && w.Onset-at <= Grid },
		func(w Warning) bool { return w.Onset == onset },
	} {
		found := false
		for i := range ws {
			if ws[i].Rule == ID(a.Rule) && means(ws[i]) {
				ws[i].Acknowledged, found = true, true
			}
		}
		if found {
			return
		}
	}
}
