package tui

import (
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/entry"
	"chargehand/model/house"
	"chargehand/model/rule"
	modelwords "chargehand/model/words"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// The names under which the house keeps how a person reads the screen. Of
// several of one name the last holds.
const (
	background = "background" // dark or light
	unitOf     = "unit of "   // and the quantity, with the unit's name
	bellFor    = "bell"       // what it sounds for, as rule.Heard is kept
	darkPage   = "dark"
	lightPage  = "light"
)

// chosen is the root with a setting in force. A setting of a newer version, or
// of a unit that there is no more, changes nothing.
func (m Model) chosen(s entry.Setting) Model {
	if quantity, ok := strings.CutPrefix(s.Name, unitOf); ok {
		m.units = m.units.With(quantity, s.Value)
	}
	if s.Name == bellFor {
		m.heard = rule.HeardOf(s.Value)
	}
	if s.Name == background {
		m.theme.Light = s.Value == lightPage
	}
	return m
}

// houseRead brings what the house holds.
type houseRead struct {
	entries []entry.Entry
	err     error
}

func (m Model) readHouse() tea.Cmd {
	store := m.cfg.Store
	return m.command(func() tea.Msg {
		es, _, err := store.Entries(entry.House)
		return houseRead{es, err}
	})
}

// houseRead takes the settings, but for what the command line said.
func (m Model) houseRead(r houseRead) Model {
	if r.err != nil {
		return m.refuse(words.SettingsUnread(r.err.Error()))
	}
	for _, e := range r.entries {
		s, ok := e.Event.(entry.Setting)
		if ok && (s.Name != background || !m.cfg.Background) {
			m = m.chosen(s)
		}
	}
	m.reminders = house.Reminders(r.entries)
	m.home = m.home.Onto(house.JournalOf(r.entries))
	return m.rehoused().reassayed().draftsRead(r.entries)
}

// flip is the other background, kept for the next time.
func flip(sh *screen.Shared) screen.Effect {
	to := lightPage
	if sh.Theme.Light {
		to = darkPage
	}
	return screen.Set{Setting: entry.Setting{Name: background, Value: to}}
}

// settings is the list of units, one for each quantity, and the background. A
// key takes the next one; the list stays open until esc.
func settings(sh *screen.Shared) screen.Effect {
	u := sh.Units
	letters := [modelwords.Quantities]string{modelwords.Mass: "m", modelwords.Length: "l", modelwords.Blast: "b", modelwords.Heat: "t", modelwords.Pressure: "p"}
	var list []screen.Option
	for q, k := range letters {
		q := modelwords.Quantity(q)
		list = append(list, screen.Opt(k, words.UnitIs(q, u.Of(q)), func(sh *screen.Shared) screen.Effect {
			to := u.Next(q).Of(q)
			return turned(sh, words.UnitIs(q, to), entry.Setting{Name: unitOf + q.String(), Value: to})
		}))
	}
	list = append(list, screen.Opt("r", words.BellIs(sh.Heard), func(sh *screen.Shared) screen.Effect {
		to := sh.Heard.Next()
		return turned(sh, words.BellIs(to), entry.Setting{Name: bellFor, Value: to.String()})
	}))
	list = append(list, screen.Opt("d", words.DoFlip, func(sh *screen.Shared) screen.Effect {
		return screen.Each{flip(sh), screen.Again(settings)}
	}))
	return screen.Choose(words.DoSettings, list...)
}

// turned sets a unit or the bell. Beside a fire it asks first: all letters of this list
// are acts there, and one meant for the fire would turn the unit of the next number or
// silence the bell.
func turned(sh *screen.Shared, is string, s entry.Setting) screen.Effect {
	set := screen.Each{screen.Set{Setting: s}, screen.Again(settings), screen.Said(is)}
	if !sh.Smelt.Running() {
		return set
	}
	return screen.Question(words.FromNowOn(is), func(*screen.Shared) screen.Effect { return set })
}
