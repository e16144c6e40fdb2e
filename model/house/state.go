package house

import (
	"slices"
	"time"

	"chargehand/model/entry"
)

// State is the house at a moment.
type State struct {
	Lots      []Lot // as first met
	Furnaces  []Furnace
	Measures  []entry.Measure // as last said, by what was first met
	Plans     []Plan
	Pieces    []Piece
	Settings  map[string]string // as last chosen
	Learnt    []entry.Learnt    // as last taken over, one of each
	Lessons   []entry.Lesson
	Reminders []entry.Remind // not ended
	WallWords entry.WallWords
	Drafts    map[string]Drafted       // by entry.Draft.Place
	Mappings  map[string]entry.Mapping // by name
	Samples   map[string]entry.Assay   // the lab's answers, by label
}

// Furnace is a furnace in its versions.
type Furnace struct {
	ID       entry.UID
	Versions []Version // in order
	Dryings  []Drying  // of the whole time
}

// Version is a furnace as it was from a moment on.
type Version struct {
	From    time.Time
	Seq     uint64
	Why     entry.BuiltWhy
	Furnace entry.Furnace
}

// Drying is a day of drying.
type Drying struct {
	At time.Time
	entry.Drying
}

// At is the version in force at a moment: none before it was built.
func (f Furnace) At(t time.Time) (Version, bool) {
	for i := len(f.Versions) - 1; i >= 0; i-- {
		if !f.Versions[i].From.After(t) {
			return f.Versions[i], true
		}
	}
	return Version{}, false
}

// Last is the newest version.
func (f Furnace) Last() Version { return f.Versions[len(f.Versions)-1] }

// Plan is a plan with what was ticked of its list.
type Plan struct {
	entry.Plan
	Said time.Time
	Done map[string]bool // by line
	Lit  string          // the smelt, by its stream, that was lit by it, or without it in its furnace since; empty while it waits for its fire
}

// Waiting is the last plan that waits for its fire.
func (s State) Waiting() (Plan, bool) {
	for _, p := range slices.Backward(s.Plans) {
		if p.Lit == "" {
			return p, true
		}
	}
	return Plan{}, false
}

// Lot finds a lot by its uid, or by its name where it is no uid.
func (s State) Lot(ref string) (Lot, bool) {
	i := s.lot(idOf(ref))
	if i < 0 {
		return Lot{}, false
	}
	return s.Lots[i], true
}

// lot is the place of a lot, -1 for none. A name finds the lot that has no other
// name, then the last one so called.
func (s State) lot(id entry.UID) int {
	named := -1
	name, byName := id.Name()
	for i, l := range s.Lots {
		if l.ID == id {
			return i
		}
		if byName && l.Name == name {
			named = i
		}
	}
	return named
}

// Left is what is left of a material over all its lots, and by how much lots of
// it are below nothing, which does not lessen the others. Without a lot it is
// not known.
func (s State) Left(m entry.Material) (left Mass, short float64, any bool) {
	for _, l := range s.Lots {
		if l.Of() != m || l.Fines() {
			continue
		}
		any = true
		if kg, is := l.Short(); is {
			short += kg
			continue
		}
		left = left.Plus(l.Left)
	}
	return left, short, any
}

// Furnace finds a furnace by its uid, or by its name.
func (s State) Furnace(ref string) (Furnace, bool) {
	i := s.furnace(idOf(ref))
	if i < 0 {
		return Furnace{}, false
	}
	return s.Furnaces[i], true
}

func (s State) furnace(id entry.UID) int {
	named := -1
	name, byName := id.Name()
	for i, f := range s.Furnaces {
		if f.ID == id {
			return i
		}
		if byName && f.Last().Furnace.Name == name {
			named = i
		}
	}
	return named
}
