// Package model is what a smelt is: entries in, figures out. Its small packages
// each hold one step; Read is the whole way.
package model

import (
	"time"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/fold"
	"chargehand/model/rule"
	"chargehand/model/solve"
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

// AtEnd gives what is known of a smelt that is over, at its end: with what was
// weighed and said of it afterwards, since its clock stands.
func AtEnd(entries []entry.Entry) figure.Reading {
	r := Read(entries, fold.All, fold.End(entries))
	after := Read(entries, fold.All, fold.Latest(entries))
	r.Bloom = after.Bloom
	if !r.Phase.Over() { // closed without a word about the bloom
		r.Phase, r.Since = after.Phase, after.Since
	}
	return r
}

// Warnings gives every warning of a smelt up to a moment, in the order of their
// onset, as known by one entry. It goes by the same fixed grid as live, so it
// need only be asked anew after an entry and every rule.Grid.
func Warnings(entries []entry.Entry, known uint64, at time.Duration) []rule.Warning {
	return rule.Walk(fold.Trace(entries, known, at))
}

// Solve runs the shaft solver to a moment. The caller keeps the solver: asked
// again it goes on from where it was, or from the last checkpoint before what
// has changed, and gives what a fresh one would. It takes up to half a second
// from scratch, so a screen asks in the background.
func Solve(v *solve.Solver, entries []entry.Entry, known uint64, at time.Duration) solve.Solution {
	c := fold.Trace(entries, known, at)
	return v.Solve(&c)
}

// Solved is the reading with the shaft solver's figures and zones filled in;
// its Solver says whether they are of this moment.
func Solved(r figure.Reading, s solve.Solution) figure.Reading { return figure.WithSolution(r, s) }
