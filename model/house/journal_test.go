package house

import (
	"testing"
	"time"

	"chargehand/model/entry"
)

// handed is an entry as a screen hands it over.
func handed(local string, at time.Duration, ev entry.Event) entry.Entry {
	return entry.Entry{Version: 1, Stream: entry.House, Local: local, Happened: day.Add(at), Kept: day.Add(at), Boot: "b", Mono: at, Event: ev}
}

// What waits counts at once, what is refused does not, and what speaks of one that
// waits goes with it when the numbers move.
func TestAJournalBeforeAndAfterItIsKept(t *testing.T) {
	var b book
	b.key(dry(pond, "pond", entry.Ore))
	b.key(entry.Keys{})
	j := JournalOf(b.entries)
	left := func() float64 {
		t.Helper()
		s := j.Fold(nil)
		l, ok := s.Lot("pond")
		if !ok {
			t.Fatalf("no lot among %+v", s.Lots)
		}
		return l.Left.Kg
	}
	dug := func(v float64) entry.Deed {
		return entry.Deed{Does: entry.Dug, Out: []entry.Amount{{Lot: pond, Mass: kg(v)}}}
	}
	var all []entry.Entry
	add := func(e entry.Entry) entry.Entry {
		j, e = j.Add(e)
		all = append(all, e)
		return e
	}
	add(handed("x-1", 2*time.Hour, entry.Keys{}))
	ten := add(handed("x-2", 3*time.Hour, dug(10)))
	add(handed("x-3", 4*time.Hour, dug(5)))
	if ten.Seq != 4 || left() != 15 {
		t.Errorf("numbered %d, left %v", ten.Seq, left())
	}
	add(handed("x-4", 5*time.Hour, entry.Strike{Target: j.Ref(ten.Seq)}))
	if left() != 5 {
		t.Errorf("struck while it waits: left %v", left())
	}
	// The keys before it are refused: all numbers move down.
	j = j.Drop("x-1")
	if left() != 5 {
		t.Errorf("after a refusal: left %v", left())
	}
	for n, e := range all[1:] {
		e, _ = e.Resolve(func(string) (uint64, bool) { return 3, true })
		e.Seq = uint64(3 + n)
		j = j.Keep(e)
		if left() != 5 {
			t.Errorf("%d kept: left %v", n+1, left())
		}
	}
	if len(j.waiting) != 0 {
		t.Errorf("waiting %+v", j.waiting)
	}
	// Read anew meanwhile: what is kept already is not taken twice.
	add(handed("x-5", 6*time.Hour, dug(1)))
	read := JournalOf(b.entries)
	if j = j.Onto(read); left() != 6 {
		t.Errorf("put onto what was read: left %v", left())
	}
}

// What a smelt took within an hour is told in one line, a count parts what was before it
// from what came after.
func TestBriefUse(t *testing.T) {
	at := func(m int) time.Time { return day.Add(time.Duration(m) * time.Minute) }
	take := func(m int, v float64) Taken { return Taken{At: at(m), Lot: pond, Dry: Mass{Kg: v}} }
	u := Use{Takes: []Taken{take(0, 1), take(10, 1), {At: at(20), Lot: pond, Dry: Mass{Kg: 7}, Count: true}, take(30, 1), take(50, 2), take(100, 1)}}.Brief()
	if len(u.Takes) != 4 || u.Takes[0].Dry.Kg != 2 || !u.Takes[1].Count || u.Takes[2].Dry.Kg != 3 || u.Takes[3].Dry.Kg != 1 {
		t.Errorf("%+v", u.Takes)
	}
}
