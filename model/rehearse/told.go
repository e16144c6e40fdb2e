package rehearse

import (
	"math"
	"strings"

	"chargehand/model/entry"
)

// What a crew keys between two moments, as numbers that two days can be held against each other by: each kind with the values in
// the order in which they were keyed.
type observed map[string][]float64

// strays is how far two of one kind lie apart by luck alone at the least, as a standard deviation: a look is told a shade wrong one
// time in fifteen or so (the made-up furnaces' own chance), intervals of a steady smelt stray by 0.16 of the logarithm (the
// published logs), two fillings of a bucket by a twelfth (Markewitz 2013, 5 to 15 %), and a burden is dipped anywhere between a
// bucket's room and none, 4 cm for a usual bucket in a usual shaft (reckoned: 14 cm over the root of twelve).
var strays = map[string]float64{"interval": 0.16, "weighed": 0.08, "dip": 4}

const looksStray = 0.26 // the root of a fifteenth

// tells is how many standard deviations the means of one kind lie apart on two days that somebody who compared them would call
// different: one in twenty does by luck, of some eight kinds.
const tells = 1.96

// worth is what a look is worth, the best highest; what is not here is the worst.
var worth = map[entry.LookAt]map[string]float64{
	entry.AtPeep:  {entry.PeepDrops: 3, entry.PeepWhite: 3, entry.PeepYellow: 2, entry.PeepOrange: 1},
	entry.AtSound: {entry.SoundSteady: 1}, entry.AtSlag: {entry.SlagRuns: 1}, entry.AtFlame: {entry.FlameYellow: 1}, entry.AtTopGas: {entry.TopGasAlight: 1},
}

// observes takes what was keyed from one second to another one.
func (c *crew) observes(from, to float64) observed {
	o := observed{}
	put := func(kind string, v float64) { o[kind] = append(o[kind], v) }
	charged := 0.0
	for _, e := range c.entries {
		at := SecondsOf(e)
		_, charges := e.Event.(entry.Charge)
		if at >= from && at <= to {
			switch ev := e.Event.(type) {
			case entry.Look:
				put("look "+string(ev.At), worth[ev.At][ev.Sees])
			case entry.Dip:
				put("dip", float64(ev.BelowRim.Value))
			case entry.Weigh:
				put("weighed", math.Log(float64(ev.Mass)))
			case entry.Rod, entry.Tap, entry.Poke:
				put(seenTo+string(e.Kind()), 1)
			case entry.Charge:
				if charged > 0 && at-charged > 2*60 {
					put("interval", math.Log((at-charged)/60))
				}
			}
		}
		if charges {
			charged = at
		}
	}
	return o
}

// seenTo begins the kinds that are something done about the fire.
const seenTo = "seen to "

// apart tells whether anything that was keyed on a day tells it from another one.
func (o observed) apart(other observed) bool {
	for kind, is := range o {
		if differ(kind, is, other[kind]) {
			return true
		}
	}
	for kind, was := range other {
		if len(o[kind]) == 0 && differ(kind, nil, was) {
			return true
		}
	}
	return false
}

func differ(kind string, a, b []float64) bool {
	n, m := float64(len(a)), float64(len(b))
	if strings.HasPrefix(kind, seenTo) { // how often is what tells
		return math.Abs(n-m) > tells*math.Sqrt(n+m)
	}
	if n == 0 || m == 0 {
		return false
	}
	least, known := strays[kind]
	if !known {
		least = looksStray
	}
	meanA, squaresA := spread(a)
	meanB, squaresB := spread(b)
	variance := least * least
	if n+m > 2 {
		variance = max(variance, (squaresA+squaresB)/(n+m-2))
	}
	return math.Abs(meanA-meanB) > tells*math.Sqrt(variance*(1/n+1/m))
}

// spread is the mean, and the sum of the squares about it.
func spread(vs []float64) (mean, squares float64) {
	for _, v := range vs {
		mean += v / float64(len(vs))
	}
	for _, v := range vs {
		squares += (v - mean) * (v - mean)
	}
	return mean, squares
}

// untold tells whether nothing that was keyed from the beginning of a mishap to its harm tells the day from the same day without
// it: no reading of it could have warned. What comes after the last charge of either day is not held against the other.
func (c *crew) untold(calm *crew, b Befallen) bool {
	from, to := b.At.Seconds(), b.HarmAt.Seconds()
	for _, d := range []*crew{c, calm} {
		if d.burning > 0 {
			to = min(to, d.burning)
		}
	}
	return !c.observes(from, to).apart(calm.observes(from, to))
}
