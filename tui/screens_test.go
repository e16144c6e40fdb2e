package tui_test

import (
	"errors"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/entry"
	"chargehand/tui"
	"chargehand/tui/desk"
	"chargehand/tui/screen"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

func TestPractiseAsksNothing(t *testing.T) {
	d := desk.Sit(t)
	d.Press("p")
	l := d.M.Running().Light()
	if d.M.Active() != screen.Fire || !l.Practice || l.UID != "0000000000000001" || !l.Furnace.Guessed {
		t.Errorf("%s %+v", d.M.Active(), l)
	}
	if d.M.Running().ID() != "2026-05-09-shortshaft-a" {
		t.Errorf("the smelt is %s", d.M.Running().ID())
	}
}

func TestStartChoosesByNumberAndCursor(t *testing.T) {
	for _, keys := range [][]string{{"3"}, {"down", "down", "enter"}, {"R"}, {"\""}} {
		d := desk.Sit(t)
		d.Press(keys...)
		if d.M.Active() != screen.Light {
			t.Errorf("%v leads to %s", keys, d.M.Active())
		}
	}
}

func TestLightMarksWhatIsGuessed(t *testing.T) {
	d := desk.Sit(t)
	d.Press("r")
	for range 7 { // to what the bucket holds
		d.Press("enter")
	}
	d.Shows("> " + words.FormCharcoalKg)
	d.Write("2,1")
	d.Press("pgdown", "enter")
	d.Shows("5 numbers are guesses")
	if d.M.Running().Is() {
		t.Fatal("lit unasked")
	}
	d.Press("y")
	l := d.M.Running().Light()
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
	d := desk.Sit(t)
	d.Press("r")
	for range 4 { // the rim
		d.Press("down")
	}
	d.Write("30")
	d.Press("pgdown", "enter")
	d.Answers("the rim cannot be below the charging mark")
	if d.M.Running().Is() {
		t.Fatal("lit all the same")
	}
	d.Shows("> rim above the tuyere")
	for range 2 {
		d.Press("backspace")
	}
	d.Press("pgdown", "enter", "y")
	if f := d.M.Running().Light().Furnace; !d.M.Running().Is() || f.Rim.Known {
		t.Errorf("a blank rim is not recorded: %+v", f)
	}
}

func TestStartersChange(t *testing.T) {
	d := desk.Sit(t)
	d.Press("r", "up", "right")
	d.Answers("first row only")
	d.Press("down", "right")
	d.Shows("tall narrow shaft")
	d.Press("left", "left")
	d.Shows("wide shaft")
}

// The furnace of the last smelt is offered first, with its measures as they
// came to weigh.
func TestOwnFurnaceIsOfferedFirst(t *testing.T) {
	d := desk.Smelting(t, theme.Theme{})
	d.Press("w", "m", "b", "2", "enter", "w", "o", "o", "p", "o", "k", "y", "enter")
	d.Press("v", "a", "r")
	d.Shows("as in 2026-05-09-reedhollow-a")
	d.Shows("Reed Hollow")
	// So is a plan, where no furnace is keyed: made for it, and lit by it.
	d.Press("esc", "v", "p")
	d.Shows("as in 2026-05-09-reedhollow-a")
	d.Press("w", "b", "1", "enter", "n", "2", "enter", "enter")
	d.Answers("plan taken: bloom of 1 kg")
	d.Press("i")
	d.Shows("the usual one")
	d.Press("esc", "v", "a", "r")
	d.Shows("as planned: bloom of 1 kg")
	d.Press("pgdown", "enter", "y")
	l := d.M.Running().Light()
	if l.Plan == nil || l.Plan.Wanted.Mass.Value != 1 {
		t.Errorf("lit without the plan: %+v", l.Plan)
	}
	if d.M.Running().ID() != "2026-05-09-reedhollow-b" || l.Measures[0].Mass.Value != 2 || l.Measures[0].Guessed || !l.Measures[1].Guessed {
		t.Errorf("%s %+v", d.M.Running().ID(), l.Measures)
	}
}

func TestDemoIsToLookAt(t *testing.T) {
	d := desk.Sit(t)
	d.Press("l")
	d.Shows(words.MarkInvented)
	d.Press("enter")
	d.Shows(words.ThePast) // what is over opens in Replay
	d.Press("v", "f")
	d.Shows(words.PastInvented)
	before := len(d.M.Looked().Entries())
	for _, k := range []string{"c", "s", "u", "m", "t", "w", "o", "up", "k"} {
		d.Press(k)
	}
	if len(d.M.Looked().Entries()) != before || d.M.Dialog() != nil {
		t.Error("the demo took an entry")
	}
	d.Press("v", "b", "u")
	d.Answers("to look at only")
	d.Press("esc", "esc")
	if d.M.Active() != screen.Start && d.M.Active() != screen.Shelf {
		t.Errorf("back from the demo is %s", d.M.Active())
	}
}

// Practice is set aside on a line of its own; what runs stands on the shelf all
// the same, and is offered first at the next start, also when it is practice.
func TestPracticeIsSetAside(t *testing.T) {
	d := desk.Practising(t)
	d.Press("c", "o", "k", "y", "enter")
	d.Press("v", "a", "p", "y")
	id := d.M.Running().ID()
	d.Press("v", "s")
	d.Shows("2 smelts")
	d.Shows(words.ShelfPractice)
	d.Press("end", "enter")
	d.Shows("practice: 1 smelt")
	d.Press("home", "enter")
	if d.M.Looked().ID() == "" || !d.M.Looked().Light().Practice {
		t.Errorf("opened %q", d.M.Looked().ID())
	}
	d.Press("v", "s", "end", "enter")
	d.Shows(words.ShelfPractice)
	again := desk.SitAt(t, d.Book, desk.Later(d.At, time.Minute), theme.Theme{})
	again.Press("enter")
	if again.M.Running().ID() != id || again.M.Active() != screen.Fire {
		t.Errorf("the first line opened %q, not %q", again.M.Running().ID(), id)
	}
}

// While a smelt runs another may be looked at; the running one goes on.
func TestLookingDoesNotStopTheRunningOne(t *testing.T) {
	d := desk.Practising(t)
	d.Press("c", "v", "s", "down", "enter")
	if d.M.Shared().Smelt.ID() != "2026-01-01-nowheremill-a" {
		t.Fatalf("shown is %s", d.M.Shared().Smelt.ID())
	}
	d.Wait(3 * time.Minute)
	d.Press("v", "o")
	if d.M.Shared().Smelt.ID() != d.M.Running().ID() || d.M.Active() != screen.Fire {
		t.Errorf("%s at %s", d.M.Shared().Smelt.ID(), d.M.Active())
	}
	if at := d.M.Running().Reading().At - d.M.Running().Reading().Charges[0].At; at < 3*time.Minute {
		t.Errorf("its clock stood still: %v since the charge", at)
	}
}

// An imported smelt may be weighed and mended, nothing more.
func TestImportedSmelt(t *testing.T) {
	demo, _ := desk.InventedDemo()
	book := desk.Memory{}
	for _, e := range demo {
		if l, ok := e.Event.(entry.Light); ok {
			l.Invented = false
			e.Event = l
		}
		e.Stream = "2016-11-30-course-a"
		book.Keep(e)
	}
	d := desk.SitAt(t, book, desk.Noon, theme.Theme{})
	d.Press("l", "enter", "v", "f")
	d.Shows("imported")
	d.Press("c")
	d.Answers("imported: o then e")
	d.Press("w", "m", "b", "2", "enter", "w")
	if w, ok := d.Last().(entry.Weigh); !ok || w.Mass != 2 {
		t.Fatalf("%#v: %s", d.Last(), d.Said())
	}
	if m := d.M.Looked().Reading().Measures[0]; m.Mass.Value != 2 {
		t.Errorf("the bucket weighs %v", m.Mass)
	}
	d.Press("v", "b", "up", "u")
	d.Answers("crossed out: charge 5")
	d.Press("e")
	d.Shows("minutes before its end")
	d.Write("14:50") // after the last charge that stands, at 13:56
	d.Press("enter", "t")
	d.Answers("entered late, at 14:50: tapped")
	d.Press("e")
	d.Write("13:50")
	d.Press("enter", "t")
	for i, want := range []time.Duration{170 * time.Minute, 110 * time.Minute} { // since desk.Noon
		if l, _ := d.M.Looked().Line(uint64(len(demo) + 3 + i)); l.At.Round(time.Minute) != want {
			t.Errorf("a tap stands at %v, want %v", l.At, want)
		}
	}
	if n := len(book["2016-11-30-course-a"]); n != len(demo)+4 {
		t.Errorf("%d entries in its stream, want %d: keys of looking about belong to the house", n, len(demo)+4)
	}
}

func TestClosedSmelt(t *testing.T) {
	d := desk.Practising(t)
	d.Press("c", "o", "k", "y", "enter", "c")
	d.Answers("closed")
	d.Press("w", "b", "0", ".", "4", "enter", "enter")
	if kg := d.M.Shared().Smelt.Reading().Bloom; kg.Value != 0.4 {
		t.Errorf("the bloom weighs %v", kg)
	}
}

func TestShelfCannotBeRead(t *testing.T) {
	d := desk.Sit(t)
	d.Send(tui.ShelfFailed(errors.New("the folder is gone")))
	d.Answers("the folder is gone")
	// A smelt can be run all the same, and its stream is surely its own.
	m := tui.New(d.M.Config())
	_, es, _ := m.Update(tui.Pressed{Key: desk.KeyMsg("p"), At: desk.Noon})
	if len(es) != 1 || es[0].Stream != "2026-05-09-shortshaft-a-0000000000000001" {
		t.Errorf("%+v", es)
	}
}

func TestFlip(t *testing.T) {
	d := desk.Sit(t)
	d.Press("v", "l")
	if !d.M.Shared().Theme.Light {
		t.Error("still dark")
	}
}

func TestHelpGoesBackWhereItCameFrom(t *testing.T) {
	d := desk.Practising(t)
	d.Press("v", "b", "h")
	d.Shows("keys: book")
	d.Press("h")
	if d.M.Active() != screen.Book {
		t.Errorf("back at %s", d.M.Active())
	}
	d.Press("esc")
	if d.M.Active() != screen.Fire {
		t.Errorf("back at %s", d.M.Active())
	}
}

// Before the shelf is read nobody knows which line comes first: the key that
// goes on waits for it, and those that go by the place of a line choose none.
func TestKeysAtTheStartWaitForTheShelf(t *testing.T) {
	before := desk.Practising(t)
	before.Press("c")
	id := before.M.Running().ID()
	d := &desk.Desk{T: t, At: desk.Later(before.At, time.Minute), Book: before.Book}
	d.M = tui.New(tui.Config{Store: before.Book, Start: d.At, Demo: desk.InventedDemo, NewUID: func() string { return "uid-9" }})
	d.Send(tea.WindowSizeMsg{Width: 120, Height: 36})
	for _, k := range []string{"enter", "1", "g"} {
		d.Press(k)
		d.Answers("still being read")
		if d.M.Running().Is() || d.M.Active() != screen.Start {
			t.Fatalf("%s led to %s", k, d.M.Active())
		}
	}
	d.Run(d.M.Init())
	if d.M.Active() != screen.Fire || d.M.Running().ID() != id {
		t.Errorf("at %s with %q", d.M.Active(), d.M.Running().ID())
	}
	empty := &desk.Desk{T: t, At: desk.Noon, Book: desk.Memory{}}
	empty.M = tui.New(tui.Config{Store: empty.Book, Start: desk.Noon, Demo: desk.InventedDemo, NewUID: func() string { return "uid-9" }})
	empty.Send(tea.WindowSizeMsg{Width: 120, Height: 36})
	empty.Press("g")
	empty.Run(empty.M.Init())
	empty.Answers("no smelt was left")
}
