package shaft

import (
	"math"
	"testing"
)

// Gas along a layer whose solid stays at one temperature, with cold air mixed in evenly: the exact solution of
// (W + A x) dT/dx = transfer (solid - T) + A (air - T), by small steps; without air it is the exchanger 1 - exp(-NTU) of
// any textbook. Gas leaves between the coldest and the hottest that it met.
func TestExchangeAlongALayer(t *testing.T) {
	table := properties()
	const solid, cold = 900.0, 290.0
	for _, c := range []struct{ below, air, transfer, from float64 }{
		{1, 0, 0.5, 1300}, {1, 0, 5, 1300}, {1, 0.1, 2, 1300}, {1, 0.24, 2, 1300}, {1, 0.26, 2, 1300}, {1, 1, 2, 1300}, {1, 5, 3, 1300},
		{1e-9, 1, 0.3, 1300}, {1e-3, 1, 0.3, 1300}, {0, 1, 0.3, 1300}, {0, 1, 20, 300},
	} {
		var g gasStream
		var air airShare
		g.temperature, air.temperature = c.from, cold
		row, _ := tableRow(g.temperature)
		nitrogen := (table.gas[row+1][gasN2] - table.gas[row][gasN2]) / tableStep
		air.n[gasN2] = c.air / nitrogen
		g.n[gasN2] = c.below/nitrogen + air.n[gasN2] // as after the reactions: the air is in it
		follow, fixed := table.exchangeAlong(&g, &air, c.transfer, c.below, c.air)
		got := fixed + follow*solid

		const steps = 400_000
		want, w := c.from, c.below
		if c.below == 0 { // the air alone: it starts where the two balance
			want = (c.transfer*solid + c.air*cold) / (c.transfer + c.air)
		}
		for range steps {
			w += c.air / steps / 2
			if w > 0 {
				change := (c.transfer + c.air) / w / steps
				balance := (c.transfer*solid + c.air*cold) / (c.transfer + c.air)
				want = balance + (want-balance)*math.Exp(-change)
			}
			w += c.air / steps / 2
		}
		if math.Abs(got-want) > 2 {
			t.Errorf("%+v: %.1f K, exact %.1f", c, got, want)
		}
		if got < cold || got > max(c.from, solid) {
			t.Errorf("%+v: %.1f K lies outside of all it met", c, got)
		}
	}
}
