package act

import (
	"slices"
	"strings"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/fold"
	"chargehand/model/session"
	modelwords "chargehand/model/words"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// Describe is a line of the journal in words, with its charge's number and
// weight where it has them, and a mark where it was doubted and kept all the same.
func Describe(u modelwords.Units, s session.Session, l fold.Line) string {
	if s.Sure(l) != "" {
		return describe(u, s, l) + words.Surely
	}
	return describe(u, s, l)
}

func describe(u modelwords.Units, s session.Session, l fold.Line) string {
	if next, ok := l.Event.(entry.Recipe); ok {
		return u.Event(entry.Recipe{Next: withNames(s, next.Next)})
	}
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

// withNames are parts from lots by their names, as far as the smelt knows them.
func withNames(s session.Session, parts entry.Parts) entry.Parts {
	parts = slices.Clone(parts)
	lots := s.Lots()
	for i, p := range parts {
		if at := slices.IndexFunc(lots, func(l entry.Lot) bool { return string(l.UID) == p.Lot && p.Lot != "" }); at >= 0 {
			parts[i].Lot = lots[at].Name
		}
	}
	return parts
}

// Brief is a line in fewer words, for where Describe has no room; "" where there are
// none.
func Brief(u modelwords.Units, s session.Session, l fold.Line) string {
	if s.Sure(l) != "" {
		return ""
	}
	switch ev := l.Event.(type) {
	case entry.Recipe:
		return u.NextBrief(ev.Next)
	case entry.Charge:
		cs := s.Charges()
		for i := len(cs) - 1; i >= 0; i-- {
			switch c := cs[i]; {
			case c.Seq != l.Seq():
			case c.Double: // that it may be one says more than what went in
				return words.DoubleBrief(c.Number)
			default:
				return u.ChargeBrief(c.Number, c.Parts)
			}
		}
		if l.Struck() { // it has no number any more
			return u.ChargedBrief(ev.Parts)
		}
	}
	return ""
}

func chargeLine(u modelwords.Units, c figure.Charge) string {
	said := u.ChargeLine(c.Number, c.Parts, screen.Known(c.Charcoal), screen.Known(c.Ore))
	if c.Double {
		return said + words.Double
	}
	return said
}

// SayLast says what the last entry of the smelt is, and what to do about a
// charge that may be double.
func SayLast(sh *screen.Shared) string {
	last, ok := sh.Smelt.Last()
	if !ok {
		return ""
	}
	said := Describe(sh.Units, sh.Smelt, last)
	if strings.HasSuffix(said, words.Double) { // what went in stands in the log; what to do is read first
		said = Brief(sh.Units, sh.Smelt, last) + words.IfDouble
	}
	if w, ok := last.Event.(entry.Weigh); ok && w.What == entry.WeighMeasure && w.Why == "" {
		said += words.WhyOffer
	}
	return said
}

// Book keeps an event that happens now.
func Book(ev entry.Event) screen.Effect { return screen.Did(ev, SayLast) }

// WhyNot says why a smelt takes no such act.
func WhyNot(s session.Session) string {
	switch {
	case s.Watched():
		return words.OnlyWatching
	case screen.RightsIn(s) == screen.LookOnly:
		return words.LookOnly
	case s.Light().Imported:
		return words.ImportedSmelt
	}
	return words.ClosedSmelt
}

// Now makes an option's effect of a form: a new act, at this moment.
func Now(ask Form) func(*screen.Shared) screen.Effect {
	return func(sh *screen.Shared) screen.Effect { return ask(sh, nil, Book) }
}
