package tui

import (
	"slices"
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/model/words"
)

// The far view opens from every live screen, and all keys of Fire work there.
func TestFarView(t *testing.T) {
	for _, from := range [][]string{{}, {"v", "b"}, {"v", "s"}, {"h"}} {
		d := practising(t)
		d.press("c")
		d.press(from...)
		d.press("space")
		if !d.m.far() || d.m.active != fireScreen {
			t.Errorf("%v: %s, far %t", from, d.m.active, d.m.far())
		}
	}
	d := practising(t)
	d.press("space", "c", "s")
	if d.count(entry.KindCharge) != 2 || !d.m.far() {
		t.Errorf("%d charges, far %t", d.count(entry.KindCharge), d.m.far())
	}
	d.press("space")
	if d.m.far() {
		t.Error("the same key does not go back")
	}
	d.press("space", "esc")
	if d.m.far() || d.m.active != fireScreen {
		t.Error("esc does not go back to the near view")
	}
	d = sit(t)
	d.press("space")
	d.answers(words.NothingAtWork)
}

// A text with blanks in it is typed, not taken for the far view.
func TestSpaceIsTypedInAField(t *testing.T) {
	d := practising(t)
	d.press("n", "a", "space", "b", "enter")
	if n, ok := d.last().(entry.Note); !ok || n.Text != "a b" || d.m.far() {
		t.Errorf("%#v", d.last())
	}
}

func TestLockHoldsKeysBack(t *testing.T) {
	d := practising(t)
	d.press("c")
	before := len(d.acts())
	d.press("o", "z")
	d.shows("keys are locked")
	for _, k := range []string{"c", "s", "u", "esc", "o", "v", "enter", "ctrl+c", "space", "1"} {
		d.press(k)
	}
	if len(d.acts()) != before || d.m.dialog != nil || d.quit || d.m.far() {
		t.Error("a key acted")
	}
	ps := d.presses()
	if n := len(ps); n < 10 || !ps[n-1].Held || ps[n-10].Key != "c" {
		t.Errorf("the keys were journaled as %v", ps)
	}
	word := []string{}
	for _, c := range d.m.locked.word {
		word = append(word, string(c))
	}
	d.press(word[0], word[0], word[1], "c", word[1], word[2])
	if !d.m.locked.is() {
		t.Fatal("a wrong word unlocked")
	}
	d.press(word...)
	d.answers("keys act again")
	d.press("c")
	if len(d.acts()) != before+1 {
		t.Error("keys do not act again")
	}
}

// No two letters of a word that unlocks touch, and they are three keys.
func TestLockWordsAreNoSmear(t *testing.T) {
	for name, rows := range keyboards {
		touch := neighbours(rows, stagger)
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
	d := burning(t)
	d.press("o", "l", "y", "o", "b", "y")
	d.press("l", "f", "y")
	d.press("o", "y", "1", "3", "esc")
	d.press("o", "j")
	d.write("Jo")
	d.press("enter")
	d.wait(time.Minute)
	s := d.m.running
	if got := ready(s); !slices.Equal(got, []bool{true, false, true, false, false}) {
		t.Errorf("ready: %v", got)
	}
	if f := flame(s); f == nil || f.Sees != entry.FlameYellow {
		t.Errorf("flame: %+v", f)
	}
	d.shows("Jo")
	d.press("o", "y", "1", "esc")
	if ready(d.m.running)[0] {
		t.Error("the same key does not undo it")
	}
}

func TestDecision(t *testing.T) {
	d := burning(t)
	d.press("o", "d")
	d.shows(words.DecideHead)
	d.press("c")
	d.answers("nothing in this list")
	d.press("esc")
	if d.m.dialog != nil {
		t.Fatal("esc does not close it")
	}
	before := len(d.acts())
	for _, k := range []string{"o", "w", "n"} {
		d.press("o", "d", k)
		if d.m.dialog == nil || len(d.acts()) != before {
			t.Errorf("%s did not ask once more", k)
		}
		d.press("esc")
	}
	d.press("o", "d", "w", "y")
	if n, ok := d.last().(entry.Note); !ok || n.Text != words.DecidedWait {
		t.Errorf("%#v", d.last())
	}
	d.press("o", "d", "o", "t")
	if e, ok := d.last().(entry.Extract); !ok || e.None {
		t.Errorf("%#v", d.last())
	}
	d.press("u", "o", "d", "n", "y")
	evs := d.acts()
	if e, ok := evs[len(evs)-2].(entry.Extract); !ok || !e.None || d.m.running.Phase() != entry.Closed {
		t.Errorf("%#v, %s", evs[len(evs)-2], d.m.running.Phase())
	}
}
