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

// Charcoal that has no room is booked by its atoms beside the account, and changes nothing else.
func TestSurplus(t *testing.T) {
	s := dayShaft(t, DefaultParams(), Fine)
	runDay(t, &s, 1, 1.5, nil)
	before := s
	must(t, s.Surplus(s.Time(), Portion{standardFuel(t), 0.7}))
	checkBalance(t, &s)
	// Its own carbon, and a little in its volatiles.
	if c, own := s.ledger.Surplus[ElementC]*12.011e-3, 0.7*0.87/1.06; s.totals.Surplus != 0.7 || c < own || c > 1.05*own {
		t.Errorf("%.3f kg, %.3f kg of carbon", s.totals.Surplus, s.ledger.Surplus[ElementC]*12.011e-3)
	}
	s.ledger.Surplus, s.totals.Surplus = before.ledger.Surplus, 0
	if s != before {
		t.Error("something else has changed")
	}
	if err := s.Surplus(0, Portion{standardFuel(t), 1}); err == nil {
		t.Error("in the past")
	}
}
