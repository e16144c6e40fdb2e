package shaft

import (
	"testing"

	"chargehand/physics"
)

// A burning shaft takes 0.1 to 1 kPa per m of bed, as Ergun's equation has it for lumps of 15 to 30 mm (ergun_test.go); fines and ore raise it.
func TestShaftPressureDrop(t *testing.T) {
	s := dayShaft(t, DefaultParams(), Fine)
	runDay(t, &s, 2, 0, nil)
	bare := s.PressureDrop(1)
	if perMetre := bare / s.StackHeight(); perMetre < 100 || perMetre > 1000 {
		t.Errorf("%.0f Pa per m", perMetre)
	}
	if round := s.PressureDrop(physics.LumpRoundness); !(round > bare) {
		t.Errorf("angular lumps take %.0f Pa, balls %.0f", round, bare)
	}
	must(t, s.Charge(s.Time(), Portion{standardFuel(t), 1}, Portion{standardOre(t), 4}))
	s.AdvanceTo(s.Time() + 10)
	if with := s.PressureDrop(1); !(with > bare) {
		t.Errorf("ore in the voids: %.0f Pa, before %.0f", with, bare)
	}
}
