package shaft

import (
	"testing"

	"chargehand/physics"
)

// A slag with free wustite keeps iron soft, a slag poor in iron lets it take carbon (Sauder, quoted 2006); the spark of the
// bloom of 30 Nov 2016 (like 1020-1030 steel) lies inside the band of that smelt's hearth.
func TestBloomCarbon(t *testing.T) {
	hearth := Hearth{Temperature: physics.FromCelsius(1250), Iron: 5, Carbon: 0.001}
	hearth.Slag = physics.Oxides{FeO: 75, SiO2: 20, Al2O3: 5}
	rich := hearth.BloomCarbon()
	hearth.Slag = physics.Oxides{FeO: 35, SiO2: 50, Al2O3: 15}
	poor := hearth.BloomCarbon()
	if !(poor.P90 > 2*rich.P90) || !(rich.P10 <= rich.P50 && rich.P50 <= rich.P90) {
		t.Errorf("slag rich in iron %+v, poor %+v", rich, poor)
	}
	if !(Hearth{}).BloomCarbon().IsZero() {
		t.Error("no iron has carbon")
	}
	r := smelt2016(t, 1.15).replay(t)
	if c := r.shaft.Hearth().BloomCarbon(); 0.002 > c.P90 || c.P10 > 0.003 {
		t.Errorf("30 Nov 2016: %+v, spark like 0.2-0.3 %%", c)
	}
}
