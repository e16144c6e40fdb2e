package screen

import (
	"time"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/session"
)

// Store is the book as screens read it, inside a Run alone.
type Store interface {
	Entries(stream string) ([]entry.Entry, error) // in order of their sequence
}

// SmeltLine is one line of the shelf.
type SmeltLine struct {
	ID       string // which is also its stream
	UID      string
	Furnace  string
	Lit      time.Time // in the smelt's own offset
	Undated  bool      // the day is unknown
	Phase    entry.Phase
	Charges  int
	Charcoal entry.Maybe[entry.Kilogram] // charged, fill included
	Ore      entry.Maybe[entry.Kilogram]
	Bloom    entry.Maybe[entry.Kilogram]
	Practice bool // set aside from the shelf
	Imported bool
	Invented bool
}

// Unfinished tells whether the smelt is this house's own and can go on.
func (l SmeltLine) Unfinished() bool {
	return !l.Imported && !l.Invented && !l.Phase.Over()
}

// LineOf is the line of a smelt as it stands.
func LineOf(s session.Session) SmeltLine {
	r, l := s.Reading(), s.Light()
	return SmeltLine{
		ID: s.ID(), UID: l.UID, Furnace: l.Furnace.Name, Lit: r.Lit, Undated: l.Undated, Phase: s.Phase(), Charges: len(r.Charges),
		Charcoal: Known(r.Figure(figure.CharcoalCharged)), Ore: Known(r.Figure(figure.OreCharged)),
		Bloom:    entry.Maybe[entry.Kilogram]{Value: entry.Kilogram(r.Bloom.Value), Known: r.Bloom.Known},
		Practice: l.Practice, Imported: l.Imported, Invented: l.Invented,
	}
}

// Known is the middle value of a figure, where it has one.
func Known(f figure.Figure) entry.Maybe[entry.Kilogram] {
	if !f.Known() {
		return entry.None[entry.Kilogram]()
	}
	return entry.Some(entry.Kilogram(f.P50))
}
