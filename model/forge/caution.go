package forge

import "chargehand/model/entry"

// Caution is one thing at the forge that may hurt, and at what. It never stands in the way
// of a key. What it says is in package words.
type Caution struct {
	ID     string
	At     func(entry.Event) bool
	Source string
}

// Cautions are those of the forge, in the order in which they are shown (all common
// practice; on each local codes and licensed practice come first).
var Cautions = []Caution{
	{"forge eyes", atFire, "common practice"},
	{"forge hot work", atFire, "common practice"},
	{"forge scale", atFire, "common practice"},
	{"forge flux", func(ev entry.Event) bool {
		switch ev := ev.(type) {
		case entry.ForgeSession:
			return did(ev, entry.Welded, entry.Folded) || ev.Flux.Known
		case entry.Piece:
			return len(ev.From) > 1
		}
		return false
	}, "common practice"},
	{"forge zinc", func(ev entry.Event) bool {
		p, ok := ev.(entry.Piece)
		return ok && (len(p.From) > 1 || p.WhereFrom != "")
	}, "common practice"},
}

func atFire(ev entry.Event) bool {
	switch ev := ev.(type) {
	case entry.Heat, entry.ForgeSession:
		return true
	case entry.Piece:
		return len(ev.From) > 1
	}
	return false
}

func did(s entry.ForgeSession, any ...entry.Forged) bool {
	for _, d := range s.Did {
		for _, a := range any {
			if d == a {
				return true
			}
		}
	}
	return false
}

// CautionAt is the first caution at what is done that was not shown yet to who does it.
func CautionAt(evs []entry.Event, shown map[string]bool) (Caution, bool) {
	for _, c := range Cautions {
		for _, ev := range evs {
			if !shown[c.ID] && c.At(ev) {
				return c, true
			}
		}
	}
	return Caution{}, false
}
