package plan

import (
	"math"
	"sort"

	"chargehand/model/learn"
	"chargehand/physics"
)

// What the sums of yields are reckoned on: steps of the yield in kg per kg of ore,
// and how many equally likely values stand for what smelts on one mix share and
// for what forging leaves.
const (
	step   = 0.0025
	shared = 32
	worked = 9
)

// MostSmelts is how many smelts a plan offers at most.
const MostSmelts = 3

// LeastOre and MostOre bound what is advised for one smelt, kg: published smelts of
// less than 9 kg hardly ever gave a bloom, and none of those that the yields are
// known from went far beyond 60 (testdata/smelts).
const (
	LeastOre = 9
	MostOre  = 60
)

// Odds are the chances of so many kg of what is wanted per kg of ore, of one smelt
// and of several together.
type Odds struct {
	none float64
	at   [MostSmelts][]float64 // chance of at least i x step, per kg of the ore of one smelt
}

// Grounds are what the odds rest on.
type Grounds struct {
	Yield physics.Band // bloom per kg of ore dry, of smelts that give one
	Own   int          // own smelts on the same mix behind it
	None  float64      // chance of no compact bloom, of each smelt
	Most  float64      // kg of bloom that a kg of this ore can give at most; 0 when its assay does not say
	Left  physics.Band // what is left of the bloom in what is wanted, as a share; Exact(1) for a bloom
}

// OddsOf reckons the odds. Smelts on one mix are alike: of the variance of their
// yields they share 1/(w + n + 1), n own smelts and the prior's weight w being
// known of the mix (the same sum as that of [learn.Yield]). Whether one gives a
// bloom is taken as independent of the others.
func OddsOf(g Grounds) Odds {
	o := Odds{none: min(1, max(0, g.None))}
	rho := 1 / (learn.PriorWeight + float64(g.Own) + 1)
	var sums [MostSmelts][]float64 // probability of i x step of bloom per kg of ore
	for k := range shared {
		c := math.Sqrt(rho) * normalQuantile((float64(k)+0.5)/shared)
		one := o.yields(g, c, math.Sqrt(1-rho))
		sum := one
		for n := range MostSmelts {
			if n > 0 {
				sum = convolved(sum, one)
			}
			if sums[n] == nil {
				sums[n] = make([]float64, len(sum))
			}
			for i, p := range sum {
				sums[n][i] += p / shared
			}
		}
	}
	for n, p := range sums {
		o.at[n] = worn(reached(p), g.Left)
	}
	return o
}

// yields are the probabilities of the yields of one smelt, given what it shares with
// the others: nothing, and i steps.
func (o Odds) yields(g Grounds, common, own float64) []float64 {
	low, high := (g.Yield.P50-g.Yield.P10)/physics.Z90, (g.Yield.P90-g.Yield.P50)/physics.Z90
	n := int(math.Ceil((g.Yield.P50+4*high)/step)) + 1
	if g.Most > 0 {
		n = min(n, int(g.Most/step)+1)
	}
	p := make([]float64, n+1)
	below := func(y float64) float64 { // the chance of less, of a bloom
		z := (y - g.Yield.P50) / low
		if y > g.Yield.P50 {
			z = (y - g.Yield.P50) / high
		}
		return normalCDF((z - common) / own)
	}
	was := below(step / 2)
	p[0] = o.none + (1-o.none)*was
	for i := 1; i < n; i++ {
		is := below((float64(i) + 0.5) * step)
		p[i] = (1 - o.none) * (is - was)
		was = is
	}
	p[n] = (1 - o.none) * (1 - was)
	return p
}

func convolved(a, b []float64) []float64 {
	c := make([]float64, len(a)+len(b)-1)
	for i, x := range a {
		for j, y := range b {
			c[i+j] += x * y
		}
	}
	return c
}

// reached turns probabilities into the chances of at least as much.
func reached(p []float64) []float64 {
	r := make([]float64, len(p)+1)
	for i := len(p) - 1; i >= 0; i-- {
		r[i] = min(1, r[i+1]+p[i])
	}
	return r
}

// worn are the chances of what is left after forging, whose share is the same of
// all blooms.
func worn(r []float64, left physics.Band) []float64 {
	if left.RelSD() == 0 && left.P50 == 1 {
		return r
	}
	w := make([]float64, len(r))
	for k := range worked {
		share := left.P50 * math.Exp(left.RelSD()*normalQuantile((float64(k)+0.5)/worked))
		for i := range w {
			w[i] += at(r, float64(i)/share) / worked
		}
	}
	return w
}

// at reads a row of chances between its steps.
func at(r []float64, steps float64) float64 {
	i := int(steps)
	if i+1 >= len(r) {
		return 0
	}
	f := steps - float64(i)
	return (1-f)*r[i] + f*r[i+1]
}

// Chance is that of at least so many kg in all, of smelts of so much ore each.
func (o Odds) Chance(smelts int, wanted, ore float64) float64 {
	if !(ore > 0) || smelts < 1 || smelts > MostSmelts {
		return 0
	}
	if !(wanted > 0) {
		return o.OfABloom(smelts)
	}
	return min(o.OfABloom(smelts), at(o.at[smelts-1], wanted/ore/step))
}

// OfABloom is the chance that one of the smelts gives a bloom at all, which no
// amount of ore raises.
func (o Odds) OfABloom(smelts int) float64 { return 1 - math.Pow(o.none, float64(smelts)) }

// Ore is how much each of the smelts takes for a chance of so many kg in all: not
// less than is advised, and none where the most that is known of does not give it.
func (o Odds) Ore(smelts int, wanted, sure float64) (kg float64, ok bool) {
	if o.Chance(smelts, wanted, LeastOre) >= sure {
		return LeastOre, true
	}
	if o.Chance(smelts, wanted, MostOre) < sure {
		return 0, false
	}
	const tenths = (MostOre - LeastOre) * 10
	i := sort.Search(tenths, func(i int) bool { return o.Chance(smelts, wanted, LeastOre+float64(i)/10) >= sure })
	return LeastOre + float64(i)/10, true
}

// normalQuantile is the inverse of the normal distribution function.
func normalQuantile(p float64) float64 { return math.Sqrt2 * math.Erfinv(2*p-1) }

// normalCDF is the normal distribution function.
func normalCDF(z float64) float64 { return math.Erfc(-z/math.Sqrt2) / 2 }
