package fold

import "chargehand/model/entry"

// Material is all that went in of one material of one lot.
type Material struct {
	What entry.What
	Lot  entry.Lot // in force; with nothing but its name when it was never described
	Total
}

// Materials gives what went into the furnace, by material and lot in the order
// in which each first came. What names no lot is of the only one of its
// material, if there is only one.
func (c *Timeline) Materials() []Material {
	type of struct {
		what entry.What
		lot  entry.UID
	}
	var all []Material
	place := map[of]int{}
	for l := range c.Lines.All() {
		for _, p := range entry.PartsIn(l.Event) {
			if p.None() {
				continue
			}
			lot := c.about.scale.lotOf(p)
			if p.Lot == "" {
				p.Lot = lot.Name
			}
			i, ok := place[of{p.What, lot.ID()}]
			if !ok {
				i = len(all)
				place[of{p.What, lot.ID()}] = i
				all = append(all, Material{What: p.What, Lot: lot})
			}
			charged, dry := c.about.scale.part(p, l.At)
			all[i].Total = all[i].Total.plus(Total{charged, dry})
		}
	}
	return all
}

// lotOf is the lot that a part is of.
func (s scales) lotOf(p entry.Part) entry.Lot {
	if l, ok := s.lots[p.Lot]; ok || p.Lot != "" {
		if !ok {
			l = entry.Lot{Name: p.Lot, What: p.What}
		}
		return l
	}
	var only entry.Lot
	for _, l := range s.lots {
		if l.What != p.What {
			continue
		}
		if only.Name != "" && only.ID() != l.ID() {
			return entry.Lot{What: p.What}
		}
		only = l
	}
	only.What = p.What
	return only
}
