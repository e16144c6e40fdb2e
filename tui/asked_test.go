package tui_test

import (
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"chargehand/model/entry"
	"chargehand/tui/desk"
	"chargehand/tui/fire"
	"chargehand/tui/screen"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// aside is a desk of the same state whose book takes nothing, to try one key on.
func aside(d *desk.Desk) *desk.Desk {
	return &desk.Desk{T: d.T, M: d.M, At: desk.Later(d.At, 5*time.Second), Book: desk.Memory{}, Hold: true}
}

// booked are the events that a desk has handed over, but for the keys.
func booked(d *desk.Desk) (evs []entry.Event) {
	for _, e := range d.Queue {
		if k := e.Kind(); k != entry.KindKeys && k != "" {
			evs = append(evs, e.Event)
		}
	}
	return evs
}

// uses tells whether a list has a line on a key.
func uses(c screen.Choice, k string) bool {
	for i, o := range c.Options {
		if o.Keys()[0] == k || !c.Question && i < 9 && screen.Digit(screen.Typed(k)) == string(rune('1'+i)) {
			return true
		}
	}
	return false
}

// Every key of the fire in every list and question that opens there: what the
// list does not use closes it and does what it does without it, and the answer
// says both. Charge, scoop, charcoal and cross out are in no list.
func TestNoListSwallowsAnAct(t *testing.T) {
	lists, _ := allDialogs(t)
	base := desk.Practising(t)
	base.Press("c")
	for title, list := range lists {
		for _, b := range fire.Map.All() {
			for _, k := range b.Keys() {
				d, bare := aside(base), aside(base)
				d.M = d.M.Open(list)
				d.Press(k)
				if uses(list, k) {
					if strings.Contains(screen.ActKeys, k) && !strings.HasPrefix(title, words.LateWhat("")) && title != words.DoViews && title != words.DoFilter {
						t.Errorf("%q gives %s another meaning", title, k)
					}
					continue
				}
				said, refused := d.M.Answer()
				if slices.Contains([]string{"up", "down", "left", "right"}, k) { // an arrow looks for a line
					if !refused && said != "" || d.M.Dialog() == nil || len(booked(d)) > 0 {
						t.Errorf("%q, %s: %q", title, k, said)
					}
					continue
				}
				bare.Press(k)
				if got, want := booked(d), booked(bare); !reflect.DeepEqual(got, want) {
					t.Errorf("%q, %s: booked %#v, want %#v", title, k, got, want)
				}
				if got, want := reflect.TypeOf(d.M.Dialog()), reflect.TypeOf(bare.M.Dialog()); got != want {
					t.Errorf("%q, %s: %v is open, want %v", title, k, got, want)
				}
				does, _ := bare.M.Answer()
				if !strings.Contains(said, words.NothingDone) || !strings.HasSuffix(said, does) {
					t.Errorf("%q, %s: the answer %q does not say both that it closed and %q", title, k, said, does)
				}
			}
		}
	}
}

// No list stays open for longer than it is looked at, near or far, and it says
// that it closed; the key that comes later acts.
func TestListsCloseThemselves(t *testing.T) {
	lists, _ := allDialogs(t)
	base := desk.Practising(t)
	base.Press("c")
	for title, list := range lists {
		d := aside(base)
		d.M = d.M.Open(list)
		d.Wait(screen.Unattended - 6*time.Second)
		if d.M.Dialog() == nil {
			t.Fatalf("%q closed too soon", title)
		}
		d.Wait(7 * time.Second)
		if d.M.Dialog() != nil {
			t.Errorf("%q stays open", title)
		}
		d.Answers(words.ClosedItself(title))
	}
	d := aside(base)
	d.Press("l")
	d.At = desk.Later(d.At, screen.Unattended) // and before the next look at the clock
	d.Press("c")
	if len(booked(d)) != 1 {
		t.Errorf("a late charge booked %v", booked(d))
	}
	d.Answers(words.ClosedItself(words.LookWhere))
	d.Answers("charge 2")
}

// An open list is read from afar too, and over the whole width near by.
func TestAnOpenListStandsOut(t *testing.T) {
	d := desk.SitAt(t, desk.Memory{}, desk.Noon, theme.Theme{ASCII: true})
	d.Press("p", "o", "m", "space", "l")
	first := strings.Split(d.Picture(), "\n")[0]
	d.Press("esc")
	if plain := strings.Split(d.Picture(), "\n")[0]; first == plain {
		t.Errorf("the far view does not say that a list is open:\n%s", first)
	}
}

// Enter alone opens and books nothing at the fire, and in a list takes its
// default or says that it has none.
func TestEnterOpensNothing(t *testing.T) {
	lists, _ := allDialogs(t)
	base := desk.Practising(t)
	d := aside(base)
	d.Press("enter")
	if _, refused := d.M.Answer(); !refused || d.M.Dialog() != nil || len(booked(d)) > 0 {
		t.Errorf("enter opened %v", d.M.Dialog())
	}
	for title, list := range lists {
		d := aside(base)
		d.M = d.M.Open(list)
		hint := list.Ask(d.M.Shared()).Hint
		if list.Question {
			continue
		}
		if !strings.HasPrefix(hint, "enter") {
			t.Errorf("%q does not say what enter takes: %q", title, hint)
		}
		d.Press("enter")
		if refused := d.M.Dialog() != nil; refused != strings.HasPrefix(hint, words.EnterNothing) && list.Default == "" && list.Done == nil {
			t.Errorf("%q: enter does not do what it says: %q", title, hint)
		}
	}
}

// A day keyed at random moments with lists left open: the journal holds the
// acts of the script, each once and in order. A key that an open list has a line
// on is the list's; the script comes to it after the list has closed itself.
func TestListsLeftOpenLoseNothing(t *testing.T) {
	openers := [][]string{
		{"l"}, {"l", "t"}, {"o"}, {"o", "a"}, {"o", "t"}, {"o", "r"}, {"o", "o"}, {"o", "w"}, {"o", "w", "r"}, {"o", "k"}, {"o", "b"},
		{"o", "d"}, {"o", "w", "a"}, {"w"}, {"w", "m"}, {"b", "m"}, {"v"}, {"v", "e"},
	}
	acts := []string{"c", "s", "f", "d", "r", "p", "t", "k", "u", "g", "up", "c", "c"}
	rapid.Check(t, func(rt *rapid.T) {
		base := desk.Practising(t)
		base.Press("c")
		left, alone := aside(base), aside(base)
		for range rapid.IntRange(1, 40).Draw(rt, "acts") {
			act := rapid.SampledFrom(acts).Draw(rt, "act")
			gap := time.Duration(rapid.IntRange(1, 40).Draw(rt, "s")) * time.Second
			if rapid.Bool().Draw(rt, "opens") {
				left.Press(rapid.SampledFrom(openers).Draw(rt, "list")...)
				if c, ok := left.M.Dialog().(screen.Choice); act == "up" || ok && uses(c, act) || left.M.Dialog() != nil && !ok {
					gap = max(gap, screen.Readable)
				}
			}
			until := desk.Later(desk.Later(left.At, gap), time.Second)
			left.At, alone.At = until, until
			left.Press(act)
			alone.Press(act)
			if left.M.Dialog() != nil && left.M.Dialog().Typing() {
				rt.Fatalf("%s opened a field", act)
			}
		}
		if got, want := booked(left), booked(alone); !reflect.DeepEqual(kindsOf(got), kindsOf(want)) {
			rt.Fatalf("booked %v, the script %v", kindsOf(got), kindsOf(want))
		}
	})
}

func kindsOf(evs []entry.Event) (ks []entry.Kind) {
	for _, ev := range evs {
		if k := ev.Kind(); k != entry.KindCaution && k != entry.KindTestimony {
			ks = append(ks, k)
		}
	}
	return ks
}
