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
		{entry.Dip{BelowRim: entry.Some(entry.Centimetre(1200))}, "below rim may be -100 to 1000 cm: 1200 cannot be"},
		{entry.Blast{Volume: entry.Some(entry.LitrePerMinute(-1))}, "the reading may be 0 to 100000 l/min: -1 cannot be"},
		{entry.PhaseSet{Phase: "tea"}, "phase may be prepared, preheat, fill, main burn, ore held, burn-down, extracted, closed: tea cannot be"},
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
