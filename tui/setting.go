package tui

import (
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/entry"
	"chargehand/model/words"
)

// The names under which the house keeps how a person reads the screen. Of
// several of one name the last holds.
const (
	background = "background" // dark or light
	unitOf     = "unit of "   // and the quantity, with the unit's name
	dark       = "dark"
	light      = "light"
)

// chosen is the root with a setting in force. A setting of a newer version, or
// of a unit that there is no more, changes nothing.
func (m Model) chosen(s entry.Setting) Model {
	if quantity, ok := strings.CutPrefix(s.Name, unitOf); ok {
		m.theme.Units = m.theme.Units.With(quantity, s.Value)
	}
	if s.Name == background {
		m.theme.Light = s.Value == light
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
		es, err := store.Entries(entry.House)
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
	return m
}

// flip is the other background, kept for the next time.
func flip(sh shared) step {
	to := light
	if sh.theme.Light {
		to = dark
	}
	return step{setting: entry.Setting{Name: background, Value: to}}
}

// settings is the list of units, one for each quantity, and the background. A
// key takes the next one; the list stays open until esc.
func settings(sh shared) step {
	u := sh.theme.Units
	letters := [words.Quantities]string{words.Mass: "m", words.Length: "l", words.Blast: "b", words.Heat: "t", words.Pressure: "p"}
	var list []option
	for q, k := range letters {
		q := words.Quantity(q)
		list = append(list, opt(k, words.UnitIs(q, u.Of(q)), func(shared) step {
			to := u.Next(q).Of(q)
			return step{
				setting: entry.Setting{Name: unitOf + q.String(), Value: to}, again: settings,
				say: func(shared) string { return words.UnitIs(q, to) },
			}
		}))
	}
	list = append(list, opt("d", words.DoFlip, func(sh shared) step {
		st := flip(sh)
		st.again = settings
		return st
	}))
	return choose(words.DoSettings, list...)
}
