package tui_test

import (
	"reflect"
	"slices"
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/tui"
	"chargehand/tui/desk"
	"chargehand/tui/keyboards"
	"chargehand/tui/scene"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// The far view opens from every live screen, and all keys of Fire work there.
func TestFarView(t *testing.T) {
	for _, from := range [][]string{{}, {"v", "b"}, {"v", "s"}, {"h"}} {
		d := desk.Practising(t)
		d.Press("c")
		d.Press(from...)
		d.Press("space")
		if !d.Far() || d.M.Active() != screen.Fire {
			t.Errorf("%v: %s, far %t", from, d.M.Active(), d.Far())
		}
	}
	d := desk.Practising(t)
	d.Press("space", "c", "s")
	if d.Count(entry.KindCharge) != 2 || !d.Far() {
		t.Errorf("%d charges, far %t", d.Count(entry.KindCharge), d.Far())
	}
	d.Press("space")
	if d.Far() {
		t.Error("the same key does not go back")
	}
	d.Press("space", "esc")
	if d.Far() || d.M.Active() != screen.Fire {
		t.Error("esc does not go back to the near view")
	}
	d = desk.Sit(t)
	d.Press("space")
	d.Answers(words.NothingAtWork)
}

// A text with blanks in it is typed, not taken for the far view.
func TestSpaceIsTypedInAField(t *testing.T) {
	d := desk.Practising(t)
	d.Press("n", "a", "space", "b", "enter")
	if n, ok := d.Last().(entry.Note); !ok || n.Text != "a b" || d.Far() {
		t.Errorf("%#v", d.Last())
	}
}

func TestLockHoldsKeysBack(t *testing.T) {
	d := desk.Practising(t)
	d.Press("c")
	before := len(d.Acts())
	d.Press("o", "z")
	d.Shows("keys are locked")
	for _, k := range []string{"c", "s", "u", "esc", "o", "v", "enter", "ctrl+c", "space", "1"} {
		d.Press(k)
	}
	if len(d.Acts()) != before || d.M.Dialog() != nil || d.Quit || d.Far() {
		t.Error("a key acted")
	}
	ps := d.Presses()
	if n := len(ps); n < 10 || !ps[n-1].Held || ps[n-10].Key != "c" {
		t.Errorf("the keys were journaled as %v", ps)
	}
	word := []string{}
	for _, c := range d.M.Locked() {
		word = append(word, string(c))
	}
	d.Press(word[0], word[0], word[1], "c", word[1], word[2])
	if d.M.Locked() == "" {
		t.Fatal("a wrong word unlocked")
	}
	d.Press(word...)
	d.Answers("keys act again")
	d.Press("c")
	if len(d.Acts()) != before+1 {
		t.Error("keys do not act again")
	}
}

// Nor does a key that may come as fast as a hand presses it, or a glove leans on it.
func TestLockHoldsFastKeysBack(t *testing.T) {
	for _, k := range []string{"s", "m", "up", "down", "left", "right", "+"} {
		d := desk.Practising(t)
		d.Press("c", "r", "o", "z")
		before, next := len(d.Acts()), d.M.Running().Reading().Next
		for range 5 {
			d.Fast(33*time.Millisecond, k)
		}
		d.Send(tui.Gathered{})
		if len(d.Acts()) != before || !reflect.DeepEqual(d.M.Running().Reading().Next, next) {
			t.Errorf("%s, pressed quickly, acts while the keys are locked", k)
		}
		ps := d.Presses()
		for _, p := range ps[len(ps)-5:] {
			if p.Key != k || !p.Held {
				t.Errorf("%s was journaled as %v", k, p)
			}
		}
	}
}

// No two letters of a word that unlocks touch, and they are three keys.
func TestLockWordsAreNoSmear(t *testing.T) {
	for name, rows := range keyboards.Keyboards {
		touch := keyboards.Neighbours(rows, keyboards.Stagger)
		for _, w := range words.LockWords {
			if len(w) != 3 {
				t.Errorf("%q has %d letters", w, len(w))
			}
			for i, a := range w {
				for _, b := range w[i+1:] {
					if a == b || slices.Contains(touch[string(a)], string(b)) {
						t.Errorf("%s: %c and %c of %q touch", name, a, b, w)
					}
				}
			}
		}
	}
}

func TestBurnDownCard(t *testing.T) {
	d := desk.Burning(t)
	d.Press("o", "l", "o", "b")
	d.Press("l", "m", "e")
	d.Press("o", "w", "r", "1", "3", "esc")
	d.Press("o", "w", "k")
	d.Write("Jo")
	d.Press("enter")
	d.Wait(time.Minute)
	s := d.M.Running()
	if got := scene.Ready(s); !slices.Equal(got, []bool{true, false, true, false, false}) {
		t.Errorf("ready: %v", got)
	}
	if f := scene.Flame(s); f == nil || f.Sees != entry.FlameYellow {
		t.Errorf("flame: %+v", f)
	}
	d.Shows("Jo")
	d.Press("o", "w", "r", "1", "esc")
	if scene.Ready(d.M.Running())[0] {
		t.Error("the same key does not undo it")
	}
}

// The list of what must be ready ends with its last tick, and with enter before that: left
// open it took the end of a day.
func TestTheTickListEnds(t *testing.T) {
	for _, keys := range [][]string{{"1", "2", "3", "4", "5"}, {"1", "enter"}} {
		d := desk.Burning(t)
		d.Press("o", "l", "o", "b", "o", "w", "r")
		d.Press(keys...)
		if d.M.Dialog() != nil {
			t.Errorf("after %v %T is open", keys, d.M.Dialog())
		}
	}
}

func TestDecision(t *testing.T) {
	d := desk.Burning(t)
	d.Press("o", "d")
	d.Shows(words.DecideHead)
	d.Press("z")
	d.Answers("a letter or number")
	d.Press("esc")
	if d.M.Dialog() != nil {
		t.Fatal("esc does not close it")
	}
	before := len(d.Acts())
	for _, k := range []string{"o", "n"} { // waiting asks nothing: u undoes it
		d.Press("o", "d", k)
		if d.M.Dialog() == nil || len(d.Acts()) != before {
			t.Errorf("%s did not ask once more", k)
		}
		d.Press("esc")
	}
	d.Press("o", "d", "w")
	if n, ok := d.Last().(entry.Note); !ok || n.Text != words.DecidedWait {
		t.Errorf("%#v", d.Last())
	}
	d.Press("o", "d", "o", "p")
	if e, ok := d.Last().(entry.Extract); !ok || e.None {
		t.Errorf("%#v", d.Last())
	}
	d.Press("u", "o", "d", "n", "y")
	evs := d.Acts()
	if e, ok := evs[len(evs)-2].(entry.Extract); !ok || !e.None || d.M.Running().Phase() != entry.Closed {
		t.Errorf("%#v, %s", evs[len(evs)-2], d.M.Running().Phase())
	}
}
