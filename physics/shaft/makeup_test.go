package shaft

import (
	"math"
	"testing"
)

// Make-up charcoal lifts the burden, closes the accounts under its own name, and is nobody's charge.
func TestMakeUp(t *testing.T) {
	s := dayShaft(t, DefaultParams(), Fine)
	runDay(t, &s, 2, 1.5, nil)
	before, height, top := s, s.StackHeight(), s.layers[s.count-1]
	must(t, s.MakeUp(s.Time(), 300, Portion{standardFuel(t), 1}))
	checkBalance(t, &s)
	if rise := s.StackHeight() - height; math.Abs(rise-0.085) > 0.02 {
		t.Errorf("a kilogram lifts the burden by %.3f m", rise)
	}
	if s.ledger.In != before.ledger.In || s.ledger.BurdenHeat != before.ledger.BurdenHeat || s.charges != before.charges || s.totals.OreIron != before.totals.OreIron {
		t.Error("it is booked as a charge")
	}
	if s.totals.MadeUp != 1 || math.Abs(s.ledger.MadeUp[ElementC]*12.011e-3-0.87/1.06) > 1e-3 {
		t.Errorf("%.3f kg made up, %.3f kg of carbon", s.totals.MadeUp, s.ledger.MadeUp[ElementC]*12.011e-3)
	}
	if s.layers[s.count-1] != top {
		t.Error("the top layer has changed")
	}
	s.AdvanceTo(s.Time() + 1200)
	checkBalance(t, &s)
	empty, err := New(Fine, s.geometry, s.params, s.ambient)
	must(t, err)
	must(t, empty.MakeUp(0, 1200, Portion{standardFuel(t), 2}))
	checkBalance(t, &empty)
	if empty.StackHeight() <= 0 {
		t.Error("nothing was laid into an empty shaft")
	}
	if err := s.MakeUp(0, 300, Portion{standardFuel(t), 1}); err == nil {
		t.Error("made up in the past")
	}
}
