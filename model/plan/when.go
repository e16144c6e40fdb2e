package plan

import (
	"cmp"
	"math"
	"slices"
	"time"

	"chargehand/model/entry"
	"chargehand/model/house"
	"chargehand/physics"
)

// Errand is something to be done before the day.
type Errand string

// What is to be done before the day.
const (
	BuildIt     Errand = "build the furnace"
	DigOre      Errand = "dig ore"
	BurnForIt   Errand = "burn charcoal"
	RoastOre    Errand = "roast ore"
	DryIt       Errand = "small fires"
	BreakAll    Errand = "break and sieve"
	TestBlower  Errand = "bag test"
	WeighBucket Errand = "weigh a bucket"
)

// Due is an errand with the last day on which it may be done.
type Due struct {
	Errand Errand
	Before int          // days before the smelt
	Times  int          // how many burns; else 0
	Kg     float64      // dry, of ore or charcoal; else 0
	Hours  physics.Band // that it takes, zero for not known
}

// How many days before the smelt an errand has to be done: clay takes some days of air and
// then small fires; ore that is dug has to be dried and roasted; fresh charcoal can light
// again and lies a day or two outdoors, shut (all common practice).
var daysBefore = map[Errand]int{BuildIt: 6, DigOre: 4, BurnForIt: 3, RoastOre: 3, DryIt: 2, BreakAll: 1, TestBlower: 1, WeighBucket: 1}

// aBurn is what a charcoal burn gives where no own burn was weighed, kg, and how long one
// takes until it is shut, h (assumed: a steel drum of 200 l).
var (
	aBurn      = 15.0
	hoursABurn = physics.Band{P10: 4, P50: 6, P90: 10}
)

// hoursBreaking are those of breaking and sieving charcoal and ore for a smelt, the day
// before (assumed).
var hoursBreaking = physics.Band{P10: 3, P50: 5, P90: 8}

// mostDue is how many lines there are at most.
const mostDue = 5

// ByWhen is what is still to be done before the smelt, the earliest first, so far as it was
// keyed: no more than five lines.
func (p Plan) ByWhen(h house.State, f *house.Furnace) []Due {
	var all []Due
	add := func(e Errand, times int, kg float64, hours physics.Band) {
		all = append(all, Due{e, daysBefore[e], times, kg, hours})
	}
	if f == nil {
		add(BuildIt, 0, 0, physics.Band{})
	}
	fires := 0.0
	if f != nil {
		for _, d := range f.Dryings {
			fires += float64(d.Fires.Value)
		}
	}
	if fires == 0 {
		add(DryIt, 0, 0, physics.Band{})
	}
	for _, s := range p.TooShort {
		switch by := s.Take - s.Left; s.Need {
		case NeedOreRoasted:
			if dig := by/RoastedOfRaw.P50 - p.Left[NeedOreRaw]; dig > 0 {
				add(DigOre, 0, dig, physics.Band{})
			}
			add(RoastOre, 0, by/RoastedOfRaw.P50, physics.Band{})
		case NeedCharcoal:
			burns := math.Ceil(by / burnOf(h))
			add(BurnForIt, int(burns), by, hoursABurn.Scale(burns))
		}
	}
	if l, ok := MostOf(h, entry.LotOre); ok && !l.Roasted() && l.Left.Known() && !slices.ContainsFunc(all, func(d Due) bool { return d.Errand == RoastOre }) {
		add(RoastOre, 0, l.Left.Kg, physics.Band{})
	}
	add(BreakAll, 0, 0, hoursBreaking)
	if p.Blast.IsZero() {
		add(TestBlower, 0, 0, physics.Band{})
	}
	if m, ok := MeasureFor(h, entry.Charcoal); !ok || !m.Mass.Known {
		add(WeighBucket, 0, 0, physics.Band{})
	}
	slices.SortStableFunc(all, func(a, b Due) int { return cmp.Compare(b.Before, a.Before) })
	return all[:min(len(all), mostDue)]
}

// burnOf is what a burn of this house gives, kg dry: the mean of those that were weighed.
func burnOf(h house.State) float64 {
	sum, n := 0.0, 0.0
	for _, l := range h.Lots {
		for _, c := range l.Changes {
			if l.Of() == entry.LotCharcoal && c.Does == entry.Burnt && !c.Took && c.Dry.Known() && c.Dry.Kg > 0 {
				sum, n = sum+c.Dry.Kg, n+1
			}
		}
	}
	if n == 0 {
		return aBurn
	}
	return sum / n
}

// CeilingOf is what bounds the ore of one smelt.
type CeilingOf string

// What bounds it.
const (
	ByTheDay  CeilingOf = "day"  // the hours until the bloom is to be out
	BySlag    CeilingOf = "slag" // the room under the tuyere
	ByPrint   CeilingOf = "most" // the most that the odds are known of
	ByTheCrew CeilingOf = "crew" // a first smelt: less is advised
)

// Ceiling is the most ore of one smelt, kg dry, that something allows.
type Ceiling struct {
	Of  CeilingOf
	Ore float64
}

// FirstMost is the most ore that is advised for a first smelt, kg (common practice: 15 to
// 25, never under [LeastOre]).
const FirstMost = 25

// slagLitre is kg of slag in a litre as it lies in a bowl, with its pores (from memory;
// fayalite itself weighs 4.3).
const slagLitre = 3.0

// Ceilings are what the day, the slag's room and the crew allow, the lowest first.
func (p Plan) Ceilings() []Ceiling {
	w, ok := p.Usual()
	if !ok {
		return nil
	}
	all := []Ceiling{{ByPrint, MostOre}}
	if p.Smelts == 0 {
		all = append(all, Ceiling{ByTheCrew, FirstMost})
	}
	if p.Until > 0 {
		most := 0.0
		for ore := 1.0; ore <= MostOre; ore++ {
			way := chargings(ore, p.Seed.Value, p.Shaft.Fill(), p.Bucket, p.Pace.P50, p.Rises)[usualWay]
			if p.Hours(way).P50 <= p.Until.Hours() {
				most = ore
			}
		}
		all = append(all, Ceiling{ByTheDay, most})
	}
	if p.Furnace.Practice != entry.SlagTap && p.Furnace.Practice != entry.SlagRunning && p.Furnace.Practice != entry.SlagPit {
		if slag := p.Slag(w, Foreseen{}).Of.Sum() / w.Ore; slag > 0 {
			all = append(all, Ceiling{BySlag, math.Floor(p.Shaft.Below * slagLitre / slag)})
		}
	}
	slices.SortStableFunc(all, func(a, b Ceiling) int { return cmp.Compare(a.Ore, b.Ore) })
	return all
}

// Begins is a time of day from midnight; 8 o'clock where none is said.
func Begins(day string) time.Duration {
	t, err := time.Parse("15:04", day)
	if err != nil {
		return 8 * time.Hour
	}
	return time.Duration(t.Hour())*time.Hour + time.Duration(t.Minute())*time.Minute
}

// Clock is a time of day from midnight, as it is kept.
func Clock(at time.Duration) string {
	return time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC).Add(at).Format("15:04")
}
