package tui_test

import (
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/model/rule"
	"chargehand/tui/desk"
	"chargehand/tui/screen"
	"chargehand/tui/theme"
)

// lights lights a furnace of a name from the start screen.
func lights(d *desk.Desk, name string) {
	d.T.Helper()
	d.Press("v", "a", "r", "enter")
	for range 12 {
		d.Press("backspace")
	}
	d.Write(name)
	d.Press("pgdown", "enter", "y")
	if got := d.M.Running().Light().Furnace.Name; got != name {
		d.T.Fatalf("%q burns, not %q: %s\n%s", got, name, d.Said(), d.Picture())
	}
}

// two is a desk with two fires, each in its main burn, Reed Hollow at work.
func two(t *testing.T) *desk.Desk {
	t.Helper()
	d := desk.Smelting(t, theme.Theme{})
	lights(d, "Old Bank")
	d.Press("f", "o", "m")
	for range 5 {
		d.Press("c")
		d.Wait(10 * time.Minute)
	}
	d.Press("f2", "c")
	return d
}

// charges of a smelt in the book, by the name of its furnace.
func chargesOf(d *desk.Desk, furnace string) (n int, id string) {
	for stream, es := range d.Book {
		if stream == entry.House || len(es) == 0 {
			continue
		}
		if l, ok := es[0].Event.(entry.Light); ok && l.Furnace.Name == furnace {
			id = stream
			for _, e := range es {
				if e.Kind() == entry.KindCharge {
					n++
				}
			}
		}
	}
	return n, id
}

// A second fire is lit beside the first without being asked to leave that; one key changes
// the two, and what is keyed goes to the one at work.
func TestTwoFires(t *testing.T) {
	d := two(t)
	if d.M.Running().Light().Furnace.Name != "Reed Hollow" || d.M.Shared().Other.Light().Furnace.Name != "Old Bank" {
		t.Fatalf("%s at work, %s beside it", d.M.Running().ID(), d.M.Shared().Other.ID())
	}
	reed, _ := chargesOf(d, "Reed Hollow")
	old, _ := chargesOf(d, "Old Bank")
	for range 12 { // in turn, at speed
		d.Fast(150*time.Millisecond, "f2")
		d.Press("c")
		d.Shows(d.M.Running().Light().Furnace.Name + ": charge ")
		d.Wait(5 * time.Minute)
	}
	reed2, _ := chargesOf(d, "Reed Hollow")
	old2, _ := chargesOf(d, "Old Bank")
	if reed2 != reed+6 || old2 != old+6 {
		t.Errorf("6 charges each: %d and %d", reed2-reed, old2-old)
	}
	// The other one is told of under the top line, with the key that leads there.
	if rows := strings.Split(d.Picture(), "\n"); !strings.Contains(rows[0], "Reed Hollow") || !strings.Contains(rows[1], "Old Bank:") || !strings.Contains(rows[1], "F2") {
		t.Errorf("%s\n%s", rows[0], rows[1])
	}
	d.Press("f2")
	if rows := strings.Split(d.Picture(), "\n"); !strings.Contains(rows[0], "Old Bank") || !strings.Contains(rows[1], "Reed Hollow:") {
		t.Errorf("%s\n%s", rows[0], rows[1])
	}
	d.Press("o")
	d.Shows("other acts")
	d.Press("f2") // a list that is open closes, and nothing is lost
	if d.M.Dialog() != nil || d.M.Running().Light().Furnace.Name != "Reed Hollow" {
		t.Errorf("from an open list: %s", d.Said())
	}
	// A third one has to take the place of the one at work.
	d.Press("v", "a", "r")
	d.Shows("leave")
}

// Warnings of the fire that is not shown stand in its row, and the bell sounds for them;
// both are testified in their own streams.
func TestTheOtherFireWarns(t *testing.T) {
	d := two(t)
	d.Press("f2", "b", "o", "f2") // the blast of Old Bank is off
	rang := d.Rang
	d.Pass(2 * time.Minute)
	_, id := chargesOf(d, "Old Bank")
	found := false
	for _, e := range d.Book[id] {
		if ev, ok := e.Event.(entry.Testimony); ok && ev.Rule == string(rule.BlastLost) {
			found = true
		}
	}
	if !found || d.Rang == rang {
		t.Errorf("blast lost is testified %t, the bell rang %d times", found, d.Rang-rang)
	}
	rows := strings.Split(d.Picture(), "\n")
	if !strings.Contains(rows[1], "Old Bank") || !strings.Contains(rows[1], "blast") {
		t.Errorf("the row of the other fire: %s", rows[1])
	}
	d.Press("v", "t") // the row of a wing tells of the more urgent one
	if rows := strings.Split(d.Picture(), "\n"); !strings.Contains(rows[1], "Old Bank") {
		t.Errorf("beside the fire: %s", rows[1])
	}
}

// Far view shows both, at the smallest window and at the largest.
func TestFarViewShowsBothFires(t *testing.T) {
	for _, size := range [][2]int{desk.Small, desk.Usual, desk.Large} {
		d := two(t)
		d.Send(tea.WindowSizeMsg{Width: size[0], Height: size[1]})
		d.Press("space")
		d.Shows("Reed Hollow")
		d.Shows("Old Bank")
		if !d.Far() {
			t.Fatal("no far view")
		}
		d.Press("f2")
		if !d.Far() || d.M.Running().Light().Furnace.Name != "Old Bank" {
			t.Errorf("%v: the key that changes the two left the far view", size)
		}
	}
}

// Killed and started again, both go on, each with what was keyed to it; start offers both.
func TestBothFiresGoOnAtTheNextStart(t *testing.T) {
	d := two(t)
	reed, old := len(d.M.Running().Reading().Charges), len(d.M.Shared().Other.Reading().Charges)
	again := desk.SitAt(t, d.Book, desk.Later(d.At, time.Minute), theme.Theme{})
	again.Shows("go on with the other")
	again.Press("g")
	if s := again.M.Shared(); !s.Running.Is() || !s.Other.Is() || s.Running.ID() == s.Other.ID() {
		t.Fatalf("%q and %q burn", s.Running.ID(), s.Other.ID())
	}
	count := func(furnace string) int {
		for range 2 {
			if again.M.Running().Light().Furnace.Name == furnace {
				return len(again.M.Running().Reading().Charges)
			}
			again.Press("f2")
		}
		return -1
	}
	if count("Reed Hollow") != reed || count("Old Bank") != old {
		t.Errorf("%d and %d charges, kept were %d and %d", count("Reed Hollow"), count("Old Bank"), reed, old)
	}
	late := desk.SitAt(t, d.Book, desk.Later(d.At, 20*time.Hour), theme.Theme{})
	if strings.Contains(late.Picture(), "go on with the other") {
		t.Error("a fire that went out long ago is taken for one that burns")
	}
}

// What was keyed at the wrong fire is moved: booked there at the time at which it happened,
// struck out here. Where the program ended between the two, it is struck out at the start.
func TestAnEntryIsMovedToTheOtherFire(t *testing.T) {
	d := two(t)
	reed := len(d.M.Running().Reading().Charges)
	when := d.M.Running().Wall(lastLine(d))
	old := len(d.M.Shared().Other.Reading().Charges)
	d.Hold = true
	d.Press("v", "b", "a")
	d.Shows("it was at Old Bank: book it there")
	d.Press("o")
	d.Answers("moved to Old Bank")
	if n := len(d.M.Shared().Other.Reading().Charges); n != old+1 {
		t.Fatalf("%d charges at Old Bank, before %d; %s", n, old, d.Said())
	}
	if n := len(d.M.Running().Reading().Charges); n != reed {
		t.Errorf("struck out before it was kept there: %d charges of %d", n, reed)
	}
	// Killed here, with what is on its way in the book and nothing after.
	killed := desk.Memory{}
	for stream, es := range d.Book {
		killed[stream] = append([]entry.Entry(nil), es...)
	}
	for _, e := range d.Queue {
		killed.Keep(e)
	}
	d.Hold = false
	d.Acknowledge()
	check := func(d *desk.Desk, how string) {
		t.Helper()
		for range 2 {
			if d.M.Running().Light().Furnace.Name == "Reed Hollow" {
				break
			}
			d.Press("f2")
		}
		here, there := d.M.Running(), d.M.Shared().Other
		cs := there.Reading().Charges
		if len(here.Reading().Charges) != reed-1 || len(cs) != old+1 {
			t.Fatalf("%s: %d and %d charges, want %d and %d", how, len(here.Reading().Charges), len(cs), reed-1, old+1)
		}
		if at := there.Reading().Wall(cs[len(cs)-1].At); at.Sub(when).Abs() > time.Second {
			t.Errorf("%s: it happened at %s, booked at %s", how, when, at)
		}
	}
	check(d, "moved")
	d.Press("v", "b", "down", "down")
	d.Shows("moved to ")
	again := desk.SitAt(t, killed, desk.Later(d.At, time.Minute), theme.Theme{})
	again.Press("g")
	check(again, "killed between the two")
	n := len(again.Book)
	third := desk.SitAt(t, again.Book, desk.Later(again.At, time.Minute), theme.Theme{})
	third.Press("g")
	check(third, "and started once more")
	if len(third.Book) != n {
		t.Error("another stream came of it")
	}
}

func lastLine(d *desk.Desk) fold.Line {
	l, _ := d.M.Running().LastAct()
	return l
}

// A practice stands beside nothing, and its place is asked for as ever.
func TestPracticeStandsBesideNothing(t *testing.T) {
	d := desk.Smelting(t, theme.Theme{})
	d.Press("v", "a", "p")
	d.Shows("leave")
	d.Press("y")
	if d.M.Shared().Other.Is() || d.M.Active() != screen.Fire {
		t.Error("a smelt stands beside a practice")
	}
	d.Press("f2")
	d.Answers("no other fire")
}

// What comes up rings once, whichever fire is at work then and after that.
func TestWhatComesUpRingsOnceForBothFires(t *testing.T) {
	d := two(t)
	asks(d, "1", "bellows", "o")
	before := d.Rang
	d.Wait(time.Minute)
	if d.Shows("you asked for"); d.Rang != before+1 {
		t.Fatalf("the bell sounded %d times", d.Rang-before)
	}
	d.Press("f2")
	d.Wait(5 * time.Second)
	d.Press("f2")
	d.Wait(5 * time.Second)
	if d.Rang != before+1 {
		t.Errorf("it sounded %d times more as the fires changed places", d.Rang-before-1)
	}
}
