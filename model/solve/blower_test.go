package solve_test

import (
	"math"
	"testing"
	"time"

	"chargehand/model/entry"
)

// withBlower is a blast that another blower blows.
func withBlower(name string, lMin float64) entry.Blast {
	b := blast(lMin)
	b.Blower = name
	return b
}

// What a meter shows of one blower says nothing of another: with the second one, whose meter reads
// double for the same fire, the factor begins anew, and that of the first comes back with it.
func TestAnAirFactorIsOfItsBlower(t *testing.T) {
	const every = 10 * time.Minute
	d := steady(12, every)
	first := d.fresh(d.now).AirFactor.P50
	d.key(withBlower("spare", 1200)).wait(time.Minute)
	if fresh := d.fresh(d.now); fresh.Intervals != 0 {
		t.Errorf("%d intervals of the first blower count for the second", fresh.Intervals)
	}
	for range 8 {
		d.key(charge(buckets(1), ore(1.5))).wait(every)
	}
	if spare := d.fresh(d.now).AirFactor.P50; math.Abs(spare/first-0.5) > 0.15 {
		t.Errorf("the factor of the second blower is %.2f, of the first %.2f: its meter reads double", spare, first)
	}
	d.key(withBlower("first", 600)).wait(time.Minute) // the one without a name is not to be had by name
	if other := d.fresh(d.now); other.Intervals != 0 {
		t.Errorf("%d intervals of others count for a third", other.Intervals)
	}
	d.key(withBlower("spare", 1200)).wait(time.Minute)
	if back := d.fresh(d.now); back.Intervals < 3 {
		t.Errorf("%d intervals of the second blower when it is back", back.Intervals)
	}
}
