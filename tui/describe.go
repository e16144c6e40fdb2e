package tui

import (
	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/fold"
	"chargehand/model/session"
	"chargehand/model/words"
)

// describe is a line of the journal in words, with its charge's number and
// weight where it has them.
func describe(u words.Units, s session.Session, l fold.Line) string {
	ev, ok := l.Event.(entry.Charge)
	if !ok {
		return u.Event(l.Event)
	}
	cs := s.Charges()
	for i := len(cs) - 1; i >= 0; i-- { // the line is mostly one of the last
		c := cs[i]
		switch {
		case c.Seq == l.Seq():
			return chargeLine(u, c)
		case !ev.Parts.Holds(entry.Charcoal) && c.At <= l.At && !s.Light().Furnace.OreUnder:
			return u.IntoCharge(ev.Parts, c.Number)
		}
	}
	return u.Event(l.Event)
}

func chargeLine(u words.Units, c figure.Charge) string {
	said := u.ChargeLine(c.Number, c.Parts, known(c.Charcoal), known(c.Ore))
	if c.Double {
		return said + words.Double
	}
	return said
}

// known is the middle value of a figure, where it has one.
func known(f figure.Figure) entry.Maybe[entry.Kilogram] {
	if !f.Known() {
		return entry.None[entry.Kilogram]()
	}
	return entry.Some(entry.Kilogram(f.P50))
}
