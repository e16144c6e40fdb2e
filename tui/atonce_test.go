package tui_test

import (
	"strings"
	"testing"

	"chargehand/model/entry"
	"chargehand/tui/desk"
	"chargehand/tui/screen"
)

// The letters that book at the fire as they are pressed have no other meaning where a
// line of a list books at once: t there is no tap, y no burning top gas but a yes.
func TestLettersThatBookAtOnceMeanOneThing(t *testing.T) {
	lists, _ := allDialogs(t)
	base := desk.Practising(t)
	base.Press("c")
	for title, list := range lists {
		for _, o := range list.Options {
			k := o.Keys()[0]
			if list.Question || !strings.Contains(screen.AtOnceKeys, k) {
				continue
			}
			d := aside(base)
			d.M = d.M.Open(list)
			d.Press(k)
			for _, ev := range booked(d) {
				_, tap := ev.(entry.Tap)
				if _, set := ev.(entry.Setting); !set && !(k == "t" && tap) {
					t.Errorf("%q: %s books %#v at once", title, k, ev)
				}
			}
		}
	}
}
