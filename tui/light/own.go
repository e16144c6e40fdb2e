package light

import (
	"slices"

	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/model/session"
	"chargehand/model/shelf"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// most is how many of a person's own furnaces are offered.
const most = 3

// ownRead brings the furnaces of the last smelts, the newest first, and with which measures each was lit.
type ownRead struct {
	own []screen.Starter
	lit [][]entry.Measure
}

// weighedAgain gives a starter's measures what the last smelts found them to weigh, where the house has them still as these
// were lit: a bucket that was weighed again at the fire is not offered as it was before.
func (r ownRead) weighedAgain(s screen.Starter) screen.Starter {
	s.Measures = slices.Clone(s.Measures)
	for i, m := range s.Measures {
		same := func(o entry.Measure) bool { return o.Name == m.Name && o.What == m.What && o.Mass.Known }
		for n, own := range r.own {
			was, is := slices.IndexFunc(r.lit[n], same), slices.IndexFunc(own.Measures, same)
			if was < 0 || is < 0 {
				continue
			}
			if r.lit[n][was].Mass == m.Mass && own.Measures[is].Mass != m.Mass {
				s.Measures[i].Mass, s.Measures[i].Guessed = own.Measures[is].Mass, own.Measures[is].Guessed
			}
			break
		}
	}
	return s
}

// readOwn reads the furnaces of the newest smelts, each as it was lit, with its
// measures as they weighed in the end and its blower as it was metered. What
// cannot be read is not offered; opening that smelt says why.
func (f Screen) readOwn(lines []shelf.Summary) screen.Effect {
	var ids []string
	seen := map[string]bool{}
	for _, l := range lines {
		if !l.Practice && !l.Invented && !seen[l.Furnace] && len(ids) < most {
			ids, seen[l.Furnace] = append(ids, l.ID), true
		}
	}
	if len(ids) == 0 {
		return nil
	}
	store := f.store
	return screen.Run{Cmd: func() tea.Msg {
		var read ownRead
		for _, id := range ids {
			if es, _, err := store.Entries(id); err == nil && len(es) > 0 {
				s := session.Open(id, es)
				r := s.AsOf(fold.All, s.End()).Reading()
				own := screen.Starter{Name: words.AsIn(id), Furnace: r.Light.Furnace, Measures: r.Measures, Lots: r.Light.Lots, Recipe: r.Light.Recipe}
				own.Furnace.Blower = r.Blower
				own = measured(own, f.usual[0])
				read.own, read.lit = append(read.own, own), append(read.lit, r.Light.Measures)
			}
		}
		return read
	}}
}

// measured is a starter with the usual measure, a guess, of a material that went in by
// weight alone: a log that somebody imported has no measures, and the form asks for them.
func measured(s, usual screen.Starter) screen.Starter {
	for _, w := range []entry.What{entry.Charcoal, entry.Ore} {
		if usualOf(s.Measures, w).Name == "" {
			s.Measures = append(slices.Clone(s.Measures), usualOf(usual.Measures, w))
			s.Recipe = usual.Recipe
		}
	}
	return s
}

// Receive takes a person's own furnaces before the usual ones, unless somebody is
// filling in the form already.
func (f Screen) Receive(sh *screen.Shared, msg tea.Msg) (screen.Screen, screen.Effect, bool) {
	read, mine := msg.(ownRead)
	if !mine {
		return f, nil, false
	}
	f.before = ended(sh)
	for i, o := range read.own {
		read.own[i] = planned(sh.House(), o, o.Furnace.ID())
	}
	var own []screen.Starter
	for _, o := range ofHouse(sh, f.asked) {
		own = append(own, read.weighedAgain(o))
	}
	own = append(own, read.own...)
	for _, o := range stocked(sh, f.usual) {
		own = append(own, read.weighedAgain(o))
	}
	switch wanted := f.wanted; {
	case wanted != "": // the form comes back as it was left, and begins with one of these
		half := map[string]string{}
		for _, h := range f.Half(sh) {
			half[h.Label] = h.Text
		}
		f.starters = own
		return f.Resumed(half), nil, true
	case f.rows == nil || f.untouchedYet():
		f.starters = own
		f = f.anew(sh.Units)
	}
	return f, nil, true
}
