package plan

import (
	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/model/house"
	"chargehand/model/session"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// lastRead brings the furnace of a person's last smelt, as it was lit, with its blower as it
// was metered.
type lastRead struct {
	smelt   string
	furnace entry.Furnace
}

// readLast reads it where no furnace is keyed to plan for. What cannot be read is not offered;
// opening that smelt says why.
func (s Screen) readLast(sh *screen.Shared) screen.Effect {
	if s.store == nil || len(sh.House().Furnaces) > 0 {
		return nil
	}
	for _, l := range sh.Shelf.Lines {
		if l.Practice || l.Invented || l.Rehearsal || l.Imported {
			continue
		}
		if l.ID == s.smelt {
			return nil
		}
		store, id := s.store, l.ID
		return screen.Run{Cmd: func() tea.Msg {
			es, _, err := store.Entries(id)
			if err != nil || len(es) == 0 {
				return lastRead{}
			}
			in := session.Open(id, es)
			r := in.AsOf(fold.All, in.End()).Reading()
			f := r.Light.Furnace
			f.Blower = r.Blower
			return lastRead{id, f}
		}}
	}
	return nil
}

// inLast is the plan reckoned anew for the furnace of the last smelt, and what was to be asked
// once that was read.
func (s Screen) inLast(sh *screen.Shared) (screen.Screen, screen.Effect, bool) {
	if s.prepares {
		s.prepares = false
		return s, s.prepare(sh), true
	}
	if _, ok := s.built(sh.House()); !ok {
		return s, nil, true
	}
	next, e := s.reckon(sh)
	return next, e, true
}

// asLast is the furnace of the last smelt, unless the usual one was asked for.
func (s Screen) asLast() (house.Furnace, bool) {
	if s.smelt == "" || s.starter {
		return house.Furnace{}, false
	}
	return house.Furnace{ID: s.asIn.ID(), Versions: []house.Version{{Furnace: s.asIn}}}, true
}

// starting asks for that furnace or the usual one, where none is keyed.
func (s Screen) starting(then func(*screen.Shared, Screen) screen.Effect) (last, usual screen.Option) {
	is := func(k, word string, starter bool) screen.Option {
		return screen.Opt(k, word, func(sh *screen.Shared) screen.Effect {
			s.starter = starter
			return then(sh, s)
		})
	}
	return is("a", words.FurnaceAsIn(s.asIn.Name, s.smelt), false), is("e", words.TheUsualFurnace, true)
}
