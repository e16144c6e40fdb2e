package shaft

import (
	"math"

	"chargehand/physics"
)

// Protected tells whether the slag keeps the iron soft: it has free iron oxide left.
func (h Hearth) Protected() bool { return h.Slag.ReducibleIronIndex() <= 1 }

// BloomCarbon gives the carbon of the iron in the hearth as a mass share with its band.
//
// The middle is what the shaft carried: part of the way to the balance with the gas where iron last lay bare in it, less what
// slag burned out since. That is a low estimate by its nature. Iron that lies in glowing charcoal below the blast, with
// little slag and little FeO round it, goes on taking carbon up to cast iron, and a 1-D shaft cannot say how long a bloom lay
// where. Published blooms of one kind of furnace run from none to 0.8 % and beyond, so the band reaches from nothing to
// graphite-saturated austenite at the hearth's temperature times the share of time not protected by slag: slag at or above
// its ratio of two FeO to a silica keeps carbon low (Sauder, quoted 2006), a slag poor in iron lets it rise.
func (h Hearth) BloomCarbon() physics.Band {
	if !(h.Iron > 0) {
		return physics.Band{}
	}
	middle := h.Carbon / (h.Iron + h.Carbon)
	protected := 0.0
	if index := h.Slag.ReducibleIronIndex(); index > 0 && !math.IsInf(index, 0) {
		protected = min(1, 1/(index*index))
	}
	const austeniteLow, austeniteHigh = physics.ZeroCelsius + 738, physics.ZeroCelsius + 1153
	most := physics.AusteniteCarbon(min(austeniteHigh, max(austeniteLow, h.Temperature)), 1)
	high := middle + (most-middle)*(0.15+0.85*(1-protected)) // 0.15: edges of a bloom are always nearer the charcoal (guess)
	return physics.Band{P10: min(middle, 0.0002), P50: middle + (high-middle)*0.1, P90: high}
}
