package solve_test

import (
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/model/solve"
)

// Any charcoal lights at any blast and goes on burning, the damp and the large
// too, if badly: a crew would not let it go out.
func TestAnyCharcoalLights(t *testing.T) {
	for _, water := range []float64{0.06, 0.12, 0.20} {
		for _, lump := range []float64{12, 17, 30} {
			for _, perArea := range []float64{0.15, 0.3, 1.2} {
				d := newDay(norse)
				l := d.entries[0].Event.(entry.Light)
				l.Lots = []entry.Lot{{Name: "damp", What: entry.Charcoal, Moisture: entry.Some(entry.Share(water)), Lump: entry.Some(entry.Millimetre(lump))}}
				d.entries[0].Event = l
				of := func(n float64) entry.Part { p := buckets(n); p.Lot = "damp"; return p }
				const boreArea = 490.9 // cm2
				d.key(entry.Fill{Parts: entry.Parts{of(3)}}).key(blast(perArea * boreArea)).wait(10 * time.Minute)
				for range 10 {
					d.key(charge(of(1))).wait(time.Duration(float64(14*time.Minute) / perArea))
				}
				s := d.fresh(d.now - 5*time.Minute)
				if c := celsius(s.Hearth.Temperature); s.Status != solve.Computes || s.Astray || c < 750 {
					t.Errorf("%g mm with %.0f %% water at %.2f l/min per cm2: lack %d, astray %v, hearth %.0f C", lump, 100*water, perArea, s.Status, s.Astray, c)
				}
			}
		}
	}
}

// What the solver waits for is what is missing: the blast where nobody keyed it, that it blows where it
// is off, and its first step where it has just begun.
func TestWhatTheSolverWaitsFor(t *testing.T) {
	status := func(d *day, want solve.Status) {
		t.Helper()
		if got := d.fresh(d.now).Status; got != want {
			t.Errorf("at %v the status is %d, want %d", d.now, got, want)
		}
	}
	d := newDay(norse)
	status(d, solve.NoFire)
	d.key(blast(600)).wait(time.Minute)
	status(d, solve.NoFire)
	d.key(entry.Fill{Parts: entry.Parts{buckets(3)}}).wait(time.Second)
	status(d, solve.Begins)
	d.wait(2 * solve.Grid)
	status(d, solve.Computes)

	d = newDay(norse).key(entry.Fill{Parts: entry.Parts{buckets(3)}}).wait(time.Minute)
	status(d, solve.NoAir)
	d.key(blast(0)).wait(time.Minute)
	status(d, solve.NoBlast)
	d.key(blast(600)).wait(time.Second)
	status(d, solve.Begins)
}
