package house

import (
	"maps"
	"slices"

	"chargehand/model/entry"
)

// Names are what lots and measures are called, by their uid: nobody knows one by that.
type Names map[entry.UID]string

// NamesOf are the names that lines of the house give, as last said: what was crossed out
// counts where nothing else says it.
func NamesOf(lines []Line) Names {
	n := Names{}
	for _, struck := range []bool{true, false} {
		for _, l := range lines {
			if l.Struck() != struck {
				continue
			}
			switch ev := l.Event.(type) {
			case entry.LotStored:
				n.add(ev.Lot.UID, ev.Lot.Name)
			case entry.MeasureNamed:
				n.add(ev.Measure.UID, ev.Measure.Name)
			}
		}
	}
	return n
}

// Also are names with those of some lots that they lack.
func (n Names) Also(lots []entry.Lot) Names {
	all := maps.Clone(n)
	for _, l := range lots {
		if _, known := all[l.UID]; !known {
			all.add(l.UID, l.Name)
		}
	}
	return all
}

func (n Names) add(id entry.UID, name string) {
	if id != "" && name != "" {
		n[id] = name
	}
}

// In is an event that names lots and measures by what they are called, where that is known.
func (n Names) In(ev entry.Event) entry.Event {
	switch ev := ev.(type) {
	case entry.Deed:
		ev.In, ev.Out, ev.Fuel = n.Amounts(ev.In), n.Amounts(ev.Out), n.Amounts(ev.Fuel)
		return ev
	case entry.Assay:
		ev.Lot = n.lot(ev.Lot)
		return ev
	case entry.Charge:
		ev.Parts = n.parts(ev.Parts)
		return ev
	case entry.Fill:
		ev.Parts = n.parts(ev.Parts)
		return ev
	case entry.Recipe:
		ev.Next = n.parts(ev.Next)
		return ev
	case entry.Amend:
		if ev.Event != nil {
			ev.Event = n.In(ev.Event)
		}
		return ev
	}
	return ev
}

func (n Names) lot(id entry.UID) entry.UID {
	if name, ok := n[id]; ok {
		return entry.NameUID(name)
	}
	return id
}

// Amounts are amounts that do.
func (n Names) Amounts(as []entry.Amount) []entry.Amount {
	as = slices.Clone(as)
	for i, a := range as {
		as[i].Lot = n.lot(a.Lot)
		if name, ok := n[entry.UID(a.Measure)]; ok {
			as[i].Measure = name
		}
	}
	return as
}

func (n Names) parts(ps entry.Parts) entry.Parts {
	ps = slices.Clone(ps)
	for i, p := range ps {
		if name, ok := n[entry.UID(p.Lot)]; ok {
			ps[i].Lot = name
		}
	}
	return ps
}
