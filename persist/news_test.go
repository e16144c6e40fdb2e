package persist

import (
	"slices"
	"testing"

	"chargehand/model/entry"
)

// What one program keeps another follows: once each, of the streams that it asks for, and
// nothing is read while nothing is kept.
func TestNewsOfABookThatIsWritten(t *testing.T) {
	path := placeOf(t)
	b, _ := open(t, path, Options{})
	if _, err := b.Import(smelt, lit("a1", "f00d")); err != nil {
		t.Fatal(err)
	}
	r, err := OpenReader(path, Options{Summarise: counted})
	if err != nil {
		t.Fatal(err)
	}
	n := r.News()
	since := map[string]uint64{entry.House: 0, smelt: 0}
	next := func(want int, wantOthers bool) {
		t.Helper()
		kept, others, err := n.Since(since)
		if err != nil || len(kept) != want || others != wantOthers {
			t.Fatalf("%d entries, others %v, %v; want %d, %v", len(kept), others, err, want, wantOthers)
		}
		for _, e := range kept {
			if e.Seq != since[e.Stream]+1 {
				t.Fatalf("entry %d of %s after %d", e.Seq, e.Stream, since[e.Stream])
			}
			since[e.Stream] = e.Seq
		}
	}
	all, err := b.Entries(smelt)
	if err != nil {
		t.Fatal(err)
	}
	next(len(all), false)
	next(0, false)
	keep(t, b, slices.Concat(notes(smelt, 1, 3), notes(entry.House, 1, 2))...)
	next(5, false)
	keep(t, b, note(beta, 1))
	next(0, true)
	next(0, false)
	since[beta] = 0
	keep(t, b, note(beta, 2))
	next(2, false) // the one of before too: it was never handed on
	if err := b.Close(); err != nil {
		t.Fatal(err)
	}
	next(0, false)
}
