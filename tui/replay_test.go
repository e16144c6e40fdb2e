package tui

import (
	"fmt"
	"reflect"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"pgregory.net/rapid"

	"chargehand/model"
	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/fold"
	"chargehand/model/rule"
	"chargehand/model/words"
	"chargehand/tui/theme"
)

// showed is what the screen showed of a moment.
type showed struct {
	reading  figure.Reading
	warnings []rule.Warning
}

// Whatever is keyed, with late entries, crossings-out, stepped clocks, a slow
// disk and restarts: Replay as we saw it shows again, bit for bit, what stood on
// the screen at each entry and every ten seconds, once all of it was kept.
func TestReplayIsWhatWasShown(t *testing.T) {
	acts := [][]string{
		{"c"}, {"c"}, {"c"}, {"s"}, {"f"}, {"u"}, {"m"}, {"g"}, {"t"}, {"p"}, {"r"}, {"a"}, {"y"}, {"up"}, {"k"}, {"b", "o"}, {"b", "n"},
		{"b", "7", "0", "0", "enter"}, {"l", "p", "w"}, {"l", "s", "g"}, {"i", "2", "0", "enter"}, {"e", "9", "0", "0", "enter", "p"},
		{"o", "e", "1", "2", "enter", "c", "1", "enter", "2", "enter"}, {"o", "e", "5", "enter", "r"}, {"o", "u"}, {"o", "h", "y"},
		{"w", "m", "b", "2", "enter", "w", "n"}, {"v", "esc"}, {"h", "esc"}, {"v", "r", "right", "esc"}, {"o", "g", "J", "enter"},
	}
	rapid.Check(t, func(rt *rapid.T) {
		d := sitAt(t, memory{}, noon, theme.Theme{})
		d.stamps = true
		d.press("p")
		shown := map[time.Duration]showed{}
		see := func() {
			if d.m.running.Running() && d.m.Unkept() == 0 {
				r := d.m.running.Reading()
				shown[r.At] = showed{r, d.m.running.Warnings()}
			}
		}
		d.press("o", "m", "y")
		see()
		boots := 1
		for range rapid.IntRange(5, 20).Draw(rt, "acts") {
			switch rapid.IntRange(0, 24).Draw(rt, "chance") {
			case 0:
				d.at.Wall = d.at.Wall.Add(time.Duration(rapid.IntRange(-1800, 1800).Draw(rt, "step")) * time.Second)
			case 1:
				d.hold = !d.hold
				d.acknowledge()
				see() // what was kept just now stands on the screen of this very moment
			case 2:
				d.hold = false
				d.wait(time.Second)
				boots++
				at := later(d.at, time.Duration(rapid.IntRange(20, 600).Draw(rt, "away"))*time.Second)
				at.Boot, at.Mono = fmt.Sprintf("boot-%d", boots), time.Minute
				d = sitAt(t, d.book, at, theme.Theme{})
				d.stamps = true
				d.press("g")
				see()
			}
			for _, k := range rapid.SampledFrom(acts).Draw(rt, "keys") {
				d.press(k)
				see()
			}
			for range rapid.IntRange(0, 40).Draw(rt, "ticks") {
				d.wait(rule.Grid)
				see()
			}
		}
		d.hold = false
		d.acknowledge()
		see()
		d.wait(time.Second)
		kept := d.m.running.Entries()
		c := courseOf(d.m.running)
		for at, was := range shown {
			known := fold.KnownAt(kept, at)
			if got := model.Read(kept, known, at); !reflect.DeepEqual(got, was.reading) {
				rt.Fatalf("at %v, known %d: replay reads\n%+v\nshown was\n%+v", at, known, got, was.reading)
			}
			if got := model.Warnings(kept, known, at); !reflect.DeepEqual(got, was.warnings) {
				rt.Fatalf("at %v, known %d: replay warns\n%+v\nshown was\n%+v", at, known, got, was.warnings)
			}
		}
		for at, was := range shown { // the screen itself; a few, each folds anew
			r := replay{course: c, asSeen: true}.to(at)
			if !reflect.DeepEqual(r.then.Reading(), was.reading) || !reflect.DeepEqual(r.then.Warnings(), was.warnings) {
				rt.Fatalf("at %v the screen shows another moment", at)
			}
			break
		}
	})
}

// replaying is Replay of the invented smelt, or of the one at work.
func replaying(t *testing.T, from string) *desk {
	t.Helper()
	switch from {
	case "demo":
		d := sit(t)
		d.press("l", "r")
		return d
	default:
		d := burning(t)
		d.press("b", "o")
		d.pass(3 * time.Minute)
		d.press("v", "r")
		return d
	}
}

func (d *desk) replay() replay { return d.m.screens[replayScreen].(replay) }

func TestReplayMoves(t *testing.T) {
	d := replaying(t, "own")
	d.shows(words.ThePast)
	d.shows(words.AsWeSaw)
	if r := d.replay(); r.at != 0 || r.plays {
		t.Fatalf("it begins at %v", r.at)
	}
	d.press("right", "right", "right")
	if r := d.replay(); r.at != 3*time.Minute {
		t.Errorf("three minutes forth is %v", r.at)
	}
	d.press("left", "pgdown")
	if r := d.replay(); r.at != 12*time.Minute {
		t.Errorf("and one back and ten forth is %v", r.at)
	}
	d.press("end")
	end := d.replay()
	if end.at != end.course.Span || len(end.then.Reading().Charges) != 6 {
		t.Errorf("the end is %v with %d charges", end.at, len(end.then.Reading().Charges))
	}
	d.press("right")
	d.answers(words.NoMoreSteps)
	d.press("home", "e")
	for i := range end.course.Taken[1:] {
		d.press("right")
		if got := d.replay().at; got != end.course.Taken[i+1] {
			t.Errorf("entry %d is at %v, not %v", i+1, got, end.course.Taken[i+1])
		}
	}
	d.press("end", "w", "left")
	if r := d.replay(); len(r.course.onsets) == 0 || r.at != r.course.onsets[len(r.course.onsets)-1] {
		t.Errorf("the last warning is at %v, not %v", r.course.onsets, r.at)
	}
	if d.m.answer.text == "" {
		t.Error("it does not say which warning")
	}
	// Another screen and back: it stands where it stood.
	at := d.replay().at
	d.press("h", "esc")
	if r := d.replay(); r.at != at || d.m.active != replayScreen {
		t.Errorf("back at %v", r.at)
	}
}

func TestReplayPlays(t *testing.T) {
	d := replaying(t, "own")
	frames := func(n int) {
		for range n {
			d.at = later(d.at, pace)
			d.send(Frame{At: d.at})
		}
	}
	d.press("enter")
	if !d.m.playing() {
		t.Fatal("it does not play")
	}
	frames(10)
	if r := d.replay(); r.at != time.Minute { // a second at sixty times
		t.Errorf("after a second it stands at %v", r.at)
	}
	d.press("up")
	d.answers("300 times")
	for range 10 {
		d.press("up")
	}
	if s := speeds[d.replay().speed]; s != 3600 {
		t.Errorf("the fastest is %d", s)
	}
	frames(600)
	if r := d.replay(); r.at != r.course.Span || r.plays {
		t.Errorf("it does not stand at its end: %v", r.at)
	}
	d.press("b", "enter")
	frames(600)
	if r := d.replay(); r.at != 0 || r.plays {
		t.Errorf("backwards it does not stand at the light: %v", r.at)
	}
	d.press("b", "enter", "esc")
	if d.m.playing() {
		t.Error("it plays behind another screen")
	}
}

// An entry put in late is not there as we saw it, and is as we know it.
func TestReplayKnowsTwoTimes(t *testing.T) {
	d := practising(t)
	d.press("c")
	d.pass(20 * time.Minute)
	d.press("o", "e", "1", "0", "enter", "r")
	d.pass(5 * time.Minute)
	d.press("v", "r")
	for range 15 {
		d.press("right")
	}
	rodded := func() bool {
		for _, l := range lastEntries(words.Units{}, d.replay().then, 9) {
			if l.Text == (words.Units{}).Event(entry.Rod{}) {
				return true
			}
		}
		return false
	}
	if rodded() {
		t.Error("known before it was entered")
	}
	d.press("k")
	d.shows(words.AsWeKnow)
	if !rodded() {
		t.Error("not known though it was entered")
	}
}

// Of an imported smelt only the second is there, and that is said.
func TestReplayOfAnImportedSmelt(t *testing.T) {
	d := replaying(t, "demo")
	d.shows(words.AsWeKnow)
	d.press("k")
	d.answers(words.OnlyAsWeKnow)
	d.press("end")
	if n := len(d.replay().then.Reading().Charges); n != 5 {
		t.Errorf("%d charges at its end", n)
	}
	d.press("c", "s", "u")
	if len(d.m.looked.Entries()) != 7 {
		t.Error("Replay took an entry")
	}
}

// The keys of Replay are written down in the house, also while a smelt runs.
func TestReplayKeysAreTheHouses(t *testing.T) {
	d := replaying(t, "own")
	d.wait(time.Second)
	before := len(d.m.running.Entries())
	d.press("right", "right", "e", "left")
	d.wait(time.Second)
	for _, e := range d.m.running.Entries()[before:] {
		if e.Kind() == entry.KindKeys {
			t.Errorf("the smelt took %+v", e.Event)
		}
	}
	last := d.book[entry.House][len(d.book[entry.House])-1]
	if ks, ok := last.Event.(entry.Keys); !ok || len(ks.Pressed) != 4 || last.Screen != string(replayScreen) {
		t.Errorf("the house took %+v", last)
	}
}

// From the Book Replay begins at the entry under the cursor.
func TestReplayFromTheBook(t *testing.T) {
	d := burning(t)
	d.press("v", "b", "up", "up")
	lines := journal{}.lines(d.m.shared())
	want := lines[len(lines)-3].At
	d.press("r")
	if r := d.replay(); d.m.active != replayScreen || r.at != want {
		t.Errorf("%s at %v, want %v", d.m.active, r.at, want)
	}
	d.press("esc")
	if d.m.active != bookScreen {
		t.Errorf("back at %s", d.m.active)
	}
}

// BenchmarkReplayBack is one step backwards in a smelt of 500 entries.
func BenchmarkReplayBack(b *testing.B) {
	m := longSmelt(b, 120, 36)
	r := replay{course: courseOf(m.running), asSeen: true}.to(7 * time.Hour)
	b.ReportAllocs()
	for b.Loop() {
		if _, ok := r.stepped(true); !ok {
			b.Fatal("no step")
		}
	}
}

// BenchmarkReplayDay plays ten hours as frames of six minutes (3600 times).
func BenchmarkReplayDay(b *testing.B) {
	m := longSmelt(b, 120, 36)
	c := courseOf(m.running)
	for b.Loop() {
		r := replay{course: c, asSeen: true}.to(0)
		for r.at < min(10*time.Hour, c.Span) {
			r = r.to(r.at + 6*time.Minute)
		}
	}
}

// The chemistry is a way of looking: it is the same at Fire and at Replay, keeps
// nothing, and is refused where no shaft is shown.
func TestChemistryIsAWayOfLooking(t *testing.T) {
	d := practising(t)
	d.send(tea.WindowSizeMsg{Width: 120, Height: 36})
	d.press("f", "f", "f", "c")
	d.pass(time.Minute)
	lines := d.m.running.Len()
	d.press("tab")
	d.answers("tab shows plain words again")
	d.shows("FeO")
	d.press("v", "r")
	d.press("end")
	d.shows("FeO")
	d.press("tab")
	d.answers("plain words")
	d.press("esc")
	if strings.Contains(d.m.View(), "FeO") {
		t.Error("Fire still shows chemistry")
	}
	for l := range d.m.running.Lines() {
		if l.Seq() > uint64(lines) && entry.IsAct(l.Event) {
			t.Errorf("an act was kept: %+v", l.Event)
		}
	}
	d.press("space", "tab")
	d.answers("not shown here")
	d.press("space")
	d.send(tea.WindowSizeMsg{Width: 50, Height: 36})
	d.pass(time.Second)
	d.press("tab")
	d.answers("not shown here")
}
