package invented

import (
	"testing"

	"chargehand/model/entry"
)

func TestTheSmeltSaysThatItIsInventedAndHangsTogether(t *testing.T) {
	entries, err := Smelt()
	if err != nil {
		t.Fatal(err)
	}
	light, ok := entries[0].Event.(entry.Light)
	if !ok || !light.Invented {
		t.Error("the first entry must be a light that says invented")
	}
	for i, e := range entries {
		if e.Seq != uint64(i+1) || e.Stream != ID {
			t.Errorf("entry %d: sequence %d of %s", i, e.Seq, e.Stream)
		}
		if i > 0 && e.Kept.Before(entries[i-1].Kept) {
			t.Errorf("entry %d was keyed before the one above it", e.Seq)
		}
		if s, ok := e.Event.(entry.Strike); ok {
			if s.Target.Seq != e.Seq-1 || entries[s.Target.Seq-1].Kind() != entry.KindCharge {
				t.Errorf("entry %d crosses out entry %d, meant is the charge just before it", e.Seq, s.Target.Seq)
			}
		}
		if _, err := entry.Encode(e); err != nil {
			t.Error(err)
		}
	}
}
