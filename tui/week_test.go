package tui_test

import (
	"slices"
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/model/rule"
	modelwords "chargehand/model/words"
	"chargehand/tui/desk"
)

// shownInHouse are the cautions of the week that were shown, in their order.
func shownInHouse(d *desk.Desk) (ids []string) {
	for _, e := range d.Book[entry.House] {
		if c, ok := e.Event.(entry.CautionShown); ok {
			ids = append(ids, c.Caution)
		}
	}
	return ids
}

// A deed of the week brings its caution with the next second, once to a person; any key
// puts it away, and does what it does.
func TestACautionComesAtItsDeed(t *testing.T) {
	d := desk.Sit(t)
	dug := func(name string) {
		d.Press("v", "t", "n", "1", "d")
		d.Write(name)
		d.Press("enter")
		d.Write("20")
		d.Press("enter", "enter")
		d.Wait(2 * time.Second)
	}
	dug("reed")
	title, _, _ := modelwords.Caution(rule.Digging)
	d.Shows(title)
	d.Shows("dug: 20") // what became of the deed stays in sight
	if got := shownInHouse(d); !slices.Equal(got, []string{rule.Digging}) {
		t.Fatalf("shown %v", got)
	}
	d.Press("down") // a key of the stores
	if d.M.Dialog() != nil {
		t.Errorf("still open: %v", d.M.Dialog())
	}
	d.Press("esc")
	dug("moss")
	if got := shownInHouse(d); len(got) != 1 {
		t.Errorf("shown again to the same person: %v", got)
	}
}
