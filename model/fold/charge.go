package fold

import (
	"slices"
	"time"

	"chargehand/model/entry"
)

// Charge is one charge as it counts: an entry that held charcoal, and the ore
// that belongs to it.
type Charge struct {
	Number   int
	Seq      uint64
	At       time.Duration
	Parts    entry.Parts // of all its entries, in order
	Measures entry.Count // of charcoal, as counted
	Charcoal Total
	Ore      Total
	HasOre   bool // any ore entry belongs to it, of known mass or not
	Remark   entry.LevelRemark
	Double   bool // a second full charge within a quarter of the usual interval
}

// charges joins the ore to its charcoal. Ore belongs to the last charcoal
// before it, or by the furnace's own habit to the next; ore before any charcoal
// joins the first.
func charges(lines []Line, scale scales, remarks map[uint64]entry.LevelRemark, oreUnder bool) []Charge {
	var cs []Charge
	var waiting Charge // what was charged before the charcoal it belongs to
	for _, l := range lines {
		ev, ok := l.Event.(entry.Charge)
		if !ok {
			continue
		}
		c := Charge{Seq: l.Seq(), At: l.At, Parts: ev.Parts, Remark: remarks[l.Seq()]}
		c.Charcoal.Charged, c.Charcoal.Dry = scale.sum(ev.Parts, entry.Charcoal, l.At)
		c.Ore.Charged, c.Ore.Dry = scale.sum(ev.Parts, entry.Ore, l.At)
		c.Measures, _ = ev.Parts.Count(entry.Charcoal)
		c.HasOre = c.Ore.Charged.Kg > 0 || c.Ore.Charged.Unknown
		switch {
		case ev.Parts.Holds(entry.Charcoal):
			c.Number = len(cs) + 1
			c.Double = isDouble(cs, c)
			cs = append(cs, c.with(waiting))
			waiting = Charge{}
		case oreUnder || len(cs) == 0:
			waiting = waiting.with(c)
		default:
			cs[len(cs)-1] = cs[len(cs)-1].with(c)
		}
	}
	return cs
}

// with joins the ore and whatever else of another entry to this charge. Its
// charcoal, if it holds any of unknown mass, is counted in the totals alone.
func (c Charge) with(o Charge) Charge {
	c.Ore = c.Ore.plus(o.Ore)
	c.HasOre = c.HasOre || o.HasOre
	c.Parts = append(slices.Clone(c.Parts), o.Parts...)
	return c
}

// Usual is this smelt's usual interval: the median of its own so far, doubled
// charges left out; 0 before the second charge.
func Usual(cs []Charge) time.Duration {
	var is []time.Duration
	for i := 1; i < len(cs); i++ {
		if !cs[i].Double {
			is = append(is, cs[i].At-cs[i-1].At)
		}
	}
	if len(is) == 0 {
		return 0
	}
	slices.Sort(is)
	return (is[(len(is)-1)/2] + is[len(is)/2]) / 2
}

// fewestForUsual is how many charges there have to be before their interval is
// called usual.
const fewestForUsual = 3

// isDouble tells whether a charge as large as the one before follows it within
// a quarter of the usual interval.
func isDouble(cs []Charge, c Charge) bool {
	if len(cs) < fewestForUsual {
		return false
	}
	last, usual := cs[len(cs)-1], Usual(cs)
	full := c.Measures >= last.Measures && (c.Charcoal.Charged.Unknown || c.Charcoal.Charged.Kg >= last.Charcoal.Charged.Kg*0.99)
	return full && c.At-last.At < usual/4
}

// remarksOf gives each charge's remark about the level. It counts whenever it
// was made.
func remarksOf(lines []Line) map[uint64]entry.LevelRemark {
	remarks := map[uint64]entry.LevelRemark{}
	for _, l := range lines {
		if ev, ok := l.Event.(entry.Level); ok {
			remarks[ev.Charge.Seq] = ev.Remark
		}
	}
	return remarks
}
