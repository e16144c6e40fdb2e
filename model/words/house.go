package words

import (
	"chargehand/model/entry"
	"chargehand/model/house"
)

// Left is what is left of a lot, as it weighs and dry: "31 kg (29 kg dry)", "at
// least 5 kg (5 kg dry)". One below nothing says so instead.
func (u Units) Left(l house.Lot) string {
	if kg, short := l.Short(); short {
		return u.LotShort(l.Weight(kg))
	}
	m := l.Left
	switch {
	case m.More && m.Less:
		return "not known: count it"
	case m.More:
		return "at least " + u.bothWays(l, max(m.Kg, 0))
	case m.Less:
		return "at most " + u.bothWays(l, max(m.Kg, 0))
	}
	return u.bothWays(l, max(m.Kg, 0))
}

func (u Units) bothWays(l house.Lot, dry float64) string {
	return u.Kg(entry.Kilogram(l.Weight(dry))) + " (" + u.Kg(entry.Kilogram(dry)) + " dry)"
}

// LotShort is by how much more of a lot was used than there was.
func (u Units) LotShort(kg float64) string {
	return u.Kg(entry.Kilogram(kg)) + " more used than there was: count it again, or an entry is wrong"
}
