package main

import (
	"fmt"

	"chargehand/model/learn"
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
