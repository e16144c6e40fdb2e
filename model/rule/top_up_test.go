package rule_test

import (
	"testing"

	"chargehand/model/entry"
)

// Three buckets at once bring a new fill to the mark; they are one charge in
// three goes and say nothing of how long one lasts (common practice). The next
// charges come every ten minutes.
func TestToppingUpMakesNoPace(t *testing.T) {
	full := charge(coal(1.9), ore(1))
	d := newDay(entry.Light{}).with(10, entry.Fill{Parts: entry.Parts{coal(5)}}).with(10.5, look(entry.AtTopGas, entry.TopGasAlight))
	for _, minute := range []float64{20, 21, 22, 32, 42, 52, 62} {
		d.key(minute, full)
	}
	if ws := d.walk(70); len(ws) > 0 {
		t.Errorf("warned of %+v", ws)
	}
}
