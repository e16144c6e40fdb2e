package tui

import (
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/entry"
)

// count is how many acts of a kind the open smelt holds.
func (d *desk) count(k entry.Kind) int {
	n := 0
	for _, ev := range d.acts() {
		if ev.Kind() == k {
			n++
		}
	}
	return n
}

// presses are all keys of the open smelt's batches.
func (d *desk) presses() []entry.Press {
	var ps []entry.Press
	for _, e := range d.m.shown().Entries() {
		if ks, ok := e.Event.(entry.Keys); ok {
			ps = append(ps, ks.Pressed...)
		}
	}
	return ps
}

func TestLeaningGlove(t *testing.T) {
	d := practising(t)
	d.press("c")
	d.fast(399*time.Millisecond, "c")
	if n := d.count(entry.KindCharge); n != 1 {
		t.Fatalf("%d charges booked by a leaning glove, want 1", n)
	}
	d.answers("leaning glove")
	ps := d.presses()
	if last := ps[len(ps)-1]; last.Key != "c" || !last.Held {
		t.Errorf("the held key was journaled as %+v", last)
	}
	if len(d.queue) != 0 || d.m.Unkept() != 0 {
		t.Error("the held key was not written down at once")
	}
	// As long as the glove leans, nothing more is booked.
	d.fast(30*time.Millisecond, strings.Split(strings.Repeat("c", 50), "")...)
	if n := d.count(entry.KindCharge); n != 1 {
		t.Errorf("%d charges booked while the glove leaned, want 1", n)
	}
	// After the limit it is meant.
	d.fast(400*time.Millisecond, "c")
	if n := d.count(entry.KindCharge); n != 2 {
		t.Errorf("%d charges after a second press 0.4 s later, want 2", n)
	}
}

// A glove that lies on a key: the first repeat comes after the keyboard's own
// delay, longer than the guard waits, and books a second act. The repeats that
// follow are quicker than a hand, so that act is crossed out again.
func TestAKeyHeldDownBooksOneAct(t *testing.T) {
	for _, delay := range []time.Duration{420 * time.Millisecond, 660 * time.Millisecond, 950 * time.Millisecond} {
		d := practising(t)
		d.press("f")
		d.wait(time.Minute)
		d.press("c")
		d.fast(delay, "c")
		if n := len(d.m.running.Reading().Charges); n != 3 {
			t.Fatalf("%v: %d charges, want the second booked for now", delay, n)
		}
		d.fast(33*time.Millisecond, strings.Split(strings.Repeat("c", 30), "")...)
		if n := len(d.m.running.Reading().Charges); n != 2 {
			t.Errorf("%v: %d charges stand, want 2", delay, n)
		}
		if d.count(entry.KindCharge) != 3 || d.count(entry.KindStrike) != 1 {
			t.Errorf("%v: %d charges and %d strikes in the journal", delay, d.count(entry.KindCharge), d.count(entry.KindStrike))
		}
		d.wait(time.Second)
		d.press("c") // and when it is lifted, the next press is meant
		if n := len(d.m.running.Reading().Charges); n != 3 {
			t.Errorf("%v: %d charges after the glove was lifted", delay, n)
		}
	}
	d := practising(t)
	d.press("c")
	d.fast(500*time.Millisecond, "c")
	d.fast(90*time.Millisecond, "c") // a key that bounces once is no held key
	if n := len(d.m.running.Reading().Charges); n != 2 {
		t.Errorf("a bounce: %d charges, want 2", n)
	}
}

func TestEveryActKeyIsGuarded(t *testing.T) {
	exempt := map[string]bool{}
	for _, b := range fireMap.repeating() {
		exempt[b.Keys()[0]] = true
	}
	for _, b := range fireMap.all() {
		k := b.Keys()[0]
		d := practising(t)
		d.press("c")
		d.press(k)
		before := len(d.presses())
		d.fast(100*time.Millisecond, k)
		held := len(d.presses()) > before && d.presses()[len(d.presses())-1].Held
		if held == exempt[k] {
			t.Errorf("%s (%s): held %v, exempt %v", k, b.Help().Desc, held, exempt[k])
		}
	}
}

func TestFastScoopsAllCount(t *testing.T) {
	d := practising(t)
	d.press("f")
	d.fast(60*time.Millisecond, "s", "s", "s", "s", "d")
	if n, _ := d.m.running.Reading().Charges[0].Parts.Count(entry.Ore); n != 4.5 {
		t.Errorf("%v scoops counted, want 4.5", n)
	}
}

func TestMergedKeysAreSplit(t *testing.T) {
	d := practising(t)
	d.press("f")
	filter := Filter(func() entry.Stamp { return d.at })
	d.at = later(d.at, time.Second)
	msg := filter(nil, tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("sssr")})
	if burst, ok := msg.(Burst); !ok || len(burst) != 4 {
		t.Fatalf("a merged run became %#v", msg)
	}
	d.send(msg)
	if n, _ := d.m.running.Reading().Charges[0].Parts.Count(entry.Ore); n != 3 {
		t.Errorf("%v scoops of a merged run counted, want 3", n)
	}
	if d.count(entry.KindRod) != 1 {
		t.Error("the r behind the scoops was lost")
	}
	// A merged run of one act's key is a leaning glove.
	d.at = later(d.at, time.Second)
	d.send(filter(nil, tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("tttt")}))
	if n := d.count(entry.KindTap); n != 1 {
		t.Errorf("%d taps of a merged run, want 1", n)
	}
}

func TestPasteActsNowhere(t *testing.T) {
	d := practising(t)
	before := len(d.acts())
	paste := tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("cscf\nu"), Paste: true}
	d.at = later(d.at, time.Second)
	msg := Filter(func() entry.Stamp { return d.at })(nil, paste)
	if _, one := msg.(Pressed); !one {
		t.Fatalf("a paste became %#v", msg)
	}
	d.send(msg)
	if len(d.acts()) != before {
		t.Errorf("pasted text acted: %v", d.acts()[before:])
	}
	d.answers("pasted")
	// In a field it is text, cleaned of what is no character.
	d.press("n")
	d.at = later(d.at, time.Second)
	d.send(Pressed{Key: paste, At: d.at})
	d.press("enter")
	if n, ok := d.last().(entry.Note); !ok || n.Text != "cscfu" {
		t.Errorf("the note is %+v", d.last())
	}
}

// A terminal that does not mark pastes sends them as keys.
func TestUnmarkedPasteActsNowhere(t *testing.T) {
	d := practising(t)
	before := len(d.acts())
	d.at = later(d.at, time.Second)
	d.send(Filter(func() entry.Stamp { return d.at })(nil, tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("cut the charcoal")}))
	d.wait(time.Second)
	if len(d.acts()) != before || d.m.dialog != nil {
		t.Errorf("pasted text acted: %v", d.acts()[before:])
	}
	if n := len(d.presses()); n < 16 {
		t.Errorf("%d keys journaled", n)
	}
}

func TestCaseBlind(t *testing.T) {
	d := practising(t)
	d.press("C", "S", "R")
	if d.count(entry.KindCharge) != 2 || d.count(entry.KindRod) != 1 {
		t.Errorf("capital letters did not act: %v", d.acts())
	}
	if e := d.m.running.Entries()[len(d.m.running.Entries())-1]; e.Key != "R" {
		t.Errorf("the key is journaled as %q, not as typed", e.Key)
	}
}

// A glove that leans on the key of a field must not type into it.
func TestLeaningGloveDoesNotType(t *testing.T) {
	d := practising(t)
	d.press("n")
	d.fast(30*time.Millisecond, "n", "n", "n", "n")
	d.press("n", "o")
	d.fast(30*time.Millisecond, "o", "n")
	d.press("enter")
	if n, ok := d.last().(entry.Note); !ok || n.Text != "noon" {
		t.Errorf("the note is %+v, want noon", d.last())
	}
}

// Enter ends a field; bouncing, it must do nothing more.
func TestBouncingEnter(t *testing.T) {
	d := practising(t)
	d.press("b", "7", "2", "0", "enter")
	d.fast(50*time.Millisecond, "enter")
	if d.m.dialog != nil {
		t.Error("a bouncing enter opened a list")
	}
	if d.count(entry.KindBlast) != 1 {
		t.Errorf("%d entries of blast", d.count(entry.KindBlast))
	}
	d.press("o", "c") // a weighed charge, part by part: a leaning enter goes no further than one field
	d.press("1", "enter")
	d.fast(50*time.Millisecond, "enter", "enter", "enter")
	if d.count(entry.KindCharge) != 0 {
		t.Error("a leaning enter ran through the fields")
	}
}

func TestDoubleChargeIsShown(t *testing.T) {
	d := practising(t)
	for range 5 {
		d.press("c")
		d.wait(10 * time.Minute)
	}
	d.press("c")
	d.wait(time.Minute)
	d.press("c")
	if n := d.count(entry.KindCharge); n != 7 {
		t.Fatalf("%d charges, want 7: a double is booked", n)
	}
	d.answers("double? it came so soon")
	d.shows("double?")
}

// A number may begin with the digit that chose its line in a list: "w, m, 1" for
// the first measure, then 1.8.
func TestADigitThatOpenedAFieldMayBeTypedIntoIt(t *testing.T) {
	d := practising(t)
	d.fast(60*time.Millisecond, "w", "m", "1", "1", ".", "8", "enter")
	d.press("w", "n")
	if w, ok := d.last().(entry.Weigh); !ok || w.Mass != 1.8 {
		t.Errorf("typed quickly, the measure weighs %#v, want 1.8 kg", d.last())
	}
}

func TestEnterIsNoYes(t *testing.T) {
	d := practising(t)
	before := d.count(entry.KindPhase)
	d.press("o", "k", "enter")
	if d.count(entry.KindPhase) != before {
		t.Error("enter closed the smelt")
	}
}

// The arrows that set the next charge are not what the keys about the last act
// speak of.
func TestCrossingOutAfterAnArrowHitsTheCharge(t *testing.T) {
	d := practising(t)
	d.press("c", "up", "u")
	if n := len(d.m.running.Reading().Charges); n != 0 {
		t.Errorf("%d charges left, want the charge crossed out", n)
	}
}
