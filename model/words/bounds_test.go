package words

import (
	"errors"
	"testing"

	"chargehand/model/entry"
)

func TestOutOfBounds(t *testing.T) {
	for _, c := range []struct {
		ev   entry.Event
		want string
	}{
		{entry.Dip{BelowRim: entry.Some(entry.Centimetre(1200))}, "below rim 1200 cm: it may be -100 to 1000 cm"},
		{entry.Blast{Volume: entry.Some(entry.LitrePerMinute(-1))}, "the reading -1 l/min: it may be 0 to 100000 l/min"},
		{entry.PhaseSet{Phase: "tea"}, "phase tea: it may be prepared, preheat, fill, main burn, ore held, burn-down, extracted, closed"},
		{entry.Note{}, "text is missing"},
		{entry.Deed{Does: entry.Dug, Out: []entry.Amount{{Lot: "pond"}}}, "lot is no uid: 16 hex digits, or name: and a name"},
	} {
		if got := OutOfBounds(entry.Check(c.ev)); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
	if got := OutOfBounds(errors.New("else")); got != "else" {
		t.Errorf("%q", got)
	}
}
