package screen

import (
	"chargehand/model/entry"
	"chargehand/model/figure"
)

// Store is the book as screens read it, inside a Run alone.
type Store interface {
	Entries(stream string) (kept []entry.Entry, lost []entry.Gap, err error) // in order of their sequence
}

// Known is the middle value of a figure, where it has one.
func Known(f figure.Figure) entry.Maybe[entry.Kilogram] {
	if !f.Known() {
		return entry.None[entry.Kilogram]()
	}
	return entry.Some(entry.Kilogram(f.P50))
}
