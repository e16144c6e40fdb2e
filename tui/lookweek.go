package tui

import (
	"slices"
	"sync"

	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/entry"
	"chargehand/model/house"
	"chargehand/model/session"
	"chargehand/tui/furnace"
	"chargehand/tui/plan"
	"chargehand/tui/screen"
	"chargehand/tui/stores"
	"chargehand/tui/words"
)

// A week to look at: the house of an invented smelt in place of the person's own, on the
// screens of the week and nowhere else. Nothing of it is kept and nothing of it is mixed
// with what the person has; it ends when another screen is gone to.

// aWeek is the invented house.
type aWeek struct {
	home   house.Journal
	folded func() house.State
	last   entry.Entry
	own    []screen.Screen // the person's, as they were left
}

// ofWeek are the screens that it is looked at on.
var ofWeek = []screen.ID{screen.Stores, screen.Furnace, screen.Plan}

// weekRead is the invented week, made beside the screen.
type weekRead struct{ entries []entry.Entry }

// askWeek makes it.
func (m Model) askWeek() tea.Cmd {
	week := m.cfg.Week
	if week == nil {
		return nil
	}
	return m.command(func() tea.Msg { return weekRead{week()} })
}

// weekRead goes to the stores of it.
func (m Model) weekRead(r weekRead) (Model, []entry.Entry, tea.Cmd) {
	if len(r.entries) == 0 {
		return m.refuse(words.NoDemo), nil, nil
	}
	j := house.JournalOf(r.entries)
	w := &aWeek{home: j, folded: sync.OnceValue(func() house.State { return j.Fold(nil) }), last: r.entries[len(r.entries)-1]}
	for _, id := range ofWeek {
		w.own = append(w.own, m.screens[id])
	}
	m = m.With(stores.New()).With(furnace.New()).With(plan.Apart())
	m.week = w
	m, cmd := m.goTo(screen.Stores, nil)
	m.answer = answer{text: words.WeekToLookAt}
	return m, nil, cmd
}

// weekLeft puts the person's own back where another screen was gone to.
func (m Model) weekLeft() Model {
	if m.week == nil || slices.Contains(ofWeek, m.active) {
		return m
	}
	for _, own := range m.week.own {
		m = m.With(own)
	}
	m.week = nil
	return m
}

// looksAtWeek tells whether the screen shows it.
func (m Model) looksAtWeek() bool { return m.week != nil && slices.Contains(ofWeek, m.active) }

// inWeek is what its screens are shown: its house at its last moment, no smelts, and none
// that burns beside it but in the row at the top.
func (m Model) inWeek(sh *screen.Shared) *screen.Shared {
	sh.House, sh.Home, sh.Mark = m.week.folded, m.week.home, words.TagInvented
	sh.Now.Wall = m.week.last.Kept
	sh.Shelf = screen.Shelved{Known: true}
	if !m.running.Running() {
		sh.Smelt = session.Session{}
	}
	return sh
}

// lookOnly is an effect with nothing in it that would be kept in the house, or lit from it.
func (m Model) lookOnly(e screen.Effect) screen.Effect {
	if !m.looksAtWeek() {
		return e
	}
	for _, one := range screen.Flat(e) {
		switch one := one.(type) {
		case screen.House:
			if len(one) > 0 {
				return screen.Refuse(words.WeekOnlyLooks)
			}
		case screen.Go:
			if one.To == screen.Light {
				return screen.Refuse(words.WeekOnlyLooks)
			}
		}
	}
	return e
}
