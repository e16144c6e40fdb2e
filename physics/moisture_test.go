package physics

import (
	"math"
	"testing"
)

// The printed worked case of FAO Forestry Paper 41 (1983, from memory): 100 kg of wood with
// 20 kg of water gave 10 kg of charcoal, which is 10 % of the wood as it lay and 12.5 % of
// it dry.
func TestBothBasesOfMoisture(t *testing.T) {
	if v := OnDry(0.2); math.Abs(v-0.25) > 1e-12 {
		t.Errorf("20 %% of the weight is %v on the dry mass", v)
	}
	if v := OfWeight(OnDry(0.31)); math.Abs(v-0.31) > 1e-12 {
		t.Errorf("there and back %v", v)
	}
	if wet, dry := 10./100, 10./(100*(1-OfWeight(0.25))); math.Abs(wet-0.10) > 1e-12 || math.Abs(dry-0.125) > 1e-12 {
		t.Errorf("%v and %v", wet, dry)
	}
}
