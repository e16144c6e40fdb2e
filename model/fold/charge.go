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

// charge takes a charge in and joins the ore to its charcoal. Ore belongs to the
// last charcoal before it, or by the furnace's own habit to the next; ore before any
// charcoal joins the first.
func (c *Timeline) charge(l Line, ev entry.Charge) {
	scale := c.about.scale
	ch := Charge{Seq: l.Seq(), At: l.At, Parts: ev.Parts, Remark: l.Remark}
	ch.Charcoal.Charged, ch.Charcoal.Dry = scale.sum(ev.Parts, entry.Charcoal, l.At)
	ch.Ore.Charged, ch.Ore.Dry = scale.sum(ev.Parts, entry.Ore, l.At)
	ch.Measures, _ = ev.Parts.Count(entry.Charcoal)
	ch.HasOre = ch.Ore.Charged.Kg > 0 || ch.Ore.Charged.Unknown
	switch n := len(c.Charges); {
	case ev.Parts.Holds(entry.Charcoal):
		ch.Number = n + 1
		ch.Double = c.isDouble(ch)
		if c.topsUp(ch) {
			c.Pace.TopUp(l.At)
		} else {
			c.Pace.Charge(l.At, ch.Double)
		}
		c.charges.Append(ch.with(c.waiting))
		c.Charges = c.charges.All()
		c.waiting = Charge{}
		c.done++
	case c.Light.Furnace.OreUnder || n == 0:
		c.waiting = c.waiting.with(ch)
	default:
		if n <= c.shared { // a copy holds it too
			c.charges, c.shared = c.charges.Cut(n-1), 0
			c.charges.Append(c.Charges[n-1])
			c.Charges = c.charges.All()
		}
		c.Charges[n-1] = c.Charges[n-1].with(ch)
	}
}

// with joins the ore and whatever else of another entry to this charge. Its
// charcoal, if it holds any of unknown mass, is counted in the totals alone.
func (c Charge) with(o Charge) Charge {
	c.Ore = c.Ore.plus(o.Ore)
	c.HasOre = c.HasOre || o.HasOre
	c.Parts = append(slices.Clone(c.Parts), o.Parts...)
	return c
}

// fewestForUsual is how many charges there have to be before their interval is
// called usual.
const fewestForUsual = 3

// isDouble tells whether a charge as large as the one before follows it within
// a quarter of the usual interval.
func (s *State) isDouble(c Charge) bool {
	if len(s.Charges) < fewestForUsual {
		return false
	}
	last := s.Charges[len(s.Charges)-1]
	full := c.Measures >= last.Measures && (c.Charcoal.Charged.Unknown || c.Charcoal.Charged.Kg >= last.Charcoal.Charged.Kg*0.99)
	return full && c.At-last.At < s.Pace.Usual()/4
}
