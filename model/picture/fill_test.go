package picture_test

import (
	"math"
	"testing"

	"chargehand/model/entry"
	"chargehand/model/picture"
)

// A straight shaft of 25 cm over 65 cm holds 31.9 l; charcoal lies at 180 to 220 g/l
// (published range, see physics.DefaultCharcoalBulk).
func TestFilled(t *testing.T) {
	l := entry.Light{Furnace: entry.Furnace{Bore: entry.Some(entry.Centimetre(25)), Stack: entry.Some(entry.Centimetre(50)), TuyereBase: entry.Some(entry.Centimetre(15))},
		Measures: []entry.Measure{{Name: "bucket", What: entry.Charcoal, Mass: entry.Some(entry.Kilogram(1.9))}}}
	p, f := picture.Filled(l)
	if math.Abs(f.Mass.P50-6.38) > 0.02 || math.Abs(f.Mass.P10-31.9*0.18) > 0.05 || math.Abs(f.Mass.P90-31.9*0.22) > 0.1 {
		t.Errorf("fill %+v", f.Mass)
	}
	if math.Abs(f.Measures.Value-6.38/1.9) > 0.01 || math.Abs(f.Each-19.35) > 0.1 || math.Abs(f.Area-490.9) > 0.1 {
		t.Errorf("%+v", f)
	}
	if len(p.Slices) != 4 || p.Slices[0].Top != 50 || p.Slices[0].Charge != 4 || math.Abs(p.Slices[3].Bottom+15) > 1e-9 || p.Usual {
		t.Errorf("%+v", p.Slices)
	}
	for i := 1; i < len(p.Slices); i++ {
		if p.Slices[i].Top != p.Slices[i-1].Bottom {
			t.Errorf("a gap under layer %d", p.Slices[i-1].Charge)
		}
	}
	l.Measures = nil
	if p, f = picture.Filled(l); f.Measures.Known || len(p.Slices) != 1 {
		t.Error("measures of no weight")
	}
}
