package rule_test

import (
	"testing"

	"chargehand/model/entry"
	"chargehand/model/rule"
)

// A crew that charges unevenly, now after three minutes and now after nine, has a usual interval of five and a wide band about it. A
// wait within that band misses no entry; one is where it lasts far longer.
func TestAWaitWithinItsOwnBandMissesNoEntry(t *testing.T) {
	d := newDay(entry.Light{}).with(10, entry.Fill{Parts: entry.Parts{coal(5)}}).with(10.5, look(entry.AtTopGas, entry.TopGasAlight))
	at := 20.0
	for range 8 {
		for _, after := range []float64{3, 4, 9, 4, 6} {
			d.key(at, charge(coal(1.9), ore(1)))
			at += after
		}
	}
	d.key(at, charge(coal(1.9), ore(1)))
	missed := func(until float64) (n int) {
		for _, w := range d.walk(until) {
			if w.Rule == rule.EntryMissing && w.Onset > clock(60) {
				n++
			}
		}
		return n
	}
	if n := missed(at + 15); n != 0 { // three usual intervals
		t.Errorf("an entry was asked after %d times", n)
	}
	if missed(at+30) == 0 {
		t.Error("nothing charged for half an hour, and no entry is asked after")
	}
}
