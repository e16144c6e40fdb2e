package tui

import (
	"slices"
	"strconv"
	"time"

	"chargehand/model/entry"
	"chargehand/tui/screen"
)

// reports are what the book says of itself: what it put right, what took over.
type reports struct {
	told     []string // until the next key
	messages []string // all of it
	unread   int      // of them that the Book has not shown
}

// ledger knows which entries were handed to the book and not yet acknowledged.
type ledger struct {
	run     string // makes the entries' own names differ from those of other runs
	count   int
	pending []entry.Entry
	trouble string // what the last failed attempt said; empty when all is well
}

// patience is how long an entry may wait for the book before the screen says
// that it is not kept.
const patience = 2 * time.Second

func newLedger(start entry.Stamp) ledger {
	return ledger{run: strconv.FormatInt(start.Wall.UnixMilli(), 36)}
}

// handed gives an entry its own name and notes that it was handed over.
func (l ledger) handed(e entry.Entry) (ledger, entry.Entry) {
	e.Local = l.next()
	l.count++
	l.pending = append(slices.Clone(l.pending), e)
	return l, e
}

// next is the own name that the next entry is going to have.
func (l ledger) next() string { return l.run + "-" + strconv.Itoa(l.count+1) }

// settled strikes entries off that were kept or refused.
func (l ledger) settled(es ...entry.Entry) ledger {
	if len(es) == 0 {
		return l
	}
	l.pending = slices.DeleteFunc(slices.Clone(l.pending), func(p entry.Entry) bool {
		return slices.ContainsFunc(es, func(e entry.Entry) bool { return e.Local == p.Local })
	})
	return l
}

// waiting tells whether any of the entries of these names is not yet kept.
func (l ledger) waiting(locals []string) bool {
	return slices.ContainsFunc(l.pending, func(p entry.Entry) bool { return slices.Contains(locals, p.Local) })
}

// late tells whether the oldest entry has waited longer than it should.
func (l ledger) late(now entry.Stamp) bool {
	if len(l.pending) == 0 {
		return false
	}
	first := l.pending[0]
	return screen.Since(entry.Stamp{Wall: first.Kept, Boot: first.Boot, Mono: first.Mono}, now) > patience
}
