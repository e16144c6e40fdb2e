package physics

import (
	"math"
	"testing"
)

// Ergun against the python library fluids 1.0.22 (its documented example, and a charcoal bed computed with it).
func TestErgunAgainstLibrary(t *testing.T) {
	if got := ErgunGradient(0.0008, 0.4, 0.001, 1000, 0.001); math.Abs(got-1338.8672) > 0.01 {
		t.Errorf("%.4f Pa, library 1338.8672", got)
	}
	area := math.Pi / 4 * 0.25 * 0.25
	for _, c := range []struct{ lMin, coarse, fine float64 }{{500, 13.9, 49.5}, {700, 26.3, 90.5}, {1000, 52.3, 174.9}} {
		speed := FromLitresPerMinute(c.lMin) / area
		for _, v := range []struct{ size, void, want float64 }{{0.030, 0.45, c.coarse}, {0.015, 0.40, c.fine}} {
			// Density and viscosity of air at 20 C.
			if got := ErgunGradient(v.size, v.void, speed, 1.2041, 1.81e-5); math.Abs(got/v.want-1) > 0.01 {
				t.Errorf("%g l/min, %g m: %.1f Pa/m, library %.1f", c.lMin, v.size, got, v.want)
			}
		}
	}
	for _, c := range []struct{ lMin, coarse, fine float64 }{{500, 100.8, 402.8}, {700, 184.0, 696.9}, {1000, 354.5, 1280}} {
		mass := FromLitresPerMinute(c.lMin) * 1.2041 * 1.18 // hot gas: 1.18 times the mass, 28 g/mol, 1000 C
		speed := mass / 0.268 / area
		for _, v := range []struct{ size, void, want float64 }{{0.030, 0.45, c.coarse}, {0.015, 0.40, c.fine}} {
			if got := ErgunGradient(v.size, v.void, speed, 0.268, 4.9e-5); math.Abs(got/v.want-1) > 0.01 {
				t.Errorf("hot %g l/min, %g m: %.1f Pa/m, library %.1f", c.lMin, v.size, got, v.want)
			}
		}
	}
}

// 12 m/s through a bore costs its speed head: 1.2 kg/m3 x 144/2 = 86.4 Pa, half as much again at a sharp entrance.
func TestTuyereDrop(t *testing.T) {
	got, err := TuyereDrop(12*math.Pi/4*0.02*0.02, 1.2, 0.02, 0.5)
	must(t, err)
	if math.Abs(got-129.6) > 1e-9 {
		t.Errorf("%.3f Pa, want 129.6", got)
	}
}
