package session_test

import (
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/model/invented"
	"chargehand/model/session"
)

// What is left of the stores depends on the entries alone: asking for it takes nothing
// away, and a charge takes just what it holds.
func TestAskingForTheStoresTakesNothing(t *testing.T) {
	es, err := invented.Smelt()
	if err != nil {
		t.Fatal(err)
	}
	left := func(s session.Session, what entry.What) float64 {
		for _, x := range s.Supplies() {
			if x.What == what {
				return x.Left
			}
		}
		t.Fatalf("nothing is known of %s", what)
		return 0
	}
	charges := []int{}
	for i, e := range es {
		if c, ok := e.Event.(entry.Charge); ok && c.Parts.Holds(entry.Charcoal) {
			charges = append(charges, i)
		}
	}
	n := charges[8]
	const between = 4 * time.Second // two grid points
	es[n].Happened, es[n].Kept, es[n].Mono = es[n].Happened.Add(between), es[n].Kept.Add(between), es[n].Mono+between
	s := session.Open(invented.ID, es[:n])
	at := es[n].Kept.Sub(es[0].Kept) - time.Minute
	before := s.AsOf(^uint64(0), at)
	first := left(before, entry.Charcoal)
	for range 5 {
		if again := left(before, entry.Charcoal); again != first {
			t.Fatalf("asked again %v kg are left, at first %v", again, first)
		}
	}
	whole := session.Open(invented.ID, es[:n+1])
	after := whole.AsOf(^uint64(0), at+time.Minute+time.Second)
	for range 3 { // from one grid point, with the charge after it
		if took := first - left(after, entry.Charcoal); took < 1 || took > 3 {
			t.Fatalf("a bucket took %v kg", took)
		}
	}
	later := whole.AsOf(^uint64(0), at+time.Hour)
	if took := first - left(later, entry.Charcoal); took < 1 || took > 3 {
		t.Errorf("an hour later it took %v kg", took)
	}
	if took := first - left(after, entry.Charcoal); took < 1 || took > 3 {
		t.Errorf("back again it took %v kg", took)
	}
}
