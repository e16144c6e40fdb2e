package solve_test

import (
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/physics"
)

// A charge that is waited for and does not come says that less burns than the blast keyed would: the solver's hearth cools, by
// as much less air, and is known less well. In a burn-down and in a pause nobody waits, and it goes on as before.
func TestACharcoalThatIsNotChargedIsNotBurned(t *testing.T) {
	const charges, each = 14, 12 * time.Minute
	last := 16*time.Minute + (charges-1)*each // when the last one went in
	read := func(then entry.Event, after time.Duration) (hearth physics.Band, burned, height float64) {
		d := steady(charges, each)
		d.now = last + time.Minute
		if then != nil {
			d.key(then)
		}
		s := d.fresh(last + after)
		return s.HearthBand(), s.Totals.CarbonBurned, s.Height
	}
	_, atCharge, _ := read(nil, 2*time.Minute)
	waits, burned, stands := read(nil, 40*time.Minute)
	_, soon, _ := read(nil, 12*time.Minute)
	usual := soon - atCharge
	if more := burned - atCharge; more > 2.2*usual || more < usual {
		t.Errorf("in 40 min without a charge %.2f kg of carbon burned; in 10 min before %.2f", more, usual)
	}
	if stands < 0.15 {
		t.Errorf("the burden stands at %.2f m though nobody had room for a charge", stands)
	}
	before, _, _ := read(nil, 12*time.Minute)
	if fell := before.P50 - waits.P50; fell < 30 {
		t.Errorf("the hearth fell by %.0f K in half an hour of little air", fell)
	}
	if was, is := before.P90-before.P10, waits.P90-waits.P10; is < was+1 {
		t.Errorf("its band is %.0f K, was %.0f", is, was)
	}
	for name, ev := range map[string]entry.Event{"burn-down": entry.BurnDown{}, "pause": entry.Pause{}} {
		if _, all, _ := read(ev, 40*time.Minute); all-atCharge < 2.5*usual {
			t.Errorf("%s: %.2f kg of carbon burned in 40 min, %.2f in ten before", name, all-atCharge, usual)
		}
	}
}

// A short shaft holds little more than two charges over the tuyere: there too the solver does not burn it empty.
func TestAShortShaftIsNotBurnedEmpty(t *testing.T) {
	d := regular{50, 600, 10 * time.Minute}.day(12)
	last := d.now - 10*time.Minute
	if s := d.fresh(last + 27*time.Minute); s.Height < 0.1 {
		t.Errorf("27 min after a charge that is due in ten the shaft stands at %.2f m", s.Height)
	}
}

// What is learned of the air from an interval goes by the air that the solver took meanwhile, and not by what it began with.
func TestALateChargeTellsOfTheAir(t *testing.T) {
	d := steady(14, 12*time.Minute)
	before := d.fresh(d.now).AirFactor
	for range 8 {
		d.wait(24 * time.Minute).key(charge(buckets(1), ore(1.5))).wait(12 * time.Minute)
	}
	after := d.fresh(d.now).AirFactor
	if ratio := after.P50 / before.P50; ratio < 0.25 || ratio > 0.45 {
		t.Errorf("at a third of the pace the air factor is %.2f, was %.2f", after.P50, before.P50)
	}
}
