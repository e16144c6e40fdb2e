package plan

import (
	"math"
	"time"

	"chargehand/model/entry"
	"chargehand/model/learn"
	"chargehand/physics"
)

// What is left of a bloom on the way to what is wanted, as shares.
var (
	BilletOfBloom = learn.BilletOfBloom
	// BarOfBillet loses about a tenth (from memory, unverified).
	BarOfBillet = physics.LogNormal(0.9, 0.05)
)

// Want is what a plan is for.
type Want struct {
	What entry.PieceKind // bloom, billet or bar
	Kg   float64
	Sure float64 // the chance asked for
}

// left is what is left of the bloom in what is wanted.
func (w Want) left() physics.Band {
	switch w.What {
	case entry.Billet:
		return BilletOfBloom
	case entry.Bar:
		return BilletOfBloom.Times(BarOfBillet)
	}
	return physics.Exact(1)
}

// Ore is what is known of the ore.
type Ore struct {
	Moisture float64        // on the dry mass
	Most     float64        // kg of bloom that a kg can give at most; 0 when no assay says
	Iron     float64        // share of its dry mass; 0 when no assay says
	Assay    *physics.Assay // of it, with silica and iron; nil for none
}

// Ask is everything a plan is made of. The zero value of each part is that nothing
// is known of it.
type Ask struct {
	Want
	Furnace  entry.Furnace
	Built    bool                 // the furnace stands already
	Blast    physics.Band         // l/min
	Bucket   float64              // kg of dry charcoal in a measure; 0 for the usual
	Moisture float64              // of the charcoal, on the dry mass
	Seed     entry.Maybe[float64] // kg of iron-rich slag before the first ore; not said is none, or the usual of what there is
	Forge    entry.FuelKind       // what the forge burns; empty for not said
	Ore      Ore
	Yields   []float64 // own, on this ore mix
	Billets  []float64 // own billet per ore on this ore mix, of blooms all of which was worked
	Failures int       // own smelts without a compact bloom
	Smelts   int       // own
	Left     map[Need]float64
	Rises    map[string]Rise // how a person has the ore rise, in place of a way of that name
	Until    time.Duration   // by when the bloom is to be out, from the wood fire on; 0 for not said
}

// UsualBucket is what a bucket of charcoal holds where none was weighed, kg: 1.8 as charged
// (Markewitz 2018).
const UsualBucket = 1.8

// Plan is the answer.
type Plan struct {
	Ask
	None     physics.Band // chance of no compact bloom, of each smelt
	Yield    physics.Band // bloom per kg of ore
	Offers   []Offer      // one, two and three smelts
	Taken    int          // which of them the rest goes by: the fewest that give what is asked; -1 for none
	Needs    []Needed
	TooShort []Short
	Ways     []Charging // of one of the smelts
	Shaft    Shaft
	Pace     physics.Band // min per kg of dry charcoal
	Basis    entry.Basis  // of the pace
	odds     Odds
}

// Offer is what so many smelts take and give.
type Offer struct {
	Smelts int
	Ore    float64 // kg dry of each; 0 where no amount gives what is asked
	Chance float64 // that they give it; with no amount the most that can be had
}

// Of makes the plan. Want.Kg must be positive, Want.Sure from 0 to 1.
func Of(a Ask) Plan {
	p := Plan{Ask: a, None: learn.ChanceOfNone(a.Failures, a.Smelts), Yield: learn.Yield(a.Yields), Shaft: ShaftOf(a.Furnace), Taken: -1}
	if p.Bucket <= 0 {
		p.Bucket = UsualBucket / (1 + a.Moisture)
	}
	p.odds = OddsOf(p.grounds())
	for n := 1; n <= MostSmelts; n++ {
		o := Offer{Smelts: n}
		if ore, ok := p.odds.Ore(n, a.Kg, a.Sure); ok {
			o.Ore, o.Chance = ore, p.odds.Chance(n, a.Kg, ore)
			if p.Taken < 0 {
				p.Taken = n - 1
			}
		} else {
			o.Chance = p.odds.Chance(n, a.Kg, MostOre)
		}
		p.Offers = append(p.Offers, o)
	}
	p.Pace, p.Basis = p.Shaft.Pace(a.Blast)
	if o, ok := p.Offer(); ok {
		p.Ways = chargings(o.Ore, p.Seed.Value, p.Shaft.Fill(), p.Bucket, p.Pace.P50, p.Rises)
	}
	p.Needs = p.needs()
	p.TooShort = p.short()
	return p
}

// Of is what so much ore (kg dry) in one smelt is likely to give, where it gives a bloom at
// all, with the chance of it: for who has the ore and asks what can be made of it.
func (w Want) Of(a Ask, ore float64) Want {
	yield := learn.Yield(a.Yields)
	o := OddsOf(Grounds{Yield: yield, Own: len(a.Yields), None: learn.ChanceOfNone(a.Failures, a.Smelts).P50, Most: a.Ore.Most, Left: w.left()})
	w.Kg = math.Max(math.Round(10*ore*yield.P50*w.left().P50)/10, 0.1)
	w.Sure = o.Chance(1, w.Kg, ore)
	return w
}

// Offer is the one the rest goes by; none where no amount of ore gives what is
// asked.
func (p Plan) Offer() (Offer, bool) {
	if p.Taken < 0 {
		return Offer{}, false
	}
	return p.Offers[p.Taken], true
}

// Usual is the way to charge that needs and times are reckoned by: the middle one.
func (p Plan) Usual() (Charging, bool) {
	if len(p.Ways) != len(ramps) {
		return Charging{}, false
	}
	return p.Ways[usualWay], true
}

// WoodFire is the fire that dries and warms the furnace before the charcoal, hours:
// 1:25 to 2:30 at published smelts (logs of 2005 to 2021, Markewitz).
var WoodFire = physics.Band{P10: 1.4, P50: 1.7, P90: 2.5}

// Hours are those of one smelt, from the wood fire to the bloom.
func (p Plan) Hours(w Charging) physics.Band {
	rel := physics.LogNormal(1, math.Max(p.Pace.RelSD(), 0.1))
	return rel.Scale((w.Minutes - BurnDown) / 60).Plus(WoodFire).Plus(physics.Exact(BurnDown / 60.0))
}

// CharcoalOf is what one smelt burns by a way to charge, kg dry, with the spread of published
// smelts.
func (p Plan) CharcoalOf(w Charging) physics.Band {
	return physics.LogNormal(max(w.Charcoal, 1e-9), CharcoalOfOre.RelSD())
}

// BloomOf is what one smelt gives by a way to charge, kg, where it gives a compact bloom: no
// more than its ore can give by an assay.
func (p Plan) BloomOf(w Charging) physics.Band {
	b := p.Yield.Scale(w.Ore)
	if most := p.Ore.Most * w.Ore; most > 0 {
		b = physics.Band{P10: min(b.P10, most), P50: min(b.P50, most), P90: min(b.P90, most)}
	}
	return b
}

// ByBillet tells whether what is wanted is reckoned from own billets: raw bloom rewards
// slag.
func (a Ask) ByBillet() bool {
	return len(a.Billets) > 0 && (a.What == entry.Billet || a.What == entry.Bar)
}

// grounds of the odds.
func (p Plan) grounds() Grounds {
	g := Grounds{Yield: p.Yield, Own: len(p.Yields), None: p.None.P50, Most: p.Ore.Most, Left: p.left()}
	if p.ByBillet() {
		g.Yield, g.Own, g.Left = learn.Billet(p.Billets), len(p.Billets), physics.Exact(1)
		g.Most *= BilletOfBloom.P90
		if p.What == entry.Bar {
			g.Left = BarOfBillet
		}
	}
	return g
}
