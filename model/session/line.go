package session

import (
	"iter"
	"slices"
	"time"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/model/rule"
)

// Lines are the entries with what became of them, in the order of their sequence:
// all that are known.
func (s Session) Lines() iter.Seq[fold.Line] { return s.view().known.Lines() }

// Backward are the same from the last one on.
func (s Session) Backward() iter.Seq[fold.Line] { return s.view().known.Backward() }

// Of are the lines in force of one kind, in the order of their sequence.
func (s Session) Of(k entry.Kind) iter.Seq[fold.Line] { return s.view().known.Of(k) }

// Line is the line of an entry.
func (s Session) Line(seq uint64) (fold.Line, bool) { return s.view().known.Line(seq) }

// Sure is which doubts about what a line says were answered yes, by whoever said it
// first or changed it.
func (s Session) Sure(l fold.Line) string {
	if l.AmendedBy == 0 {
		return l.Entry.Sure
	}
	by, ok := s.Line(l.AmendedBy)
	if a, is := by.Event.(entry.Amend); ok && is && a.Event != nil {
		return by.Entry.Sure
	}
	return l.Entry.Sure
}

// First is the first line.
func (s Session) First() (fold.Line, bool) {
	for l := range s.Lines() {
		return l, true
	}
	return fold.Line{}, false
}

// Last is the last line.
func (s Session) Last() (fold.Line, bool) {
	for l := range s.Backward() {
		return l, true
	}
	return fold.Line{}, false
}

// Wall is the wall time of a line, in the smelt's own offset.
func (s Session) Wall(l fold.Line) time.Time { return s.Reading().Wall(l.At) }

// LastAct is the last act in force: what the keys about the last act speak of. A
// recipe is none: the arrows that changed it change it back, and they are often
// pressed just after a charge. One of another lot is: nothing else changes it back. The
// copy of a lot that the smelt keeps came with the act that names it.
func (s Session) LastAct() (fold.Line, bool) {
	for l := range s.Backward() {
		switch k := l.Entry.Kind(); {
		case l.Struck() || !entry.IsAct(l.Event) || k == entry.KindLot:
		case k == entry.KindRecipe && !s.otherLot(l):
		default:
			return l, true
		}
	}
	return fold.Line{}, false
}

// otherLot tells whether a recipe takes a lot in the place of another.
func (s Session) otherLot(l fold.Line) bool {
	before := entry.LotsIn(entry.Recipe{Next: s.Light().Recipe})
	for r := range s.Of(entry.KindRecipe) {
		if r.Seq() >= l.Seq() {
			break
		}
		before = entry.LotsIn(r.Event)
	}
	lots := entry.LotsIn(l.Event)
	not := func(in []string) func(string) bool { return func(lot string) bool { return !slices.Contains(in, lot) } }
	return slices.ContainsFunc(lots, not(before)) && slices.ContainsFunc(before, not(lots))
}

// Recipe is the recipe in force with its ore, also while ore is held back.
func (s Session) Recipe() entry.Parts {
	r := s.Reading()
	if !r.OreHeld && !r.LastOre {
		ps := make(entry.Parts, len(r.Next))
		for i, p := range r.Next {
			ps[i] = p.Part
		}
		return ps
	}
	return slices.Clone(s.view().moment.timeline.NextPlanned())
}

// Measure is the measure in which a material goes in: that of the recipe, else
// the first one named for it.
func (s Session) Measure(w entry.What) (entry.Measure, bool) {
	name := ""
	for _, p := range s.Recipe() {
		if p.What == w && p.Measure != "" {
			name = p.Measure
			break
		}
	}
	for _, m := range s.Reading().Measures {
		if m.What == w && (name == "" || m.Name == name) {
			return m, true
		}
	}
	return entry.Measure{}, false
}

// What a testimony says of a warning.
const (
	Raised  = "raised"
	Cleared = "cleared"
)

// Testified are the rules of which a warning was last written down as raised.
func (s Session) Testified() map[rule.ID]bool {
	said := map[rule.ID]bool{}
	for t := range s.journal.Told() {
		if _, later := said[rule.ID(t.Rule)]; !later {
			said[rule.ID(t.Rule)] = t.State == Raised
		}
	}
	return said
}
