package compare

import (
	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/model/pace"
)

// DayOf is the day of a smelt by its entries.
func DayOf(id string, entries []entry.Entry) Day {
	s := fold.Fold(entries, fold.All, fold.Latest(entries))
	d := Day{ID: id}
	if len(s.Charges) == 0 {
		return d
	}
	first := s.Charges[0].At
	for _, c := range s.Charges {
		if c.Ore.Charged.Kg > 0 {
			first = c.At
			break
		}
	}
	usual := s.Pace.Usual().Minutes()
	slow := map[float64]bool{}
	for _, i := range s.Pace.Whole() {
		if usual > 0 && !i.Double && i.Burning().Minutes() > pace.SlowShare*usual {
			slow[(i.To - first).Minutes()] = true
		}
	}
	for i, c := range s.Charges {
		b := Bar{At: (c.At - first).Minutes(), Ore: c.Ore.Charged.Kg}
		if i > 0 {
			b.Minutes = (c.At - s.Charges[i-1].At).Minutes()
		}
		b.Slow = slow[b.At]
		d.Charges = append(d.Charges, b)
	}
	for _, t := range s.Turns {
		switch t.Phase {
		case entry.BurnsDown:
			d.BurnDown = entry.Some((t.At - first).Minutes())
		case entry.Extracted:
			d.Pull = entry.Some((t.At - first).Minutes())
		}
	}
	return d
}
