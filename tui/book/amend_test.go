package book

import (
	"testing"

	"chargehand/model/entry"
)

// What is keyed at the fire and can be changed whole has a form in the Book.
func TestWhatIsKeyedAtTheFireCanBeChanged(t *testing.T) {
	for _, k := range entry.Kinds() {
		of := entry.TraitsOfKind(k)
		if _, asks := amendAsks[k]; !asks && of.Amend == entry.Whole && of.Keyed&entry.OnFire != 0 {
			t.Errorf("no form changes a %s", k)
		}
	}
}
