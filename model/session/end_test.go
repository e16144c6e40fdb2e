package session

import (
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/model/fold"
)

// A smelt that was closed and whose bloom was weighed after its last act is said
// to be both, at its end.
func TestTheEndSaysWhatCameAfterwards(t *testing.T) {
	var entries []entry.Entry
	key := func(minute int, ev entry.Event) {
		at := noon.Add(time.Duration(minute) * time.Minute)
		entries = append(entries, entry.Entry{Version: entry.Version, Stream: "s", Seq: uint64(len(entries) + 1), Boot: "b",
			Mono: time.Duration(minute) * time.Minute, Happened: at, Kept: at, Event: ev})
	}
	key(0, entry.Light{})
	key(10, entry.Charge{Parts: entry.Parts{{What: entry.Charcoal, Mass: entry.Some(entry.Kilogram(2))}}})
	key(60, entry.BurnDown{})
	key(90, entry.PhaseSet{Phase: entry.Closed})
	key(300, entry.Weigh{What: entry.WeighBloom, Mass: 2.5})
	key(310, entry.Weigh{What: entry.WeighSlag, Mass: 3})
	key(320, entry.Weigh{What: entry.WeighSlag, Mass: 1.5}) // another tub
	r := Open("s", entries).Reading()
	if r.At != fold.End(entries) || r.Phase != entry.Closed || r.Bloom != entry.Some(2.5) || r.SlagWeighed != entry.Some(4.5) {
		t.Errorf("at %v: %s, bloom %v, slag %v", r.At, r.Phase, r.Bloom, r.SlagWeighed)
	}
}
