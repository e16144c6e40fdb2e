package draw

import (
	"math"
	"testing"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/plan"
	"chargehand/model/words"
	"chargehand/physics"
	"chargehand/tui/theme"
)

// The good band of the blast is what published smelts used, as charging plans have it.
func TestGoodBlastIsThatOfThePlan(t *testing.T) {
	r := new(figure.Reading)
	const perMinute, perArea = 650, 1.3
	r.Figures[figure.Air] = figure.Figure{Band: physics.Exact(perMinute), Basis: figure.Measured}
	r.Figures[figure.AirPerArea] = figure.Figure{Band: physics.Exact(perArea), Basis: figure.Measured}
	r.Blast = entry.Blast{Volume: entry.Some(entry.LitrePerMinute(perMinute))}
	b := With(theme.Theme{}, words.Units{}).blastLine(r).bar
	if b == nil {
		t.Fatal("no bar")
	}
	area := perMinute / perArea
	if math.Abs(b.from-plan.UsedBlast.P10*area) > 1e-9 || math.Abs(b.until-plan.UsedBlast.P90*area) > 1e-9 {
		t.Errorf("good from %v to %v l/min, want %v to %v", b.from, b.until, plan.UsedBlast.P10*area, plan.UsedBlast.P90*area)
	}
}
