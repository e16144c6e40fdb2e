package main

import (
	"errors"

	"chargehand/model/house"
	"chargehand/model/shelf"
	"chargehand/persist/disk"
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
	if errors.Is(err, disk.ErrMissing) && c.book == "" {
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
	h.State = house.Fold(entries, usesOf(summaries), at)
	return h, nil
}

// usesOf is what the smelts used.
func usesOf(smelts []shelf.Summary) []house.Use {
	uses := make([]house.Use, len(smelts))
	for i, s := range smelts {
		uses[i] = s.Used
	}
	return uses
}
