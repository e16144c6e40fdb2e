package tui_test

import (
	"strings"
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/tui"
	"chargehand/tui/desk"
)

// A glove leans on the key of scoops for a minute, at the rate at which keyboards
// repeat (thirty a second, common practice). No more is booked than a hand can
// press, in few entries; every press is in the journal; the next key acts at once,
// and one key crosses the whole run out and brings it back.
func TestAGloveLeaningOnScoops(t *testing.T) {
	d := desk.Practising(t)
	d.Press("f", "c")
	d.Wait(time.Minute)
	ore := func() float64 { n, _ := d.M.Running().Reading().Charges[1].Parts.Count(entry.Ore); return float64(n) }
	before, presses, acts := ore(), len(d.Presses()), len(d.Acts())
	for i := range 60 * 30 {
		d.Fast(33*time.Millisecond, "s")
		if i%8 == 7 {
			d.Send(tui.Gathered{})
		}
	}
	d.Wait(time.Second)
	if got := ore() - before; got != 30 {
		t.Errorf("%v scoops booked by a leaning glove, want the 30 that a hand may press", got)
	}
	if n := len(d.Acts()) - acts; n > 8 {
		t.Errorf("%d entries for one second of scoops, want one each quarter of it", n)
	}
	if n := len(d.Presses()) - presses; n != 60*30-1 { // the first is the entry's own
		t.Errorf("%d presses in the journal, want %d", n, 60*30-1)
	}
	d.Press("r")
	if d.Last().Kind() != entry.KindRod {
		t.Errorf("the next key kept %s", d.Last().Kind())
	}
	d.Press("u", "u")
	d.Answers("entries of one run")
	if ore() != before {
		t.Errorf("%v scoops stand after crossing the run out, want %v", ore(), before)
	}
	d.Press("o", "x")
	d.Answers("entries of one run")
	if ore() != before+30 {
		t.Errorf("%v scoops stand after bringing the run back, want %v", ore(), before+30)
	}
}

// Presses that a hand makes quickly all count, whatever comes after them.
func TestGatheredPressesActBeforeTheNextKey(t *testing.T) {
	for _, next := range []string{"r", "esc", "o", "v", "space", "h"} {
		d := desk.Practising(t)
		d.Press("f", "c")
		d.Fast(100*time.Millisecond, strings.Split("sssss", "")...)
		d.Fast(100*time.Millisecond, next)
		if n, _ := d.M.Running().Reading().Charges[1].Parts.Count(entry.Ore); n != 5+2 {
			t.Errorf("%v scoops before %s, want 7", n, next)
		}
	}
	d := desk.Practising(t)
	d.Press("c", "t")
	at := d.M.Running().Reading().At
	d.Wait(30 * time.Minute)
	d.Press("r")
	d.Fast(100*time.Millisecond, "m", "m", "m", "m")
	d.Send(tui.Gathered{})
	l, _ := d.M.Running().LastAct()
	if moved := d.M.Running().Reading().At - l.At; moved < 4*time.Minute || moved > 4*time.Minute+5*time.Second {
		t.Errorf("four minutes earlier moved the rod back by %v (lit %v before)", moved, at)
	}
}
