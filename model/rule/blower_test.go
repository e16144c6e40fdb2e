package rule

import (
	"testing"

	"chargehand/model/entry"
	"chargehand/model/fold"
)

// The same mark on another blower is another blast, unless both were metered alike.
func TestAnotherBlowerIsAnotherBlast(t *testing.T) {
	half := entry.Blast{Gate: "5"}
	of := func(blower string, volume entry.Maybe[entry.LitrePerMinute]) fold.Blast {
		return fold.Blast{Seen: half, Set: half, Blower: blower, Volume: volume}
	}
	unread, read := entry.None[entry.LitrePerMinute](), entry.Some(entry.LitrePerMinute(700))
	for _, c := range []struct {
		a, b    fold.Blast
		another bool
	}{
		{of("", unread), of("", unread), false},
		{of("", unread), of("bellows", unread), true},
		{of("bellows", unread), of("bellows", unread), false},
		{of("", read), of("bellows", read), false},
	} {
		if got := otherBlast(c.a, c.b); got != c.another {
			t.Errorf("%q then %q: another %t", c.a.Blower, c.b.Blower, got)
		}
	}
}
