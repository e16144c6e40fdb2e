package solve

import (
	"slices"

	"chargehand/model/entry"
)

// Irons is the iron of lots of ore that were assayed since the smelt took them down, as a share of
// the dry mass, by their uid.
type Irons map[entry.UID]entry.Share

// Of is the lot with the iron that it was found to hold.
func (i Irons) Of(l entry.Lot) entry.Lot {
	if iron, ok := i[l.ID()]; ok && l.What == entry.Ore {
		l.Iron = entry.Some(iron)
	}
	return l
}

// Into is an entry that takes lots down as it would be had they been assayed by then: for who
// solves a smelt from its entries and changes them first.
func (i Irons) Into(e entry.Entry) entry.Entry {
	if len(i) > 0 {
		e.Event = i.into(e.Event)
	}
	return e
}

func (i Irons) into(ev entry.Event) entry.Event {
	switch ev := ev.(type) {
	case entry.Light:
		ev.Lots = slices.Clone(ev.Lots)
		for n, l := range ev.Lots {
			ev.Lots[n] = i.Of(l)
		}
		return ev
	case entry.LotStored:
		ev.Lot = i.Of(ev.Lot)
		return ev
	case entry.Amend:
		if ev.Event != nil {
			ev.Event = i.into(ev.Event)
		}
		return ev
	}
	return ev
}
