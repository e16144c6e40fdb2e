package tui

import (
	"errors"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/entry"
	"chargehand/model/words"
	"chargehand/tui/theme"
)

func TestPractiseAsksNothing(t *testing.T) {
	d := sit(t)
	d.press("p")
	l := d.m.running.Light()
	if d.m.active != fireScreen || !l.Practice || l.UID != "uid-1" || !l.Furnace.Guessed {
		t.Errorf("%s %+v", d.m.active, l)
	}
	if d.m.running.ID() != "2026-05-09-shortshaft-a" {
		t.Errorf("the smelt is %s", d.m.running.ID())
	}
}

func TestStartChoosesByNumberAndCursor(t *testing.T) {
	for _, keys := range [][]string{{"2"}, {"down", "enter"}, {"R"}, {"é"}} {
		d := sit(t)
		d.press(keys...)
		if d.m.active != lightScreen {
			t.Errorf("%v leads to %s", keys, d.m.active)
		}
	}
}

func TestLightMarksWhatIsGuessed(t *testing.T) {
	d := sit(t)
	d.press("r")
	for range 5 { // to what the bucket holds
		d.press("up")
	}
	d.shows("> which holds")
	d.write("2,1")
	for range 5 {
		d.press("down")
	}
	d.press("enter")
	l := d.m.running.Light()
	if l.Practice || len(l.Measures) != 2 {
		t.Fatalf("%+v", l)
	}
	bucket, scoop := l.Measures[0], l.Measures[1]
	if bucket.Guessed || bucket.Mass.Value != 2.1 {
		t.Errorf("the bucket was weighed: %+v", bucket)
	}
	if !scoop.Guessed {
		t.Errorf("the scoop was not: %+v", scoop)
	}
	if n, _ := l.Recipe.Count(entry.Ore); n != 2 {
		t.Errorf("the first charge is %+v", l.Recipe)
	}
}

func TestLightSaysWhatIsWrong(t *testing.T) {
	d := sit(t)
	d.press("r")
	for range 7 { // the rim
		d.press("up")
	}
	d.write("30")
	for range 7 {
		d.press("down")
	}
	d.press("enter")
	d.answers("the rim cannot be below the charging mark")
	if d.m.running.Is() {
		t.Fatal("lit all the same")
	}
	d.shows("> rim above the tuyere")
	for range 2 {
		d.press("backspace")
	}
	for range 7 {
		d.press("down")
	}
	d.press("enter")
	if f := d.m.running.Light().Furnace; !d.m.running.Is() || f.Rim.Known {
		t.Errorf("a blank rim is not recorded: %+v", f)
	}
}

func TestStartersChange(t *testing.T) {
	d := sit(t)
	d.press("r")
	d.press("right")
	d.answers("first row only")
	for range 11 {
		d.press("up")
	}
	d.press("right")
	d.shows("tall narrow shaft")
	d.press("left", "left")
	d.shows("wide shaft")
}

// The furnace of the last smelt is offered first, with its measures as they
// came to weigh.
func TestOwnFurnaceIsOfferedFirst(t *testing.T) {
	d := smelting(t, theme.Theme{})
	d.press("w", "m", "b", "2", "enter", "w", "n", "o", "o", "t", "o", "k", "y")
	d.press("v", "a", "r")
	d.shows("as in 2026-05-09-reedhollow-a")
	d.shows("Reed Hollow")
	d.press("enter")
	l := d.m.running.Light()
	if d.m.running.ID() != "2026-05-09-reedhollow-b" || l.Measures[0].Mass.Value != 2 || l.Measures[0].Guessed || !l.Measures[1].Guessed {
		t.Errorf("%s %+v", d.m.running.ID(), l.Measures)
	}
}

func TestDemoIsToLookAt(t *testing.T) {
	d := sit(t)
	d.press("l")
	d.shows("invented, to look at")
	d.press("enter")
	d.shows("invented, a moment to look at")
	before := len(d.m.looked.Entries())
	for _, k := range []string{"c", "s", "u", "m", "t", "w", "o", "up", "k"} {
		d.press(k)
	}
	if len(d.m.looked.Entries()) != before || d.m.dialog != nil {
		t.Error("the demo took an entry")
	}
	d.press("v", "b", "u")
	d.answers("to look at only")
	d.press("esc", "esc")
	if d.m.active != startScreen && d.m.active != shelfScreen {
		t.Errorf("back from the demo is %s", d.m.active)
	}
}

// Practice is set aside on a line of its own; what runs stands on the shelf all
// the same, and is offered first at the next start, also when it is practice.
func TestPracticeIsSetAside(t *testing.T) {
	d := practising(t)
	d.press("c", "o", "k", "y")
	d.press("v", "a", "p", "y")
	id := d.m.running.ID()
	d.press("v", "s")
	d.shows("2 smelts")
	d.shows(words.ShelfPractice)
	d.press("end", "enter")
	d.shows("practice: 1 smelt")
	d.press("home", "enter")
	if d.m.looked.ID() == "" || !d.m.looked.Light().Practice {
		t.Errorf("opened %q", d.m.looked.ID())
	}
	d.press("v", "s", "end", "enter")
	d.shows(words.ShelfPractice)
	again := sitAt(t, d.book, later(d.at, time.Minute), theme.Theme{})
	again.press("enter")
	if again.m.running.ID() != id || again.m.active != fireScreen {
		t.Errorf("the first line opened %q, not %q", again.m.running.ID(), id)
	}
}

// While a smelt runs another may be looked at; the running one goes on.
func TestLookingDoesNotStopTheRunningOne(t *testing.T) {
	d := practising(t)
	d.press("c", "v", "s", "down", "enter")
	if d.m.shown().ID() != "2026-01-01-nowheremill-a" {
		t.Fatalf("shown is %s", d.m.shown().ID())
	}
	d.wait(3 * time.Minute)
	d.press("v", "o")
	if d.m.shown().ID() != d.m.running.ID() || d.m.active != fireScreen {
		t.Errorf("%s at %s", d.m.shown().ID(), d.m.active)
	}
	if at := d.m.running.Reading().At - d.m.running.Reading().Charges[0].At; at < 3*time.Minute {
		t.Errorf("its clock stood still: %v since the charge", at)
	}
}

// An imported smelt may be weighed and mended, nothing more.
func TestImportedSmelt(t *testing.T) {
	demo, _ := inventedDemo()
	book := memory{}
	for _, e := range demo {
		if l, ok := e.Event.(entry.Light); ok {
			l.Invented = false
			e.Event = l
		}
		e.Stream = "2016-11-30-course-a"
		book.keep(e)
	}
	d := sitAt(t, book, noon, theme.Theme{})
	d.press("l", "enter")
	d.shows("imported")
	d.press("c")
	d.answers("imported: o then e")
	d.press("w", "m", "b", "2", "enter", "w", "n")
	if w, ok := d.last().(entry.Weigh); !ok || w.Mass != 2 {
		t.Fatalf("%#v: %s", d.last(), d.m.answer.text)
	}
	if m := d.m.looked.Reading().Measures[0]; m.Mass.Value != 2 {
		t.Errorf("the bucket weighs %v", m.Mass)
	}
	d.press("v", "b", "up", "u")
	d.answers("crossed out: charge 5")
	d.press("e")
	d.shows("minutes before its end")
	d.write("14:50") // after the last charge that stands, at 13:56
	d.press("enter", "t")
	d.answers("entered late, at 14:50: tapped")
	d.press("e")
	d.write("13:50")
	d.press("enter", "t")
	for i, want := range []time.Duration{170 * time.Minute, 110 * time.Minute} { // since noon
		if l, _ := d.m.looked.Line(uint64(len(demo) + 3 + i)); l.At.Round(time.Minute) != want {
			t.Errorf("a tap stands at %v, want %v", l.At, want)
		}
	}
	if n := len(book["2016-11-30-course-a"]); n != len(demo)+4 {
		t.Errorf("%d entries in its stream, want %d: keys of looking about belong to the house", n, len(demo)+4)
	}
}

func TestClosedSmelt(t *testing.T) {
	d := practising(t)
	d.press("c", "o", "k", "y", "c")
	d.answers("closed")
	d.press("w", "b", "4", "enter")
	if kg := d.m.shown().Reading().Bloom; kg.Value != 4 {
		t.Errorf("the bloom weighs %v", kg)
	}
}

func TestShelfCannotBeRead(t *testing.T) {
	d := sit(t)
	d.send(shelfRead{err: errors.New("the folder is gone")})
	d.answers("the folder is gone")
	// A smelt can be run all the same, and its stream is surely its own.
	m := New(d.m.cfg)
	_, es, _ := m.Update(Pressed{Key: keyMsg("p"), At: noon})
	if len(es) != 1 || es[0].Stream != "2026-05-09-shortshaft-a-uid1" {
		t.Errorf("%+v", es)
	}
}

func TestFlip(t *testing.T) {
	d := sit(t)
	d.press("v", "d")
	if !d.m.theme.Light {
		t.Error("still dark")
	}
}

func TestHelpGoesBackWhereItCameFrom(t *testing.T) {
	d := practising(t)
	d.press("v", "b", "h")
	d.shows("keys: book")
	d.press("h")
	if d.m.active != bookScreen {
		t.Errorf("back at %s", d.m.active)
	}
	d.press("esc")
	if d.m.active != fireScreen {
		t.Errorf("back at %s", d.m.active)
	}
}

// Before the shelf is read nobody knows which line comes first: the key that
// goes on waits for it, and those that go by the place of a line choose none.
func TestKeysAtTheStartWaitForTheShelf(t *testing.T) {
	before := practising(t)
	before.press("c")
	id := before.m.running.ID()
	d := &desk{t: t, at: later(before.at, time.Minute), book: before.book}
	d.m = New(Config{Store: before.book, Start: d.at, Demo: inventedDemo, NewUID: func() string { return "uid-9" }})
	d.send(tea.WindowSizeMsg{Width: 120, Height: 36})
	for _, k := range []string{"enter", "1", "g"} {
		d.press(k)
		d.answers("still being read")
		if d.m.running.Is() || d.m.active != startScreen {
			t.Fatalf("%s led to %s", k, d.m.active)
		}
	}
	d.run(d.m.Init())
	if d.m.active != fireScreen || d.m.running.ID() != id {
		t.Errorf("at %s with %q", d.m.active, d.m.running.ID())
	}
	empty := &desk{t: t, at: noon, book: memory{}}
	empty.m = New(Config{Store: empty.book, Start: noon, Demo: inventedDemo, NewUID: func() string { return "uid-9" }})
	empty.send(tea.WindowSizeMsg{Width: 120, Height: 36})
	empty.press("g")
	empty.run(empty.m.Init())
	empty.answers("no smelt was left")
}
