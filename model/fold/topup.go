package fold

import (
	"math"
	"time"

	"chargehand/model/entry"
	"chargehand/physics"
)

const (
	// farMore is how many times the most that the blast can burn tells that charcoal
	// went on top of what was there, and not in place of what had burned: no meter of a
	// published log reads that far low (log 03 burned 1.15 times what its meter allows).
	farMore = 1.5
	// usualAir in l/min per cm2 of bore stands in for a blast that nobody metered: the
	// upper end of the usual rule, 1.2 to 1.5 (Markewitz 2015, Icelandic 6).
	usualAir = 1.5
)

// topsUp tells whether charcoal brings a new fill to the mark: before any ore, and
// before any interval between charges counts, far more goes in than can have burned
// since the charge before. It is no interval, and says nothing of the pace.
func (c *Timeline) topsUp(ch Charge) bool {
	n := len(c.Charges)
	if n == 0 || c.Ore.Charged.Kg > 0 || c.Ore.Charged.Unknown || c.Pace.Usual() > 0 || ch.Charcoal.Dry.Unknown {
		return false
	}
	most, known := c.mostBurned(c.Charges[n-1].At, ch.At)
	return known && ch.Charcoal.Dry.Kg > farMore*most
}

// mostBurned is how much dry charcoal can have burned between two moments, kg, and
// whether anything is known of the blast.
func (c *Timeline) mostBurned(from, to time.Duration) (kg float64, known bool) {
	litres, known := c.Blown(from, to)
	if bore := c.Light.Furnace.Bore; !known && bore.Positive() {
		cm := float64(bore.Value)
		litres, known = usualAir*math.Pi/4*cm*cm*(to-from-c.Unblown(from, to)).Minutes(), true
	}
	s := (to - from).Seconds()
	if !known || s <= 0 {
		return 0, false
	}
	flow, err := c.air.Flow(physics.FromLitresPerMinute(litres / (s / 60)))
	if err != nil {
		return 0, false
	}
	return physics.DefaultCharcoal().DryMassForCarbon(flow.MostCarbon()) * s, true
}

// Unfilled tells whether neither a fill nor a charge was ever keyed: the first charge
// would go into an empty shaft, which is asked about.
func (s State) Unfilled() bool {
	if len(s.Charges) > 0 {
		return false
	}
	for l := range s.Lines.All() {
		if _, ok := l.Event.(entry.Fill); ok {
			return false
		}
	}
	return true
}
