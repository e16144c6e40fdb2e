package tui_test

import (
	"slices"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chargehand/tui/desk"
	"chargehand/tui/fire"
	"chargehand/tui/screen"
)

// fits fails when an answer is not whole in a window of 80 columns, or the question that is
// open beside it: where something is refused, what to do about it must not be cut off.
func fits(t *testing.T, d *desk.Desk, keys string) {
	t.Helper()
	said, refused := d.M.Answer()
	if !refused {
		return
	}
	lines := strings.Split(d.M.Sized(80, 24).Picture(), "\n")
	foot := strings.Join(strings.Fields(lines[len(lines)-2]+"\n"+lines[len(lines)-1]), " ")
	if !strings.Contains(foot, strings.Join(strings.Fields(said), " ")) {
		t.Errorf("%s: %q is cut off at 80 columns:\n%s", keys, said, foot)
	}
	if open := d.M.Dialog(); open != nil {
		if asks := strings.Join(strings.Fields(open.Ask(d.M.Shared()).Label), " "); !strings.Contains(foot, asks) {
			t.Errorf("%s: the question %q is cut off at 80 columns:\n%s", keys, asks, foot)
		}
	}
}

// Every refusal of every field, of every list, and of every key on every screen is whole
// at 80 columns.
func TestRefusalsFit(t *testing.T) {
	lists, fields := allDialogs(t)
	base := desk.Practising(t)
	base.Press("c", "c")
	refused := 0
	try := func(d *desk.Desk, keys ...string) {
		d.Press(keys...)
		if _, no := d.M.Answer(); no {
			refused++
		}
		fits(t, d, strings.Join(keys, " "))
	}
	typed := []string{"", "9 9 9 9 9 9 9 9 9 9 9 9 9 9", "0 , 0 0 1", "1 , 0 0 0", "1 , 2 , 3", "1 e", "1 q", "tab", "7 7 7 7", "- 5", ": :"}
	for label, f := range fields {
		for _, text := range typed {
			d := aside(base)
			d.M = d.M.Open(screen.Field{Label: label, Unit: f.Unit, Input: screen.NewInput(f.Input.Number()), Instead: f.Instead, Done: f.Done, Keeps: f.Keeps})
			for _, k := range strings.Fields(text) {
				try(d, k)
			}
			try(d, "enter")
		}
	}
	for _, list := range lists {
		for _, k := range []string{"enter", "up", "q", "9", "tab", "c"} {
			d := aside(base)
			d.M = d.M.Open(list)
			try(d, k)
		}
	}
	var keys []string
	for c := ' '; c < 127; c++ {
		keys = append(keys, string(c))
	}
	for k := range desk.Named {
		keys = append(keys, k)
	}
	slices.Sort(keys)
	keys = slices.DeleteFunc(keys, func(k string) bool { return k == "ctrl+c" })
	bare, closed, over := desk.Sit(t), desk.Practising(t), desk.Practising(t)
	closed.Press("c", "o", "k", "y")
	over.Press("c", "o", "b")
	looked := desk.Sit(t)
	looked.Press("l", "enter")
	weighed := desk.Practising(t)
	weighed.Press("o", "r", "n", "2", "enter", "0", "enter")
	for name, d := range map[string]*desk.Desk{"burning": base, "start": bare, "closed": closed, "burn-down": over, "to look at": looked, "by weight": weighed} {
		for _, to := range []string{"", "v b", "v s", "v a", "v r", "h"} {
			there := aside(d)
			there.Press(strings.Fields(to)...)
			for _, k := range keys {
				one := aside(there)
				one.At = desk.Later(one.At, time.Minute)
				one.Press(k)
				if _, no := one.M.Answer(); no {
					refused++
				}
				fits(t, one, name+", "+to+" "+k)
				one.Fast(100*time.Millisecond, k) // and like a leaning glove
				fits(t, one, name+", "+to+" "+k+" "+k)
			}
		}
	}
	d := aside(base)
	d.Send(screen.Pressed{Key: tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("two words"), Paste: true}, At: desk.Later(d.At, time.Second)})
	fits(t, d, "a paste")
	for range 40 {
		d.Fast(20*time.Millisecond, "s")
	}
	fits(t, d, "a run of scoops")
	if refused < 300 || len(fire.Map.All()) == 0 {
		t.Fatalf("only %d refusals met: the walk is broken", refused)
	}
}
