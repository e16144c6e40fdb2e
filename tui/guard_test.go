package tui_test

import (
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/entry"
	"chargehand/tui"
	"chargehand/tui/desk"
	"chargehand/tui/fire"
	"chargehand/tui/words"
)

func TestLeaningGlove(t *testing.T) {
	d := desk.Practising(t)
	d.Press("c")
	d.Fast(399*time.Millisecond, "c")
	if n := d.Count(entry.KindCharge); n != 1 {
		t.Fatalf("%d charges booked by a leaning glove, want 1", n)
	}
	d.Answers("leaning glove")
	ps := d.Presses()
	if last := ps[len(ps)-1]; last.Key != "c" || !last.Held {
		t.Errorf("the held key was journaled as %+v", last)
	}
	if len(d.Queue) != 0 || d.M.Unkept() != 0 {
		t.Error("the held key was not written down at once")
	}
	// As long as the glove leans, nothing more is booked.
	d.Fast(30*time.Millisecond, strings.Split(strings.Repeat("c", 50), "")...)
	if n := d.Count(entry.KindCharge); n != 1 {
		t.Errorf("%d charges booked while the glove leaned, want 1", n)
	}
	// After the limit it is meant.
	d.Fast(400*time.Millisecond, "c")
	if n := d.Count(entry.KindCharge); n != 2 {
		t.Errorf("%d charges after a second press 0.4 s desk.Later, want 2", n)
	}
}

// A glove that lies on a key: the first repeat comes after the keyboard's own
// delay, longer than the guard waits, and books a second act. The repeats that
// follow are quicker than a hand, so that act is crossed out again.
func TestAKeyHeldDownBooksOneAct(t *testing.T) {
	for _, delay := range []time.Duration{420 * time.Millisecond, 660 * time.Millisecond, 950 * time.Millisecond} {
		d := desk.Practising(t)
		d.Press("f")
		d.Wait(time.Minute)
		d.Press("c")
		d.Fast(delay, "c")
		if n := len(d.M.Running().Reading().Charges); n != 3 {
			t.Fatalf("%v: %d charges, want the second booked for now", delay, n)
		}
		d.Fast(33*time.Millisecond, strings.Split(strings.Repeat("c", 30), "")...)
		if n := len(d.M.Running().Reading().Charges); n != 2 {
			t.Errorf("%v: %d charges stand, want 2", delay, n)
		}
		if d.Count(entry.KindCharge) != 3 || d.Count(entry.KindStrike) != 1 {
			t.Errorf("%v: %d charges and %d strikes in the journal", delay, d.Count(entry.KindCharge), d.Count(entry.KindStrike))
		}
		d.Wait(time.Second)
		d.Press("c") // and when it is lifted, the next press is meant
		if n := len(d.M.Running().Reading().Charges); n != 3 {
			t.Errorf("%v: %d charges after the glove was lifted", delay, n)
		}
	}
	d := desk.Practising(t)
	d.Press("c")
	d.Fast(500*time.Millisecond, "c")
	d.Fast(90*time.Millisecond, "c") // a key that bounces once is no held key
	if n := len(d.M.Running().Reading().Charges); n != 2 {
		t.Errorf("a bounce: %d charges, want 2", n)
	}
}

func TestEveryActKeyIsGuarded(t *testing.T) {
	exempt := map[string]bool{}
	for _, b := range fire.Map.Repeating() {
		exempt[b.Keys()[0]] = true
	}
	for _, b := range fire.Map.All() {
		k := b.Keys()[0]
		d := desk.Practising(t)
		d.Press("c")
		d.Press(k)
		before := len(d.Presses())
		d.Fast(100*time.Millisecond, k)
		held := len(d.Presses()) > before && d.Presses()[len(d.Presses())-1].Held
		if held == exempt[k] {
			t.Errorf("%s (%s): held %v, exempt %v", k, b.Help().Desc, held, exempt[k])
		}
	}
}

func TestFastScoopsAllCount(t *testing.T) {
	d := desk.Practising(t)
	d.Press("f")
	d.Fast(60*time.Millisecond, "s", "s", "s", "s", "d")
	if n, _ := d.M.Running().Reading().Charges[0].Parts.Count(entry.Ore); n != 4.5 {
		t.Errorf("%v scoops counted, want 4.5", n)
	}
}

func TestMergedKeysAreSplit(t *testing.T) {
	d := desk.Practising(t)
	d.Press("f")
	filter := tui.Filter(func() entry.Stamp { return d.At })
	d.At = desk.Later(d.At, time.Second)
	msg := filter(nil, tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("sssr")})
	if burst, ok := msg.(tui.Burst); !ok || len(burst) != 4 {
		t.Fatalf("a merged run became %#v", msg)
	}
	d.Send(msg)
	if n, _ := d.M.Running().Reading().Charges[0].Parts.Count(entry.Ore); n != 3 {
		t.Errorf("%v scoops of a merged run counted, want 3", n)
	}
	if d.Count(entry.KindRod) != 1 {
		t.Error("the r behind the scoops was lost")
	}
	// A merged run of one act's key is a leaning glove.
	d.At = desk.Later(d.At, time.Second)
	d.Send(filter(nil, tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("tttt")}))
	if n := d.Count(entry.KindTap); n != 1 {
		t.Errorf("%d taps of a merged run, want 1", n)
	}
}

func TestPasteActsNowhere(t *testing.T) {
	d := desk.Practising(t)
	before := len(d.Acts())
	paste := tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("cscf\nu"), Paste: true}
	d.At = desk.Later(d.At, time.Second)
	msg := tui.Filter(func() entry.Stamp { return d.At })(nil, paste)
	if _, one := msg.(tui.Pressed); !one {
		t.Fatalf("a paste became %#v", msg)
	}
	d.Send(msg)
	if len(d.Acts()) != before {
		t.Errorf("pasted text acted: %v", d.Acts()[before:])
	}
	d.Answers("pasted")
	// In a field it is text, cleaned of what is no character.
	d.Press("n")
	d.At = desk.Later(d.At, time.Second)
	d.Send(tui.Pressed{Key: paste, At: d.At})
	d.Press("enter")
	if n, ok := d.Last().(entry.Note); !ok || n.Text != "cscfu" {
		t.Errorf("the note is %+v", d.Last())
	}
}

// A terminal that does not mark pastes sends them as keys.
func TestUnmarkedPasteActsNowhere(t *testing.T) {
	d := desk.Practising(t)
	before := len(d.Acts())
	d.At = desk.Later(d.At, time.Second)
	d.Send(tui.Filter(func() entry.Stamp { return d.At })(nil, tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("cut the charcoal")}))
	d.Wait(time.Second)
	if len(d.Acts()) != before || d.M.Dialog() != nil {
		t.Errorf("pasted text acted: %v", d.Acts()[before:])
	}
	if n := len(d.Presses()); n < 16 {
		t.Errorf("%d keys journaled", n)
	}
}

// What a hand types while the program stands still comes in one read too, and acts, whatever acts
// of the day it is.
func TestADozenActsInOneReadAct(t *testing.T) {
	d := desk.Practising(t)
	before := len(d.Acts())
	d.At = desk.Later(d.At, time.Second)
	d.Send(tui.Filter(func() entry.Stamp { return d.At })(nil, tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("csdftrpmgsc")}))
	d.Wait(time.Second)
	kinds := map[entry.Kind]int{}
	for _, ev := range d.Acts()[before:] {
		kinds[ev.Kind()]++
	}
	if kinds[entry.KindCharge] < 3 || kinds[entry.KindTap] != 1 || kinds[entry.KindRod] != 1 || kinds[entry.KindPoke] != 1 {
		t.Errorf("it booked %v\n%s", kinds, d.Picture())
	}
}

func TestCaseBlind(t *testing.T) {
	d := desk.Practising(t)
	d.Press("C", "S", "R")
	if d.Count(entry.KindCharge) != 2 || d.Count(entry.KindRod) != 1 {
		t.Errorf("capital letters did not act: %v", d.Acts())
	}
	if e := d.M.Running().Entries()[len(d.M.Running().Entries())-1]; e.Key != "R" {
		t.Errorf("the key is journaled as %q, not as typed", e.Key)
	}
}

// A glove that leans on the key of a field must not type into it.
func TestLeaningGloveDoesNotType(t *testing.T) {
	d := desk.Practising(t)
	d.Press("n")
	d.Fast(30*time.Millisecond, "n", "n", "n", "n")
	d.Press("n", "o")
	d.Fast(30*time.Millisecond, "o", "n")
	d.Press("enter")
	if n, ok := d.Last().(entry.Note); !ok || n.Text != "noon" {
		t.Errorf("the note is %+v, want noon", d.Last())
	}
}

// Enter ends a field; bouncing, it must do nothing more.
func TestBouncingEnter(t *testing.T) {
	d := desk.Practising(t)
	d.Press("b", "7", "2", "0", "enter")
	d.Fast(50*time.Millisecond, "enter")
	if d.M.Dialog() != nil {
		t.Error("a bouncing enter opened a list")
	}
	if d.Count(entry.KindBlast) != 1 {
		t.Errorf("%d entries of blast", d.Count(entry.KindBlast))
	}
	d.Press("o", "r", "w") // a weighed charge, part by part: a leaning enter goes no further than one field
	d.Press("1", "enter")
	d.Fast(50*time.Millisecond, "enter", "enter", "enter")
	if d.Count(entry.KindCharge) != 0 {
		t.Error("a leaning enter ran through the fields")
	}
}

func TestDoubleChargeIsShown(t *testing.T) {
	d := desk.Practising(t)
	for range 5 {
		d.Press("c")
		d.Wait(10 * time.Minute)
	}
	d.Press("c")
	d.Wait(time.Minute)
	d.Press("c")
	if n := d.Count(entry.KindCharge); n != 7 {
		t.Fatalf("%d charges, want 7: a double is booked", n)
	}
	d.Answers("double? u crosses it out")
	for _, said := range []string{"", words.ListClosed + "; "} { // and at 80 columns, behind a list that it closed too
		if said != "" {
			d.Press("l", "c")
		}
		if text, _ := d.M.Answer(); !strings.Contains(d.M.Sized(80, 24).Picture(), text) || !strings.HasPrefix(text, said) {
			t.Errorf("%q is cut at 80 columns", text)
		}
	}
	d.Shows("double?")
	for _, size := range [][2]int{{80, 24}, {120, 36}} { // the warning asks for it: its key stands in the foot
		if foot := lastRow(d.M.Sized(size[0], size[1]).Picture()); strings.Count(foot, "u cross out") != 1 {
			t.Errorf("%v: the foot says %q", size, foot)
		}
	}
}

func lastRow(picture string) string {
	rows := strings.Split(strings.TrimRight(picture, "\n"), "\n")
	return rows[len(rows)-1]
}

// A number may begin with the digit that chose its line in a list: "w, m, 1" for
// the first measure, then 1.8.
func TestADigitThatOpenedAFieldMayBeTypedIntoIt(t *testing.T) {
	d := desk.Practising(t)
	d.Fast(60*time.Millisecond, "w", "m", "1", "1", ".", "8", "enter")
	d.Press("w", "n")
	if w, ok := d.Last().(entry.Weigh); !ok || w.Mass != 1.8 {
		t.Errorf("typed quickly, the measure weighs %#v, want 1.8 kg", d.Last())
	}
}

func TestEnterIsNoYes(t *testing.T) {
	d := desk.Practising(t)
	before := d.Count(entry.KindPhase)
	d.Press("o", "k", "enter")
	if d.Count(entry.KindPhase) != before {
		t.Error("enter closed the smelt")
	}
}

// The arrows that set the next charge are not what the keys about the last act
// speak of.
func TestCrossingOutAfterAnArrowHitsTheCharge(t *testing.T) {
	d := desk.Practising(t)
	d.Press("c", "up", "u")
	if n := len(d.M.Running().Reading().Charges); n != 0 {
		t.Errorf("%d charges left, want the charge crossed out", n)
	}
}
