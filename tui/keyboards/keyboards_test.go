package keyboards

import (
	"slices"
	"strings"
	"testing"
)

func TestNeighbourTables(t *testing.T) {
	q := Neighbours(Keyboards["QWERTY"], Stagger)
	for _, want := range []struct{ key, others string }{
		// What anybody sees on a keyboard.
		{"c", "x v d f"}, {"s", "a d w e z x"}, {"f", "d g r t c v"}, {"d", "s f e r x c"}, {"0", "9 - o p"},
	} {
		for _, o := range strings.Fields(want.others) {
			if !slices.Contains(q[want.key], o) {
				t.Errorf("%s should touch %s: it touches %v", want.key, o, q[want.key])
			}
		}
		if slices.Contains(q[want.key], "u") {
			t.Errorf("%s does not touch u", want.key)
		}
	}
	pad := Neighbours(NumberPad, nil)
	for _, o := range strings.Fields("1 2 3 . enter") {
		if !slices.Contains(append(pad["0"], pad["."]...), o) {
			t.Errorf("the lower row of the pad should touch %s", o)
		}
	}
}
