package tui

import (
	"reflect"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/session"
	"chargehand/model/words"
)

// works lets the solver answer until it has nothing more to do, and says how
// often it did.
func (d *desk) works(v *solver) int {
	d.t.Helper()
	n := 0
	for cmd := v.next(d.m); cmd != nil; cmd = v.next(d.m) {
		v.busy = false
		d.send(cmd())
		if n++; n > 10 {
			d.t.Fatal("the solver never rests")
		}
	}
	return n
}

// The screen has its reading at once; the solver's figures come later, and after
// another entry they are marked until they have been worked out for it.
func TestFiguresComeFromTheSolverWithoutWaiting(t *testing.T) {
	d, v := burning(t), &solver{}
	if r := d.m.running.Reading(); r.Solver != figure.Unsolved || r.Figure(figure.HearthTemperature).Known() {
		t.Fatalf("before the solver: %d", r.Solver)
	}
	if d.works(v) == 0 {
		t.Fatal("nothing to solve")
	}
	r := d.m.running.Reading()
	if r.Solver != figure.Solved || !r.Figure(figure.HearthTemperature).Known() || len(r.Zones) == 0 || !r.Zones[0].WallSide.Known {
		t.Fatalf("solver %d, lack %d, hearth %+v", r.Solver, r.Lack, r.Figure(figure.HearthTemperature))
	}
	if b := r.Figure(figure.HearthTemperature).Basis; b != figure.Guessed {
		t.Errorf("a blast nobody metered makes a guess, not %v", b)
	}
	d.press("p") // poke the burden
	if r := d.m.running.Reading(); r.Solver != figure.Resolving || !strings.Contains(d.m.View(), words.BeingWorkedOut) {
		t.Errorf("after another entry: solver %d", r.Solver)
	}
	d.works(v)
	if r := d.m.running.Reading(); r.Solver != figure.Solved || strings.Contains(d.m.View(), words.BeingWorkedOut) {
		t.Errorf("solved again: solver %d", r.Solver)
	}
}

// The solver is asked once a step of its grid, and once an entry; one job at a
// time.
func TestTheSolverIsAskedWhenThereIsSomethingNew(t *testing.T) {
	d, v := burning(t), &solver{}
	d.works(v)
	asked := 0
	for range 60 {
		d.wait(time.Second)
		asked += d.works(v)
		if s := d.m.running.Reading().Solver; s != figure.Solved {
			t.Fatalf("solver %d at %v", s, d.m.running.Reading().At)
		}
	}
	if asked < 11 || asked > 14 { // twelve steps, and what the program showed may be written down
		t.Errorf("asked %d times in a minute", asked)
	}
	d.wait(6 * time.Second)
	if v.next(d.m) == nil || v.next(d.m) != nil {
		t.Error("two jobs at a time")
	}
}

// What comes back for a smelt that is not there any more is dropped.
func TestASolutionFindsItsSmelt(t *testing.T) {
	d, v := burning(t), &solver{}
	cmd := v.next(d.m)
	kept := d.m.running.Entries()
	d.m.running = session.Open("another", kept)
	d.send(cmd())
	if d.m.running.Reading().Solver != figure.Unsolved {
		t.Error("taken for another smelt")
	}
}

// The program itself works jobs out beside the screen.
func TestTheProgramSolves(t *testing.T) {
	d := burning(t)
	p := Program(d.m, d.book, func() entry.Stamp { return d.at }).(*program)
	_, cmd := p.Update(tea.WindowSizeMsg{Width: 120, Height: 36})
	if !p.solve.busy {
		t.Fatal("the solver was not asked")
	}
	for _, msg := range messages(cmd) {
		p.Update(msg)
	}
	if r := p.model.running.Reading(); r.Solver != figure.Solved || p.solve.busy {
		t.Errorf("solver %d, busy %v", r.Solver, p.solve.busy)
	}
}

// messages runs a command and what it is made of.
func messages(cmd tea.Cmd) []tea.Msg {
	if cmd == nil {
		return nil
	}
	switch msg := cmd().(type) {
	case nil:
		return nil
	case tea.BatchMsg:
		var all []tea.Msg
		for _, c := range msg {
			all = append(all, messages(c)...)
		}
		return all
	default:
		return []tea.Msg{msg}
	}
}

// Replay has the solver's figures of its own moment, as they were shown live.
func TestReplayShowsWhatTheSolverSaid(t *testing.T) {
	d, v := burning(t), &solver{}
	d.works(v)
	live := d.m.running.Reading()
	d.pass(20 * time.Minute)
	d.press("v", "r") // to Replay
	if d.m.active != replayScreen {
		t.Fatalf("on %s", d.m.active)
	}
	d.m = d.m.withScreen(d.replay().to(live.At))
	if r := d.replay().then.Reading(); r.Solver != figure.Unsolved {
		t.Errorf("before the solver: %d", r.Solver)
	}
	d.works(v)
	got := d.replay().then.Reading()
	if got.Solver != figure.Solved || !reflect.DeepEqual(got.Figures, live.Figures) || !reflect.DeepEqual(got.Zones, live.Zones) {
		t.Errorf("solver %d at %v; hearth %+v, live %+v", got.Solver, got.At, got.Figure(figure.HearthTemperature), live.Figure(figure.HearthTemperature))
	}
	d.m = d.m.withScreen(d.replay().to(live.At - 20*time.Minute))
	if r := d.replay().then.Reading(); r.Solver != figure.Resolving {
		t.Errorf("at another moment, before the solver: %d", r.Solver)
	}
	d.works(v)
	if r := d.replay().then.Reading(); r.Solver != figure.Solved || r.At != live.At-20*time.Minute {
		t.Errorf("solver %d at %v", r.Solver, r.At)
	}
}

// The line of Replay marks what the solver noted too, the same as was shown
// live; until it is worked out the line says so, and no key waits for it.
func TestReplayMarksTheSolversNotes(t *testing.T) {
	d, v := burning(t), &solver{}
	d.press("b", "2", "0", "0", "enter") // a blast too weak to keep the hearth hot
	for range 8 {
		d.pass(40 * time.Minute)
		d.press("c")
		d.works(v)
	}
	live := d.m.running.Warnings()
	d.press("v", "r", "end")
	d.shows(words.NotesWorkedOut)
	before := len(d.replay().course.warnings)
	d.works(v)
	if strings.Contains(d.screen(), words.NotesWorkedOut) {
		t.Error("worked out, and the line still waits for it")
	}
	c := d.replay().course
	if !reflect.DeepEqual(c.warnings, live) {
		t.Errorf("live %d warnings, in Replay %d", len(live), len(c.warnings))
	}
	if len(c.warnings) <= before || len(c.onsets) != len(c.warnings) {
		t.Errorf("%d warnings before the solver, %d with it: the day shows nothing", before, len(c.warnings))
	}
	over := sit(t) // of a smelt that is over it is worked out once
	over.press("l", "enter", "v", "r")
	over.works(v)
	over.press("esc", "v", "r")
	if over.m.active != replayScreen || !over.replay().course.Whole.IsSolved() {
		t.Error("solved anew for the same entries")
	}
}
