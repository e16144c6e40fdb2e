package physics

import "testing"

// The class limits meet the accepted ends: 2.08 % at 1153 C is the most austenite holds (Chipman 1972, from memory), 1020 to
// 1030 steel is 0.2 to 0.3 %.
func TestCarbonClasses(t *testing.T) {
	for share, want := range map[float64]CarbonClass{0: SoftIron, 0.0005: SoftIron, 0.0025: SteelyIron, 0.007: Steel, 0.015: HighCarbon, 0.022: CastIron, 0.04: CastIron} {
		if got := CarbonClassOf(share); got != want {
			t.Errorf("%.4f: class %d, want %d", share, got, want)
		}
	}
}

func TestTraces(t *testing.T) {
	rich, manganese := TraceShares(Oxides{FeO: 75, SiO2: 20})
	poor, _ := TraceShares(Oxides{FeO: 35, SiO2: 50})
	if !(poor.P50 > rich.P50) || manganese.P90 > 0.1 {
		t.Errorf("phosphorus %+v and %+v, manganese %+v", rich, poor, manganese)
	}
}
