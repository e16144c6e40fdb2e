package replay_test

import (
	"cmp"
	"fmt"
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"pgregory.net/rapid"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/fold"
	"chargehand/model/rule"
	"chargehand/model/session"
	modelwords "chargehand/model/words"
	"chargehand/tui"
	"chargehand/tui/desk"
	"chargehand/tui/replay"
	"chargehand/tui/scene"
	"chargehand/tui/screen"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// showed is what the screen showed of a moment.
type showed struct {
	reading  *figure.Reading
	warnings []rule.Warning
}

// Whatever is keyed, with late entries, crossings-out, stepped clocks, a slow
// disk and restarts: Replay as we saw it shows again, bit for bit, what stood on
// the screen at each entry and every ten seconds, once all of it was kept.
func TestReplayIsWhatWasShown(t *testing.T) {
	acts := [][]string{
		{"c"}, {"c"}, {"c"}, {"s"}, {"f"}, {"u"}, {"m"}, {"g"}, {"t"}, {"p"}, {"r"}, {"a"}, {"y"}, {"up"}, {"k"}, {"b", "o"}, {"b", "n"},
		{"b", "7", "0", "0", "enter"}, {"l", "p", "w"}, {"l", "o", "g"}, {"i", "2", "0", "enter"}, {"e", "9", "0", "0", "enter", "p"},
		{"o", "e", "1", "2", "enter", "c", "1", "enter", "2", "enter"}, {"o", "e", "5", "enter", "r"}, {"o", "x"}, {"o", "h"},
		{"w", "m", "b", "2", "enter", "w", "n"}, {"v", "esc"}, {"h", "esc"}, {"v", "r", "right", "esc"}, {"o", "g", "J", "enter"},
	}
	rapid.Check(t, func(rt *rapid.T) {
		d := desk.SitAt(t, desk.Memory{}, desk.Noon, theme.Theme{})
		d.Stamps = true
		d.Press("p")
		shown := map[time.Duration]showed{}
		see := func() {
			if d.M.Running().Running() && d.M.Unkept() == 0 {
				r := d.M.Running().Reading()
				shown[r.At] = showed{r, d.M.Running().Warnings()}
			}
		}
		id := d.M.Running().ID()
		d.Press("o", "m")
		see()
		boots := 1
		for range rapid.IntRange(5, 20).Draw(rt, "acts") {
			switch rapid.IntRange(0, 24).Draw(rt, "chance") {
			case 0:
				d.At.Wall = d.At.Wall.Add(time.Duration(rapid.IntRange(-1800, 1800).Draw(rt, "step")) * time.Second)
			case 1:
				d.Hold = !d.Hold
				d.Acknowledge()
				see() // what was kept just now stands on the screen of this very moment
			case 2:
				d.Hold = false
				d.Wait(time.Second)
				boots++
				at := desk.Later(d.At, time.Duration(rapid.IntRange(20, 600).Draw(rt, "away"))*time.Second)
				at.Boot, at.Mono = fmt.Sprintf("boot-%d", boots), time.Minute
				d = desk.SitAt(t, d.Book, at, theme.Theme{})
				d.Stamps = true
				d.Press("g")
				see()
			}
			for _, k := range rapid.SampledFrom(acts).Draw(rt, "keys") {
				d.Press(k)
				see()
			}
			for range rapid.IntRange(0, 40).Draw(rt, "ticks") {
				d.Wait(rule.Grid)
				see()
			}
		}
		d.Hold = false
		d.Acknowledge()
		see()
		d.Wait(time.Second)
		book := session.Open(id, d.Book[id]).Tick(d.At) // one that was over is not at work any more after a restart

		for at, was := range shown {
			known := book.KnownAt(at)
			if got := book.AsOf(known, at).Reading(); !reflect.DeepEqual(got, was.reading) {
				rt.Fatalf("at %v, known %d: replay reads\n%+v\nshown was\n%+v", at, known, got, was.reading)
			}
			if got := book.AsOf(known, at).Warnings(); !reflect.DeepEqual(got, was.warnings) {
				rt.Fatalf("at %v, known %d: replay warns\n%+v\nshown was\n%+v", at, known, got, was.warnings)
			}
		}
		for at, was := range shown { // the screen itself; a few, each folds anew
			r := replay.Of(book).To(at)
			if !reflect.DeepEqual(r.Then().Reading(), was.reading) || !reflect.DeepEqual(r.Then().Warnings(), was.warnings) {
				rt.Fatalf("at %v the screen shows another moment", at)
			}
			break
		}
	})
}

// replaying is Replay of the invented smelt, or of the one at work.
func replaying(t *testing.T, from string) *desk.Desk {
	t.Helper()
	switch from {
	case "demo":
		d := desk.Sit(t)
		d.Press("l", "r")
		return d
	default:
		d := desk.Burning(t)
		d.Press("b", "o")
		d.Pass(3 * time.Minute)
		d.Press("v", "r")
		return d
	}
}

func at(d *desk.Desk) replay.Screen { return d.M.Screen(screen.Replay).(replay.Screen) }

func TestReplayMoves(t *testing.T) {
	d := replaying(t, "own")
	d.Shows(words.ThePast)
	d.Shows(words.AsWeSaw)
	if r := at(d); r.At() != 0 || r.Playing() {
		t.Fatalf("it begins at %v", r.At())
	}
	d.Press("right", "right", "right")
	if r := at(d); r.At() != 3*time.Minute {
		t.Errorf("three minutes forth is %v", r.At())
	}
	d.Press("left", "pgdown")
	if r := at(d); r.At() != 12*time.Minute {
		t.Errorf("and one back and ten forth is %v", r.At())
	}
	d.Press("end")
	end := at(d)
	if end.At() != end.Span() || len(end.Then().Reading().Charges) != 6 {
		t.Errorf("the end is %v with %d charges", end.At(), len(end.Then().Reading().Charges))
	}
	d.Press("right")
	d.Answers(words.NoMoreSteps)
	d.Press("home", "e")
	for i := range end.Taken()[1:] {
		if i > 0 { // the key itself went the first step
			d.Press("right")
		}
		if got := at(d).At(); got != end.Taken()[i+1] {
			t.Errorf("entry %d is at %v, not %v", i+1, got, end.Taken()[i+1])
		}
	}
	d.Press("end", "w", "left")
	if r := at(d); len(r.Onsets()) == 0 || r.At() != r.Onsets()[len(r.Onsets())-1] {
		t.Errorf("the last warning is at %v, not %v", r.Onsets(), r.At())
	}
	if d.Said() == "" {
		t.Error("it does not say which warning")
	}
	// Another screen and back: it stands where it stood.
	stood := at(d).At()
	d.Press("h", "esc")
	if r := at(d); r.At() != stood || d.M.Active() != screen.Replay {
		t.Errorf("back at %v", r.At())
	}
}

func TestReplayPlays(t *testing.T) {
	d := replaying(t, "own")
	frames := func(n int) {
		for range n {
			d.At = desk.Later(d.At, 100*time.Millisecond)
			d.Send(tui.Frame{At: d.At})
		}
	}
	from := at(d)
	d.Press("enter")
	if !d.M.Playing() {
		t.Fatal("it does not play")
	}
	frames(10)
	begins := from.Then().AsOf(fold.All, from.Span()).Reading().Charges[0].At // nothing is to be seen before
	if r := at(d); r.At() != begins+time.Duration(from.Speed())*time.Second {
		t.Errorf("after a second at %d times it stands at %v, began at %v", from.Speed(), r.At(), begins)
	}
	d.Press("up")
	d.Answers("times")
	for range 10 {
		d.Press("up")
	}
	if s := at(d).Speed(); s != 3600 {
		t.Errorf("the fastest is %d", s)
	}
	frames(600)
	if r := at(d); r.At() != r.Span() || r.Playing() {
		t.Errorf("it does not stand at its end: %v", r.At())
	}
	d.Press("b", "enter")
	frames(600)
	if r := at(d); r.At() != 0 || r.Playing() {
		t.Errorf("backwards it does not stand at the light: %v", r.At())
	}
	d.Press("b", "enter", "esc")
	if d.M.Playing() {
		t.Error("it plays behind another screen")
	}
}

// An entry put in late is not there as we saw it, and is as we know it.
func TestReplayKnowsTwoTimes(t *testing.T) {
	d := desk.Practising(t)
	d.Press("c")
	d.Pass(20 * time.Minute)
	d.Press("o", "e", "1", "0", "enter", "r")
	d.Pass(5 * time.Minute)
	d.Press("v", "r")
	for range 15 {
		d.Press("right")
	}
	rodded := func() bool {
		for _, l := range scene.Log(modelwords.Units{}, at(d).Then(), 9) {
			if l.Text == (modelwords.Units{}).Event(entry.Rod{}) {
				return true
			}
		}
		return false
	}
	if rodded() {
		t.Error("known before it was entered")
	}
	d.Press("k")
	d.Shows(words.AsWeKnow)
	if !rodded() {
		t.Error("not known though it was entered")
	}
}

// Of an imported smelt only the second is there, and that is said.
func TestReplayOfAnImportedSmelt(t *testing.T) {
	d := replaying(t, "demo")
	d.Shows(words.AsWeKnow)
	d.Press("k")
	d.Answers(words.OnlyAsWeKnow)
	d.Press("end")
	if n := len(at(d).Then().Reading().Charges); n != 5 {
		t.Errorf("%d charges at its end", n)
	}
	d.Press("c", "s", "u")
	if len(d.M.Looked().Entries()) != 7 {
		t.Error("Replay took an entry")
	}
}

// The keys of Replay are written down in the house, also while a smelt runs.
func TestReplayKeysAreTheHouses(t *testing.T) {
	d := replaying(t, "own")
	d.Wait(time.Second)
	before := len(d.M.Running().Entries())
	d.Press("right", "right", "e", "left")
	d.Wait(time.Second)
	for _, e := range d.M.Running().Entries()[before:] {
		if e.Kind() == entry.KindKeys {
			t.Errorf("the smelt took %+v", e.Event)
		}
	}
	last := d.Book[entry.House][len(d.Book[entry.House])-1]
	if ks, ok := last.Event.(entry.Keys); !ok || len(ks.Pressed) != 4 || last.Screen != string(screen.Replay) {
		t.Errorf("the house took %+v", last)
	}
}

// From the Book Replay begins at the entry under the cursor.
func TestReplayFromTheBook(t *testing.T) {
	d := desk.Burning(t)
	d.Press("v", "b", "up", "up")
	lines := acts(d)
	want := lines[len(lines)-3].At
	d.Press("r")
	if r := at(d); d.M.Active() != screen.Replay || r.At() != want {
		t.Errorf("%s at %v, want %v", d.M.Active(), r.At(), want)
	}
	d.Press("esc")
	if d.M.Active() != screen.Book {
		t.Errorf("back at %s", d.M.Active())
	}
}

// BenchmarkReplayBack is one step backwards in a smelt of 500 entries.
func BenchmarkReplayBack(b *testing.B) {
	m := desk.Long(b, 120, 36)
	r := replay.Of(m.Running()).To(7 * time.Hour)
	b.ReportAllocs()
	for b.Loop() {
		if _, ok := r.Stepped(true); !ok {
			b.Fatal("no step")
		}
	}
}

// BenchmarkReplayDay plays ten hours as frames of six minutes (3600 times).
func BenchmarkReplayDay(b *testing.B) {
	m := desk.Long(b, 120, 36)
	c := replay.Of(m.Running())
	for b.Loop() {
		r := c.To(0)
		for r.At() < min(10*time.Hour, c.Span()) {
			r = r.To(r.At() + 6*time.Minute)
		}
	}
}

// The chemistry is a way of looking: it is the same at Fire and at Replay, keeps
// nothing, and is refused where no shaft is shown.
func TestChemistryIsAWayOfLooking(t *testing.T) {
	d := desk.Practising(t)
	d.Send(tea.WindowSizeMsg{Width: 120, Height: 36})
	d.Press("f", "f", "f", "c")
	d.Pass(time.Minute)
	lines := d.M.Running().Len()
	d.Press("tab")
	d.Answers("tab shows plain words again")
	d.Shows("FeO")
	d.Press("v", "r")
	d.Press("end")
	d.Shows("FeO")
	d.Press("tab")
	d.Answers("plain words")
	d.Press("esc")
	if strings.Contains(d.M.View(), "FeO") {
		t.Error("Fire still shows chemistry")
	}
	for l := range d.M.Running().Lines() {
		if l.Seq() > uint64(lines) && entry.IsAct(l.Event) {
			t.Errorf("an act was kept: %+v", l.Event)
		}
	}
	d.Press("space", "tab")
	d.Answers("not shown here")
	d.Press("space")
	d.Send(tea.WindowSizeMsg{Width: 50, Height: 36})
	d.Pass(time.Second)
	d.Press("tab")
	d.Answers("not shown here")
}

// acts are what was done and seen, in the order in which it happened.
func acts(d *desk.Desk) []fold.Line {
	var ls []fold.Line
	for l := range d.M.Running().Lines() {
		if entry.IsAct(l.Event) || scene.OfKind(l, entry.KindLight, entry.KindClockJump) {
			ls = append(ls, l)
		}
	}
	slices.SortStableFunc(ls, func(a, b fold.Line) int { return cmp.Compare(a.At, b.At) })
	return ls
}

// Replay has the solver's figures of its own moment, as they were shown live.
func TestReplayShowsWhatTheSolverSaid(t *testing.T) {
	d, v := desk.Burning(t), &tui.Solver{}
	d.Works(v)
	live := d.M.Running().Reading()
	d.Pass(20 * time.Minute)
	d.Press("v", "r") // to Replay
	if d.M.Active() != screen.Replay {
		t.Fatalf("on %s", d.M.Active())
	}
	d.M = d.M.With(at(d).To(live.At))
	if r := at(d).Then().Reading(); r.Solver != figure.Unsolved {
		t.Errorf("before the solver: %d", r.Solver)
	}
	d.Works(v)
	got := at(d).Then().Reading()
	if got.Solver != figure.Solved || !reflect.DeepEqual(got.Figures, live.Figures) || !reflect.DeepEqual(got.Zones, live.Zones) {
		t.Errorf("solver %d at %v; hearth %+v, live %+v", got.Solver, got.At, got.Figure(figure.HearthTemperature), live.Figure(figure.HearthTemperature))
	}
	d.M = d.M.With(at(d).To(live.At - 20*time.Minute))
	if r := at(d).Then().Reading(); r.Solver != figure.Resolving {
		t.Errorf("at another moment, before the solver: %d", r.Solver)
	}
	d.Works(v)
	if r := at(d).Then().Reading(); r.Solver != figure.Solved || r.At != live.At-20*time.Minute {
		t.Errorf("solver %d at %v", r.Solver, r.At)
	}
}

// The line of Replay marks what the solver noted too, the same as was shown
// live; until it is worked out the line says so, and no key waits for it.
func TestReplayMarksTheSolversNotes(t *testing.T) {
	d, v := desk.Burning(t), &tui.Solver{}
	d.Press("b", "2", "0", "0", "enter") // a blast too weak to keep the hearth hot
	for range 8 {
		d.Pass(40 * time.Minute)
		d.Press("c")
		d.Works(v)
	}
	live := d.M.Running().Warnings()
	d.Press("v", "r", "end")
	d.Shows(modelwords.NotesWorkedOut)
	before := len(at(d).Warnings())
	d.Works(v)
	if strings.Contains(d.Picture(), modelwords.NotesWorkedOut) {
		t.Error("worked out, and the line still waits for it")
	}
	c := at(d)
	if !reflect.DeepEqual(c.Warnings(), live) {
		t.Errorf("live %d warnings, in Replay %d", len(live), len(c.Warnings()))
	}
	if len(c.Warnings()) <= before || len(c.Onsets()) != len(c.Warnings()) {
		t.Errorf("%d warnings before the solver, %d with it: the day shows nothing", before, len(c.Warnings()))
	}
	over := desk.Sit(t) // of a smelt that is over it is worked out once
	over.Press("l", "enter", "v", "r")
	over.Works(v)
	over.Press("esc", "v", "r")
	if over.M.Active() != screen.Replay || !at(over).Whole().IsSolved() {
		t.Error("solved anew for the same entries")
	}
}
