package plan_test

import (
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/exp/golden"

	"chargehand/tui/desk"
	"chargehand/tui/screen"
)

// A newcomer gets to a plan by three times enter, in the smallest window: the usual
// furnace, 20 kg of roasted ore, a blower that nobody measured.
func TestPreparedInThreeEnters(t *testing.T) {
	d := desk.Sit(t)
	d.Send(tea.WindowSizeMsg{Width: 80, Height: 24})
	d.Press("e")
	d.Shows("in which furnace")
	d.Press("enter", "enter", "enter")
	if d.M.Active() != screen.Plan {
		t.Fatalf("on %s:\n%s", d.M.Active(), d.Picture())
	}
	for _, says := range []string{"20 kg ore", "in 10", "pull the bloom", "you judge"} {
		d.Shows(says)
	}
	golden.RequireEqual(t, []byte(d.M.View()))
	d.Press("a")
	d.Shows("the bag test")
}
