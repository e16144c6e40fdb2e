package main

import (
	"errors"
	"slices"

	"chargehand/model/entry"
	"chargehand/model/house"
	"chargehand/model/shelf"
	"chargehand/persist"
)

// household is what a book holds beyond its smelts: the house at a moment, and the
// summaries of all smelts. Without a book there is nothing in either.
type household struct {
	house.State
	smelts []shelf.Summary
}

// theHouse reads it. It makes no file.
func theHouse(w world, c common) (household, error) {
	at := w.clock().Wall
	none := household{State: house.Fold(nil, nil, at)}
	r, err := reader(w, c)
	if errors.Is(err, persist.ErrMissing) && c.book == "" {
		return none, nil
	}
	if err != nil {
		return none, err
	}
	defer tellFaults(w, r)
	entries, err := houseEntries(w, c)
	if err != nil {
		return none, err
	}
	summaries, err := r.Summaries()
	if err != nil {
		return none, err
	}
	h := household{smelts: summaries}
	uses, err := usesOf(r, entries, h.smelts)
	if err != nil {
		return none, err
	}
	h.State = house.Fold(entries, uses, at)
	return h, nil
}

// usesOf reads what the smelts used. A house without lots needs to know of none.
func usesOf(r *persist.Reader, entries []entry.Entry, smelts []shelf.Summary) ([]house.Use, error) {
	if !slices.ContainsFunc(entries, func(e entry.Entry) bool {
		switch e.Event.(type) {
		case entry.LotStored, entry.Deed, entry.Piece:
			return true
		}
		return false
	}) {
		return nil, nil
	}
	var uses []house.Use
	for _, s := range smelts {
		es, err := r.Entries(s.ID)
		if err != nil {
			return nil, err
		}
		uses = append(uses, house.UsedBy(es))
	}
	return uses, nil
}
