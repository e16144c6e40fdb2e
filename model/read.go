// Package model is what a smelt is: entries in, figures out. Its small packages
// each hold one step; Read is the whole way.
package model

import (
	"time"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/fold"
)

// Read gives everything that is known of a smelt at a moment on its own clock,
// as known by one entry (fold.All for every one). It depends on the entries
// alone.
func Read(entries []entry.Entry, known uint64, at time.Duration) figure.Reading {
	r := figure.From(fold.Fold(entries, known, at))
	if len(entries) > 0 {
		r.Smelt = entries[0].Stream
	}
	return r
}
