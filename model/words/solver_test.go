package words

import (
	"testing"

	"chargehand/physics"
)

func TestStiffness(t *testing.T) {
	for paS, want := range map[float64]string{0.0493: "0.049 Pa s", 0.1046: "0.1 Pa s", 1.23: "1.2 Pa s", 14.8: "15 Pa s", 8258: "does not run"} {
		if got := Stiffness(paS); got != want {
			t.Errorf("%v: %q, want %q", paS, got, want)
		}
	}
}

// Beside the furnace there are 17 columns, one of them a colon's.
func TestHowSlagRunsFitsBesideTheFurnace(t *testing.T) {
	for _, r := range []physics.Running{{Runs: 1}, {Creeps: 1}, {Not: 1}} {
		if word, _ := RunsShort(r); len(word) > 16 {
			t.Errorf("%q has %d letters", word, len(word))
		}
	}
}
