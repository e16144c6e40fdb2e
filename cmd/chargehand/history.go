package main

import (
	"fmt"
	"sync"

	"chargehand/model/entry"
	"chargehand/model/house"
	"chargehand/model/learn"
	"chargehand/model/lot"
	"chargehand/model/ore"
	"chargehand/model/words"
)

// historyOf is what the smelts of the book teach. Where they cannot be read that is
// told, and nothing is taught.
func historyOf(w world, c common) learn.History {
	list, err := summaries(w, c)
	if err != nil {
		fmt.Fprintln(w.err, "chargehand:", words.OneLine(words.NotTaught(err)))
	}
	return learn.HistoryOf(list)
}

// assayedIn is what the assays of the book's house say of its ore.
func assayedIn(w world, c common) ([]ore.Assayed, error) {
	entries, err := houseEntries(w, c)
	return assayedOf(entries), err
}

func assayedOf(ofHouse []entry.Entry) []ore.Assayed {
	j := house.JournalOf(ofHouse)
	return lot.Assayed(j.Lines(), sync.OnceValue(func() house.State { return j.Fold(nil) }))
}
