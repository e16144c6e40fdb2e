package tui_test

import (
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/session"
	modelwords "chargehand/model/words"
	"chargehand/tui"
	"chargehand/tui/desk"
)

// The screen has its reading at once; the solver's figures come desk.Later, and after
// another entry they are marked until they have been worked out for it.
func TestFiguresComeFromTheSolverWithoutWaiting(t *testing.T) {
	d, v := desk.Burning(t), &tui.Solver{}
	if r := d.M.Running().Reading(); r.Solver != figure.Unsolved || r.Figure(figure.HearthTemperature).Known() {
		t.Fatalf("before the solver: %d", r.Solver)
	}
	if d.Works(v) == 0 {
		t.Fatal("nothing to solve")
	}
	r := d.M.Running().Reading()
	if r.Solver != figure.Solved || !r.Figure(figure.HearthTemperature).Known() || len(r.Zones) == 0 || !r.Zones[0].WallSide.Known {
		t.Fatalf("solver %d, lack %d, hearth %+v", r.Solver, r.Status, r.Figure(figure.HearthTemperature))
	}
	if b := r.Figure(figure.HearthTemperature).Basis; b != figure.Guessed {
		t.Errorf("a blast nobody metered makes a guess, not %v", b)
	}
	d.Press("p") // poke the burden
	if r := d.M.Running().Reading(); r.Solver != figure.Resolving || !strings.Contains(d.M.View(), modelwords.BeingWorkedOut) {
		t.Errorf("after another entry: solver %d", r.Solver)
	}
	d.Works(v)
	if r := d.M.Running().Reading(); r.Solver != figure.Solved || strings.Contains(d.M.View(), modelwords.BeingWorkedOut) {
		t.Errorf("solved again: solver %d", r.Solver)
	}
}

// The solver is asked once a step of its grid, and once an entry; one job at a
// time.
func TestTheSolverIsAskedWhenThereIsSomethingNew(t *testing.T) {
	d, v := desk.Burning(t), &tui.Solver{}
	d.Works(v)
	asked := 0
	for range 60 {
		d.Wait(time.Second)
		asked += d.Works(v)
		if s := d.M.Running().Reading().Solver; s != figure.Solved {
			t.Fatalf("solver %d at %v", s, d.M.Running().Reading().At)
		}
	}
	if asked < 11 || asked > 14 { // twelve steps, and what the program showed may be written down
		t.Errorf("asked %d times in a minute", asked)
	}
	d.Wait(6 * time.Second)
	if v.Next(d.M) == nil || v.Next(d.M) != nil {
		t.Error("two jobs at a time")
	}
}

// What comes back for a smelt that is not there any more is dropped.
func TestASolutionFindsItsSmelt(t *testing.T) {
	d, v := desk.Burning(t), &tui.Solver{}
	cmd := v.Next(d.M)
	kept := d.M.Running().Entries()
	d.M = d.M.WithRunning(session.Open("another", kept))
	d.Send(cmd())
	if d.M.Running().Reading().Solver != figure.Unsolved {
		t.Error("taken for another smelt")
	}
}

// The program itself works jobs out beside the screen.
func TestTheProgramSolves(t *testing.T) {
	d := desk.Burning(t)
	p := tui.Program(d.M, d.Book, func() entry.Stamp { return d.At })
	_, cmd := p.Update(tea.WindowSizeMsg{Width: 120, Height: 36})
	if _, busy := tui.Inner(p); !busy {
		t.Fatal("the solver was not asked")
	}
	for _, msg := range messages(cmd) {
		p.Update(msg)
	}
	if m, busy := tui.Inner(p); m.Running().Reading().Solver != figure.Solved || busy {
		t.Errorf("solver %d, busy %v", m.Running().Reading().Solver, busy)
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
