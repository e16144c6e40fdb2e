package logcsv

import (
	"slices"
	"testing"

	"chargehand/model/entry"
)

// The kinds that the table of kinds gives a place here are those with rows.
func TestTheKindsWithAPlaceHaveRows(t *testing.T) {
	for _, k := range entry.Kinds() {
		written := entry.TraitsOfKind(k).CSV.Written() && k != entry.KindLight
		if _, ok := writers[k]; ok != written {
			t.Errorf("%s: the table of kinds says %q", k, entry.TraitsOfKind(k).CSV)
		}
	}
	for k := range writers {
		if !slices.Contains(entry.Kinds(), k) {
			t.Errorf("rows for %s, which is no kind", k)
		}
	}
}
