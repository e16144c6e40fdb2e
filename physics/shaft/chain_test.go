package shaft

import (
	"math"
	"testing"
)

func TestDecayIsTheExponential(t *testing.T) {
	for x := 0.0; x < 43; x += 0.00317 {
		if got, want := decay(x), math.Exp(-x); math.Abs(got/want-1) > 1e-11 {
			t.Fatalf("exp(-%g): %.15g, want %.15g", x, got, want)
		}
		mean, left := meanDecay(x)
		if want := -math.Expm1(-x) / x; x > 0 && (math.Abs(mean/want-1) > 1e-8 || math.Abs(left/math.Exp(-x)-1) > 1e-8) {
			t.Fatalf("mean of exp(-%g): %.15g, want %.15g", x, mean, want)
		}
	}
	if decay(1e9) != 0 || decay(-1) != 1 || decay(math.NaN()) != 1 {
		t.Error("ends")
	}
}

func TestTwoThirds(t *testing.T) {
	for x := 0.01; x <= 1; x += 0.000371 {
		if got, want := twoThirds(x), math.Pow(x, 2.0/3); math.Abs(got-want) > 3e-4*want {
			t.Fatalf("%g: %g, want %g", x, got, want)
		}
	}
	if twoThirds(0) != 0 || twoThirds(1) != 1 {
		t.Error("ends")
	}
}

func TestPowerSix(t *testing.T) {
	for x := 1e-29; x < 1e29; x *= 1.037 {
		if got, want := powerSix(x), math.Pow(x, 0.6); math.Abs(got/want-1) > 1e-11 {
			t.Fatalf("%g: %g, want %g", x, got, want)
		}
	}
}

// The chain of oxygen and its product along a layer against plain numerical integration in 20,000 slices.
func TestOxygenChainAgainstIntegration(t *testing.T) {
	for _, c := range []struct{ in, fed, rate, partner, made, loss, pull float64 }{
		{0.1, 0, 0.5, 0.02, 0.039, 0.3, 0}, {0, 0.1, 3, 0, 0.09, 2, 0.01}, {0.05, 0.05, 8, 0.1, 0.1, 8, 0.5},
		{0.2, 0.01, 0.001, 0.3, 0.0002, 1, 0.1}, {0.1, 0.1, 20, 0, 0.2, 0.01, 0},
	} {
		const slices = 20000
		n, burned := c.in, 0.0
		o := burnOxygen(c.in, c.fed, c.rate)
		m, mean := c.partner, 0.0
		for range slices {
			half := n + (c.fed-c.rate*n)/(2*slices)
			b := c.rate * half / slices
			n += c.fed/slices - b
			burned += b
			made := c.made / o.burned * b
			mid := m + (c.pull-c.loss*m+made*slices)/(2*slices)
			m += made + (c.pull-c.loss*mid)/slices
			mean += mid / slices
		}
		got := o.oxidisedPath(c.partner, c.made, c.loss, c.pull)
		if math.Abs(o.burned-burned) > 1e-5*burned+1e-9 || math.Abs(got-mean) > 1e-4*mean+1e-9 {
			t.Errorf("%+v: burned %.8f mean %.8f, integrated %.8f and %.8f", c, o.burned, got, burned, mean)
		}
	}
}
