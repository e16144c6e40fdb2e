package plan_test

import (
	"math"
	"testing"

	"chargehand/model/plan"
	"chargehand/physics"
)

// Sand takes iron as fayalite does: 2 x 55.845 / 60.084 kg for each kg, 1.86 (atomic
// masses), which the slag check tells as its price; the iron of the ore that is no bloom is
// in the slag.
func TestSlagOfAPlan(t *testing.T) {
	p := asked(nil)
	w, _ := p.Usual()
	s := p.Slag(w, plan.Foreseen{Known: true, Hearth: physics.Normal(1623, 60)})
	ore := w.Ore * 0.686 * 2 * 55.845 / 159.688 // iron in 68.6 % of Fe2O3
	if bloom := w.Ore * p.Yield.P50 * 0.75; math.Abs(s.Iron/(ore-bloom)-1) > 0.1 {
		t.Errorf("%.2f kg of iron in the slag of %.2f, with %.2f in the bloom", s.Iron, ore, bloom)
	}
	if got := 2.3915 * s.Of.SiO2 / (s.Of.FeO + 0.8998*s.Of.Fe2O3); math.Abs(got/s.Index-1) > 1e-3 || s.IndexMn >= s.Index {
		t.Errorf("index %.3f, by hand %.3f; with manganese %.3f", s.Index, got, s.IndexMn)
	}
	if s.Indices.P10 >= s.Index || s.Indices.P90 <= s.Index || !s.Assumed || s.Melts.IsZero() {
		t.Errorf("%+v", s)
	}
	names := []plan.RemedyName{plan.IronSlag, plan.WoodAsh, plan.Sand, plan.Lime}
	for i, r := range s.Remedies {
		if r.Name != names[i] {
			t.Errorf("remedy %d is %s", i, r.Name)
		}
		switch up := r.Index > s.Index; r.Name {
		case plan.Sand:
			if math.Abs(r.Takes.P50-1.859) > 0.001 || !up || r.Helps != (s.Index < 0.7) {
				t.Errorf("sand %+v of a slag of index %.2f", r, s.Index)
			}
		case plan.IronSlag:
			if math.Abs(r.Brings-0.6*0.7773) > 0.01 || r.Helps {
				t.Errorf("slag %+v", r)
			}
		}
	}
}

// An ore so poor in iron that its slag stands is helped by slag that is rich in it, and not
// by sand; what no diagram knows has no melting.
func TestSlagOfAPoorOre(t *testing.T) {
	poor := physics.Assay{Parts: map[string]float64{"Fe2O3": 50, "SiO2": 30, "Al2O3": 6, "CaO": 2}, Basis: physics.Dried}
	p := asked(func(a *plan.Ask) { a.Ore.Assay = &poor })
	w, _ := p.Usual()
	s := p.Slag(w, plan.Foreseen{Known: true, Hearth: physics.Normal(1473, 60)})
	if s.Assumed || !s.Stiff || s.Index < 1.5 {
		t.Fatalf("index %.2f, runs %+v", s.Index, s.Runs)
	}
	for _, r := range s.Remedies {
		if r.Helps == (r.Name == plan.Sand) {
			t.Errorf("%+v", r)
		}
		if r.Name == plan.IronSlag && r.Index >= s.Index {
			t.Errorf("index with slag %.2f, without %.2f", r.Index, s.Index)
		}
	}
}
