package fold

import "chargehand/model/entry"

// Material is all that went in of one material of one lot.
type Material struct {
	What entry.What
	Lot  entry.Lot // in force; with nothing but its name when it was never described
	Total
}

// Materials gives what went into the furnace, by material and lot in the order
// in which each first came.
func (c *Course) Materials() []Material {
	var all []Material
	place := map[string]int{}
	for _, l := range c.Lines {
		for _, p := range entry.PartsIn(l.Event) {
			if p.None() {
				continue
			}
			key := string(p.What) + "\x00" + p.Lot
			i, ok := place[key]
			if !ok {
				lot, described := c.about.scale.lots[p.Lot]
				if !described {
					lot = entry.Lot{Name: p.Lot, What: p.What}
				}
				i = len(all)
				place[key] = i
				all = append(all, Material{What: p.What, Lot: lot})
			}
			charged, dry := c.about.scale.part(p, l.At)
			all[i].Total = all[i].Total.plus(Total{charged, dry})
		}
	}
	return all
}
