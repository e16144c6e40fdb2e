package tui_test

import (
	"slices"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/entry"
	"chargehand/tui/desk"
)

// The line for next time is asked for when a smelt is closed. The last three of its furnace
// stand on the plan and on the form before the next fire, which ask what is tried; that is
// kept with the smelt. A practice smelt asks for none.
func TestOneLineForNextTime(t *testing.T) {
	d := desk.Sit(t)
	d.Press("v", "u", "n")
	for _, text := range []string{"Reed Hollow", "25", "", "50", "60", "15", "5", "20", "20"} {
		d.Write(text)
		d.Press("enter")
	}
	d.Press("v", "a", "r", "pgdown", "enter", "y")
	d.Wait(time.Hour)
	uid := d.M.Running().Light().UID
	for _, text := range []string{"rod sooner", "tap sooner", "half a scoop less at first"} {
		d.Press("v", "c", "n")
		d.Write(text)
		d.Press("enter", "esc")
	}
	d.Press("o", "o", "n", "y", "o", "k", "y")
	d.Shows("one line for next time")
	d.Write("more people at the pull")
	d.Press("enter")
	d.Answers("for next time: more people at the pull")
	all := d.M.Shared().House().Lessons
	if n := len(all); n != 4 || all[3].Text != "more people at the pull" || all[3].Smelt != uid {
		t.Fatalf("lessons %+v", all)
	}
	d.Wait(time.Hour)
	d.Press("v", "p")
	d.Shows("from last time: more people at the pull; half a scoop less at first; tap sooner")
	d.Press("p")
	d.Shows("- half a scoop less at first")
	d.Write("drier charcoal")
	d.Press("enter")
	d.Shows("tried this time: drier charcoal")
	d.Press("enter")
	h := d.M.Shared().House()
	if n := len(h.Plans); n != 1 || h.Plans[0].Trying != "drier charcoal" {
		t.Fatalf("plans %+v", h.Plans)
	}
	d.Press("p", "end")
	d.Write(" only")
	d.Press("enter")
	if h := d.M.Shared().House(); len(h.Plans) != 1 || h.Plans[0].Trying != "drier charcoal only" {
		t.Fatalf("plans %+v\n%s", h.Plans, d.Picture())
	}
	d.Press("v", "a", "r")
	d.Shows("- more people at the pull")
	d.Shows("drier charcoal only")
	d.Send(tea.WindowSizeMsg{Width: 80, Height: 24})
	d.Press("pgdown", "up", "up")
	d.Shows("- tap sooner")
	d.Press("pgdown", "enter", "y")
	if got := d.M.Running().Light().Trying; got != "drier charcoal only" {
		t.Errorf("tried %q\n%s", got, d.Picture())
	}
	p := desk.Practising(t)
	p.Press("c", "o", "k", "y", "c")
	if slices.ContainsFunc(p.Acts(), func(ev entry.Event) bool { return ev.Kind() == entry.KindNote }) || len(p.M.Shared().House().Lessons) > 0 {
		t.Error("practice keeps a lesson")
	}
}
