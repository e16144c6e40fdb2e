package words

import "testing"

func TestStiffness(t *testing.T) {
	for paS, want := range map[float64]string{0.0493: "0.049 Pa s", 0.1046: "0.1 Pa s", 1.23: "1.2 Pa s", 14.8: "15 Pa s", 8258: "does not run"} {
		if got := Stiffness(paS); got != want {
			t.Errorf("%v: %q, want %q", paS, got, want)
		}
	}
}
