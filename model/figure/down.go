package figure

import (
	"math"

	"chargehand/model/fold"
	"chargehand/model/solve"
	"chargehand/physics"
)

// The ore comes down at a height of its own above the tuyere, which stays where it is while the burden sinks to it. What the
// named numbers of the solver do over their ranges to the ore in the burden comes to that height being so much higher or
// lower, in m (TestReportOreStillInTheBurden of physics/shaft); a smelt of ore that runs late has as much more in the burden. On a
// day on which nothing keeps step it does not stay there: then it is that by the root of how uneven the smelt is (fitted here, on
// made-up furnaces 1001 to 1020 of both truths with double of their noise).
const frontHigher, frontLower = 0.08, 0.15

// comeDown is how much of the ore's iron has come down, per cent, where the solver has so many kg of it still in the burden. That
// burden is the solver's own: between charges it burns as the last charges did and knows of no dip. Where the level is believed
// to be another one, more or less has burned, and with it ore has come down.
func (r *Reading) comeDown(s solve.Solution, still float64) physics.Band {
	all := s.Totals.OreIron
	come := func(still float64) float64 { return 100 * max(0, min(1, 1-still/all)) }
	perM := r.orePerMetre() * all
	stack := r.Figures[StackHeight]
	uneven := math.Sqrt(max(1, r.Uneven))
	less, more := frontHigher*uneven, frontLower*uneven
	if stack.Known() {
		still = min(all, max(0, still+perM*(stack.P50/100-s.Height)))
		less, more = math.Hypot(less, (stack.P50-stack.P10)/100), math.Hypot(more, (stack.P90-stack.P50)/100)
	}
	return physics.Band{P10: come(still + perM*more), P50: come(still), P90: come(still - perM*less)}
}

// orePerMetre is the share of all ore so far that a metre of the burden of the last charges with ore holds.
func (r *Reading) orePerMetre() float64 {
	const last = 3
	bore, ok := fold.ShaftBore(r.Light.Furnace)
	all := r.Figures[OreCharged]
	if !ok || !all.Known() || all.P50 <= 0 {
		return 0
	}
	kg, volume := 0.0, 0.0
	for i, n := len(r.Charges)-1, 0; i >= 0 && n < last; i-- {
		c := r.Charges[i]
		if !c.Ore.Known() || c.Ore.P50 <= 0 || !c.Charcoal.Known() {
			continue
		}
		if v, err := physics.DefaultBed().Volume(c.Charcoal.P50, c.Ore.P50); err == nil {
			kg, volume, n = kg+c.Ore.P50, volume+v, n+1
		}
	}
	if volume <= 0 {
		return 0
	}
	return kg / all.P50 * bore.Area(bore.Height/2) / volume
}
