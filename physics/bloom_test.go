package physics

import (
	"math"
	"testing"
)

// The class limits meet the accepted ends: 2.08 % at 1153 C is the most austenite holds (Chipman 1972, from memory), 1020 to
// 1030 steel is 0.2 to 0.3 %.
func TestCarbonClasses(t *testing.T) {
	for share, want := range map[float64]CarbonClass{0: SoftIron, 0.0005: SoftIron, 0.0025: SteelyIron, 0.007: Steel, 0.015: HighCarbon, 0.022: CastIron, 0.04: CastIron} {
		if got := CarbonClassOf(share); got != want {
			t.Errorf("%.4f: class %d, want %d", share, got, want)
		}
	}
}

func TestBloomForecast(t *testing.T) {
	first := BloomForecast(6, 30, nil)
	if first.P10 > 1.8+1e-9 || first.P90 < 15.9-1e-9 || first.P50 != 6 {
		t.Errorf("without own blooms: %+v, published yields 6 to 53 %% of 30 kg", first)
	}
	own := BloomForecast(6, 30, []float64{0.9, 1.1, 1.0})
	many := BloomForecast(6, 30, []float64{0.9, 1.1, 1.0, 0.95, 1.05, 1.02, 0.98, 0.9, 1.1, 1})
	if !(own.P90-own.P10 < first.P90-first.P10) || !(many.RelSD() <= own.RelSD()) || math.Abs(own.P50-6) > 0.1 {
		t.Errorf("three own blooms %+v, ten %+v", own, many)
	}
	wild := BloomForecast(6, 30, []float64{0.3, 1.1, 2.5})
	if !(wild.RelSD() > 2*own.RelSD()) {
		t.Errorf("wild blooms %+v", wild)
	}
	if !BloomForecast(math.NaN(), 30, nil).IsZero() || !BloomForecast(6, 0, nil).IsZero() {
		t.Error("nonsense was forecast")
	}
}

func TestTraces(t *testing.T) {
	rich, manganese := TraceShares(Oxides{FeO: 75, SiO2: 20})
	poor, _ := TraceShares(Oxides{FeO: 35, SiO2: 50})
	if !(poor.P50 > rich.P50) || manganese.P90 > 0.1 {
		t.Errorf("phosphorus %+v and %+v, manganese %+v", rich, poor, manganese)
	}
}
