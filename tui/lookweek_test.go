package tui_test

import (
	"testing"

	"chargehand/model/entry"
	"chargehand/model/invented/week"
	"chargehand/tui"
	"chargehand/tui/desk"
	"chargehand/tui/screen"
	"chargehand/tui/theme"
)

// The invented week is reached from the list of the smelts, marked on every screen of it,
// only to look at, and gone when another screen is: nothing of it meets what a person has.
func TestTheInventedWeekIsOnlyToLookAt(t *testing.T) {
	d := desk.SitWith(t, desk.Memory{}, desk.Noon, theme.Theme{}, func(c *tui.Config) { c.Week = week.Entries })
	d.Press("v", "t")
	d.Script("n1rmine\n31\n3\n")
	own := d.M.Shared().House()
	kept := len(d.Book[entry.House])
	d.Press("v", "s", "w")
	d.Shows("pond meadow")
	d.Shows("invented")
	d.Answers("to look at only")
	if d.M.Active() != screen.Stores || len(d.M.Shared().House().Lots) < 6 {
		t.Fatalf("on %s:\n%s", d.M.Active(), d.Picture())
	}
	for _, keys := range []string{"w5\n", "x", "n1rnew\n1\n\n"} {
		d.Script(keys)
		d.Answers("only to look at")
		d.Press("esc")
		d.Press("v", "s", "w")
	}
	d.Press("v", "u")
	d.Shows("Reed Hollow")
	d.Shows("invented")
	d.Press("enter")
	d.Answers("only to look at")
	d.Press("v", "p")
	d.Shows("invented")
	d.Shows("Sat 9 May")
	d.Press("enter")
	d.Answers("only to look at")
	d.Press("v", "t")
	d.Shows("for the plan of 9 May")
	d.Press("v", "a") // the start: the week is over
	d.Press("v", "t")
	d.Shows("mine")
	if h := d.M.Shared().House(); len(h.Lots) != len(own.Lots) || len(h.Plans) != 0 {
		t.Errorf("own lots %+v, plans %+v", h.Lots, h.Plans)
	}
	for _, e := range d.Book[entry.House][kept:] {
		if k := e.Kind(); k != entry.KindKeys && k != entry.KindDraft {
			t.Errorf("kept of it: %+v", e.Event)
		}
	}
}
