package paint

import (
	"strings"
	"testing"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/physics"
	"chargehand/tui/theme"
)

// A little iron to come is not told as none.
func TestSmallBloomIsNotToldAsNone(t *testing.T) {
	for _, c := range []struct {
		low, high float64
		says      string
	}{{0.05, 0.34, "0.1 to 0.3 kg"}, {0.6, 1.9, "0.6 to 1.9 kg"}, {1.2, 8.7, "1 to 9 kg"}} {
		r := midSmelt()
		r.Bloom = entry.None[float64]()
		r.Figures[figure.BloomEnd] = figure.Figure{Band: physics.Band{P10: c.low, P50: (c.low + c.high) / 2, P90: c.high}, Basis: figure.Guessed}
		if l := with(theme.Theme{}).bloomLine(r); !strings.Contains(l.value, c.says) {
			t.Errorf("%g to %g kg reads %q, want %q", c.low, c.high, l.value, c.says)
		}
	}
}
