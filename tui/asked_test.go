package tui_test

import (
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"chargehand/model/entry"
	modelwords "chargehand/model/words"
	"chargehand/tui/desk"
	"chargehand/tui/fire"
	"chargehand/tui/screen"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// aside is a desk of the same state whose book takes nothing, to try one key on.
func aside(d *desk.Desk) *desk.Desk {
	return &desk.Desk{T: d.T, M: d.M, At: desk.Later(d.At, 5*time.Second), Book: desk.Memory{}, Hold: true, Rounds: 1}
}

// booked are the events that a desk has handed over, but for the keys.
func booked(d *desk.Desk) (evs []entry.Event) {
	for _, e := range d.Queue {
		if k := e.Kind(); k != entry.KindKeys && k != entry.KindCaution && k != entry.KindTestimony && k != entry.KindDraft && k != "" {
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

// No list stays open for longer than it is looked at, near or far, and it says
// that it closed; the key that comes later acts.
func TestListsCloseThemselves(t *testing.T) {
	lists, _ := allDialogs(t)
	base := desk.Practising(t)
	base.Press("c")
	for title, list := range lists {
		list.Left = nil
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

// keyedLater is what is keyed after so long.
type keyedLater struct {
	after time.Duration
	keys  []string
}

// The scripted day: what is keyed, and how long after what was keyed before. Keys that a
// list takes follow each other at once.
var scriptedDay = []keyedLater{
	{time.Minute, []string{"o", "p", "y"}}, {40 * time.Minute, []string{"b", "3", "0", "0", "enter"}}, {30 * time.Minute, []string{"o", "i"}}, {2 * time.Minute, []string{"f"}},
	{4 * time.Minute, []string{"f"}}, {time.Minute, []string{"y"}}, {5 * time.Minute, []string{"b", "7", "0", "0", "enter"}}, {15 * time.Minute, []string{"o", "m"}},
	{time.Minute, []string{"c"}}, {10 * time.Minute, []string{"c"}}, {11 * time.Minute, []string{"c"}}, {2 * time.Minute, []string{"l", "p", "w"}}, {9 * time.Minute, []string{"c"}},
	{time.Minute, []string{"s"}}, {10 * time.Minute, []string{"c"}}, {3 * time.Minute, []string{"e", "9", "0", "0", "enter", "p"}}, {8 * time.Minute, []string{"c"}}, {2 * time.Minute, []string{"u"}},
	{time.Minute, []string{"c"}}, {4 * time.Minute, []string{"i", "1", "5", "enter"}}, {6 * time.Minute, []string{"f"}}, {9 * time.Minute, []string{"t"}}, {time.Minute, []string{"r"}},
	{2 * time.Minute, []string{"c"}}, {10 * time.Minute, []string{"g"}}, {time.Minute, []string{"b", "o"}}, {50 * time.Minute, []string{"b", "n"}}, {time.Minute, []string{"y"}}, {5 * time.Minute, []string{"c"}},
	{10 * time.Minute, []string{"o", "l"}}, {12 * time.Minute, []string{"f"}}, {10 * time.Minute, []string{"o", "b"}}, {30 * time.Minute, []string{"o", "o", "p"}},
	{5 * time.Minute, []string{"w", "b", "4", "enter", "h"}}, {5 * time.Minute, []string{"o", "k", "y", "enter"}},
}

// The scripted day keyed with lists, questions and fields left open at random moments: the
// journal holds the acts of the script, each once and in order. A key that what is open has
// a use for is its own; the script comes to it after that has closed itself.
func TestTheScriptedDayLosesNothing(t *testing.T) {
	openers := [][]string{
		{"l"}, {"l", "g"}, {"o"}, {"o", "a"}, {"o", "t"}, {"o", "r"}, {"o", "o"}, {"o", "w"}, {"o", "w", "r"}, {"o", "k"}, {"o", "d", "n"},
		{"o", "d"}, {"o", "w", "a"}, {"w"}, {"w", "m"}, {"b", "m"}, {"v"}, {"v", "e"}, {"b"}, {"b", "4"}, {"i", "7"}, {"n"}, {"n", "w", "e", "t"}, {"o", "e", "5"}, {"w", "b", "3"},
		{"o", "r", "q", "r"}, {"o", "j", "2"}, {"o", "y"},
	}
	rapid.Check(t, func(rt *rapid.T) {
		base := desk.Practising(t)
		left, alone := aside(base), aside(base)
		for _, step := range scriptedDay {
			gap, key := step.after, step.keys[0]
			early := time.Duration(rapid.IntRange(1, 40).Draw(rt, "s")) * time.Second
			if rapid.Bool().Draw(rt, "opens") {
				left.At = desk.Later(left.At, gap-early)
				left.Press(rapid.SampledFrom(openers).Draw(rt, "list")...)
				gap = early
				switch open := left.M.Dialog().(type) {
				case nil:
				case screen.Field:
					if !open.Input.Number() || !strings.Contains(screen.ActKeys, key) {
						gap = screen.Readable
					}
				case screen.Choice:
					if uses(open, key) {
						gap = screen.Readable
					}
				default:
					gap = screen.Readable
				}
			}
			until := desk.Later(desk.Later(left.At, gap), time.Second)
			alone.At = desk.Later(alone.At, until.Wall.Sub(alone.At.Wall))
			left.At = alone.At
			for _, d := range []*desk.Desk{left, alone} {
				d.Press(step.keys...)
				if d.M.Dialog() != nil {
					rt.Fatalf("%v leaves %#v open", step.keys, d.M.Dialog())
				}
				if f, is := d.M.Screen(screen.Fire).(fire.Screen); !is || d.M.Active() != screen.Fire || f.IsFar() {
					rt.Fatalf("%v: not at the fire", step.keys)
				}
			}
		}
		if diff := cmp.Diff(acts(alone), acts(left)); diff != "" {
			rt.Fatalf("the script (-) and the journal (+) part:\n%s", diff)
		}
	})
}

// acts are the events of acts that a desk has handed over, in order, without what points
// at another entry by its number.
func acts(d *desk.Desk) (said []string) {
	for _, ev := range booked(d) {
		switch ev.(type) {
		case entry.Strike, entry.Level:
			said = append(said, string(ev.Kind()))
		case entry.Remind:
		default:
			said = append(said, modelwords.Units{}.Event(ev))
		}
	}
	return said
}

// A digit that comes as a field closes is none of the fire's; later it is.
func TestDigitsAreDeadAsAFieldCloses(t *testing.T) {
	d := aside(desk.Practising(t))
	d.Press("b", "7", "0", "enter")
	before := len(booked(d))
	d.Fast(300*time.Millisecond, "0")
	d.Answers(words.DigitAfterField("0"))
	if len(booked(d)) != before {
		t.Errorf("a late digit booked %v", booked(d)[before:])
	}
	d.At = desk.Later(d.At, time.Second)
	d.Press("0")
	if len(booked(d)) != before+1 {
		t.Error("a digit of its own does nothing")
	}
}

// A step that refuses stays, with what was typed.
func TestRefusedStepStays(t *testing.T) {
	d := aside(desk.Practising(t))
	d.Press("b", "m", "o")
	for _, text := range []string{"50", "30", "1"} {
		d.Write(text)
		d.Press("enter")
	}
	if f, ok := d.M.Dialog().(screen.Field); !ok || f.Label != words.ReadsPressure || f.Input.Text() != "1" {
		t.Errorf("%#v is open: %s", d.M.Dialog(), d.Picture())
	}
	d.Press("esc")
	d.Press("b")
	d.Write("1,000")
	d.Press("enter")
	if f, ok := d.M.Dialog().(screen.Field); !ok || f.Input.Text() != "1,000" {
		t.Errorf("1,000 was taken for one or the other: %v", booked(d))
	}
	d.Answers("type 1000 or 1.0: 1,000 may be either")
	d.Press("esc", "b", "1", "e", "3", "enter")
	for _, ev := range booked(d) {
		if b, ok := ev.(entry.Blast); ok && b.Volume != entry.Some(entry.LitrePerMinute(3)) {
			t.Errorf("1e3 became %v", b)
		}
	}
	d.Press("b", "0", "enter")
	if evs := booked(d); evs[len(evs)-1] != entry.Event(entry.Blast{State: entry.BlastOff}) {
		t.Errorf("0 l/min is kept as %#v", evs[len(evs)-1])
	}
}

// What is optional does not cost what was typed before: left by esc, by an act or
// by nobody, a temperature stays.
func TestTemperatureStaysWithoutItsPlace(t *testing.T) {
	for name, leaves := range map[string]func(*desk.Desk){
		"esc":    func(d *desk.Desk) { d.Press("esc") },
		"act":    func(d *desk.Desk) { d.Press("c") },
		"nobody": func(d *desk.Desk) { d.Wait(screen.Unattended) },
		"late":   func(d *desk.Desk) { d.At = desk.Later(d.At, time.Minute); d.Press("c") },
	} {
		d := aside(desk.Practising(t))
		d.Press("e")
		d.Write("862")
		d.Press("enter")
		leaves(d)
		evs := booked(d)
		if len(evs) == 0 || evs[0] != entry.Event(entry.Temperature{Degrees: 862}) {
			t.Errorf("%s: booked %#v", name, evs)
			continue
		}
		if want := 2; strings.HasPrefix(name, "act") && len(evs) != want {
			t.Errorf("%s: booked %#v", name, evs)
		}
		d.Answers("862")
	}
}

// A field that nobody types into any more closes by itself, so that it takes no
// act for text, and what is half typed stands in it when it opens again.
func TestHalfTypedWorkIsKept(t *testing.T) {
	d := aside(desk.Practising(t))
	d.Press("n")
	d.Write("wind")
	d.Wait(screen.Readable - time.Second)
	if d.M.Dialog() == nil {
		t.Fatal("closed too soon")
	}
	d.Wait(2 * time.Second)
	d.Answers(words.HalfTyped(words.DoNote, "wind"))
	d.Press("c", "n")
	d.Shows("go on, or x")
	d.Write(" west")
	d.Press("enter")
	evs := booked(d)
	if len(evs) != 2 || evs[1] != entry.Event(entry.Note{Text: "wind west"}) {
		t.Errorf("booked %#v", evs)
	}
	d.Press("b", "7", "0")
	d.At = desk.Later(d.At, screen.Readable) // no look at the clock before the key
	d.Press("c", "b", "x")
	if f, ok := d.M.Dialog().(screen.Field); !ok || f.Input.Text() != "" || len(booked(d)) != 3 {
		t.Errorf("%#v, booked %#v", d.M.Dialog(), booked(d))
	}
}

// A key that comes just as the list closed itself that it was meant for does nothing; one that the list had no use for acts.
func TestAKeyIsDeadAsItsListClosesItself(t *testing.T) {
	d := aside(desk.Practising(t))
	for _, c := range []struct {
		key  string
		late time.Duration
		acts bool
	}{{"g", 300 * time.Millisecond, false}, {"g", 1500 * time.Millisecond, true}, {"c", 300 * time.Millisecond, true}} {
		d.Wait(10 * time.Minute)
		d.Press("l")
		before := len(booked(d))
		d.At = desk.Later(d.At, screen.Unattended+c.late-500*time.Millisecond) // a press comes half a second after what was before it
		d.Press(c.key)
		if text, refused := d.M.Answer(); c.acts == (refused && strings.Contains(text, words.KeyAfterList(c.key))) {
			t.Errorf("%s %v after its list closed: %q", c.key, c.late, text)
		}
		if n := len(booked(d)); !c.acts && n != before {
			t.Errorf("%s %v after its list closed booked %v", c.key, c.late, booked(d)[before:])
		}
		d.Press("esc")
	}
}

// An act closes a list that has no use for it; digits that were on their way to a field behind the list are none of the fire's.
func TestDigitsAreDeadAsAnActClosesAList(t *testing.T) {
	d := aside(desk.Practising(t))
	d.Press("w", "c")
	before := len(booked(d))
	d.Fast(300*time.Millisecond, "7")
	d.Answers(words.DigitAfterField("7"))
	if len(booked(d)) != before {
		t.Errorf("a late digit booked %v", booked(d)[before:])
	}
}
