package desk

import (
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/entry"
	"chargehand/model/rule"
	"chargehand/tui"
	"chargehand/tui/theme"
)

// Count is how many acts of a kind the open smelt holds.
func (d *Desk) Count(k entry.Kind) int {
	n := 0
	for _, ev := range d.Acts() {
		if ev.Kind() == k {
			n++
		}
	}
	return n
}

// Presses are all keys of the open smelt's batches.
func (d *Desk) Presses() []entry.Press {
	var ps []entry.Press
	for _, e := range d.M.Shared().Smelt.Entries() {
		if ks, ok := e.Event.(entry.Keys); ok {
			ps = append(ps, ks.Pressed...)
		}
	}
	return ps
}

// Burning is a practice smelt with six charges, eleven minutes apart.
func Burning(t *testing.T) *Desk {
	t.Helper()
	d := Practising(t)
	for range 6 {
		d.Press("c")
		d.Pass(11 * time.Minute)
	}
	return d
}

// Pass lets time go by with a tick every ten seconds.
func (d *Desk) Pass(by time.Duration) {
	d.T.Helper()
	for ; by > 0; by -= rule.Grid {
		d.Wait(min(by, rule.Grid))
	}
}

// Testified is what the program showed of a rule, in its order.
func (d *Desk) Testified(id rule.ID) []string {
	var states []string
	for _, e := range d.M.Running().Entries() {
		if t, ok := e.Event.(entry.Testimony); ok && t.Rule == string(id) {
			states = append(states, t.State)
		}
	}
	return states
}

// Smelting is a desk in the middle of an invented smelt, keyed key by key.
func Smelting(t *testing.T, th theme.Theme) *Desk {
	t.Helper()
	d := SitAt(t, Memory{}, Noon, th)
	d.Press("r", "enter")
	d.Write("Reed Hollow")
	d.Press("pgdown", "up")
	d.Write("MK")
	d.Press("pgdown", "enter", "y", "b")
	d.Write("400")
	d.Press("enter")
	d.Wait(70 * time.Minute)
	d.Press("f", "f", "f", "f")
	d.Wait(15 * time.Minute)
	d.Press("b")
	d.Write("720")
	d.Press("enter")
	for i := range 9 {
		if i == 3 || i == 6 {
			d.Press("up")
		}
		d.Press("c")
		d.Wait(time.Duration(9+i%3) * time.Minute)
		switch i {
		case 2:
			d.Press("l", "p", "w")
		case 4:
			d.Press("t")
		case 5:
			d.Press("g")
		case 6:
			d.Press("r", "u")
		case 7:
			d.Press("o", "e", "9", "enter", "p")
		}
	}
	d.Press("f")
	d.Fast(300*time.Millisecond, "s", "s", "s")
	d.Wait(4 * time.Minute)
	return d
}

// Works lets the solver answer until it has nothing more to do, and says how
// often it did.
func (d *Desk) Works(v *tui.Solver) int {
	d.T.Helper()
	n := 0
	for cmd := v.Next(d.M); cmd != nil; cmd = v.Next(d.M) {
		v.Done()
		d.Send(cmd())
		if n++; n > 10 {
			d.T.Fatal("the solver never rests")
		}
	}
	return n
}

// Said is what the last key did.
func (d *Desk) Said() string {
	text, _ := d.M.Answer()
	return text
}

// Long is a root at the end of a ten hours' smelt of about 500 entries.
func Long(b *testing.B, w, h int) tui.Model {
	b.Helper()
	d := SitAt(new(testing.T), Memory{}, Noon, theme.Theme{Profile: theme.Fixed256})
	d.Press("p")
	for len(d.M.Running().Entries()) < 500 {
		d.Press("c", "s", "s", "u", "l", "p", "w", "m")
		d.Wait(7 * time.Minute)
	}
	d.Send(tea.WindowSizeMsg{Width: w, Height: h})
	return d.M
}
