// Package compare is the screen that holds two to four smelts beside each other: what went
// in and came out as a table, their days as strips one under another at one scale, lined up
// at the first ore, and what differed most.
package compare

import (
	"slices"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/compare"
	"chargehand/model/entry"
	"chargehand/model/invented"
	"chargehand/model/shelf"
	"chargehand/tui/draw"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// Most is how many smelts are held beside each other, Least how many at the least.
const (
	Most  = 4
	Least = 2
)

// Screen is a comparison. The days are read beside the screen.
type Screen struct {
	store  screen.Store
	chosen []string // streams
	asked  int
	read   bool
	made   compare.Compared
	own    []shelf.Summary
	days   []compare.Day
	at     int // the smelt at the keys
}

// Keys are the keys of the comparison.
type Keys struct {
	screen.MoveKeys
	Open, Shelf key.Binding
}

// Map are those keys.
var Map = Keys{MoveKeys: screen.Move, Open: screen.Bind(words.DoOpenPast, "enter"), Shelf: screen.Bind(words.DoOthersToCompare, "a")}

// All of them, the weightiest first.
func (k Keys) All() []key.Binding {
	return append([]key.Binding{k.Open, k.Shelf}, k.MoveKeys.All()...)
}

// New compares the newest smelts until others are chosen.
func New(store screen.Store) Screen { return Screen{store: store} }

func (Screen) ID() screen.ID       { return screen.Compare }
func (Screen) Keys() screen.KeyMap { return Map }

// Listed while there are smelts to compare.
func (Screen) Listed(sh *screen.Shared) string {
	n := len(sh.Shelf.Lines)
	if sh.Shelf.Demo != nil {
		n++
	}
	if n < Least {
		return ""
	}
	return words.DoCompare
}

// Hints are what can be done.
func (Screen) Hints(*screen.Shared) []draw.KeyHint {
	return append(screen.Hints(Map.Open, Map.Shelf, Map.Up, Map.Down), screen.Hints(screen.Global.Views, screen.Global.Back)...)
}

// Entered compares the smelts that were chosen in the list of all, else the same as
// before, else the newest that are over.
func (s Screen) Entered(sh *screen.Shared, with any) (screen.Screen, screen.Effect) {
	if to, ok := with.(screen.Compares); ok {
		s.chosen = to
	}
	if len(s.chosen) < Least {
		for _, l := range compare.Own(sh.Shelf.Lines) {
			if len(s.chosen) < 3 {
				s.chosen = append(s.chosen, l.ID)
			}
		}
	}
	var lines []shelf.Summary
	for _, id := range s.chosen {
		if l, ok := lineOf(sh, id); ok {
			lines = append(lines, l)
		}
	}
	s.asked++
	s.at, s.read, s.days = 0, false, nil
	store, all, n := s.store, slices.Clone(sh.Shelf.Lines), s.asked
	return s, screen.Run{Cmd: func() tea.Msg {
		r := answered{asked: n, made: compare.Of(lines, all), own: compare.Own(all)}
		for _, l := range lines {
			d := compare.Day{ID: l.ID}
			if es := entriesOf(store, l); len(es) > 0 {
				d = compare.DayOf(l.ID, es)
			}
			r.days = append(r.days, d)
		}
		return r
	}}
}

// entriesOf are those of a smelt that is kept, or of the invented one.
func entriesOf(store screen.Store, l shelf.Summary) []entry.Entry {
	if demo, err := invented.Smelt(); err == nil && len(demo) > 0 && demo[0].Stream == l.ID {
		return demo
	}
	if store == nil {
		return nil
	}
	es, _, err := store.Entries(l.ID)
	if err != nil {
		return nil // the strip says that nothing was read
	}
	return es
}

func lineOf(sh *screen.Shared, id string) (shelf.Summary, bool) {
	if sh.Running.Is() && id == sh.Running.ID() {
		return sh.Running.Summary(), true
	}
	if demo := sh.Shelf.Demo; demo != nil && demo.ID == id {
		return *demo, true
	}
	i := slices.IndexFunc(sh.Shelf.Lines, func(l shelf.Summary) bool { return l.ID == id })
	if i < 0 {
		return shelf.Summary{}, false
	}
	return sh.Shelf.Lines[i], true
}

// answered is what was read.
type answered struct {
	asked int
	made  compare.Compared
	own   []shelf.Summary
	days  []compare.Day
}

// Receive takes it, unless something else was asked since.
func (s Screen) Receive(_ *screen.Shared, msg tea.Msg) (screen.Screen, screen.Effect, bool) {
	a, mine := msg.(answered)
	if !mine {
		return s, nil, false
	}
	if a.asked == s.asked {
		s.read, s.made, s.own, s.days = true, a.made, a.own, a.days
	}
	return s, nil, true
}

// Update takes a key.
func (s Screen) Update(sh *screen.Shared, p screen.Pressed) (screen.Screen, screen.Effect) {
	t := screen.TypedOf(p.Key)
	n := len(s.made.Smelts)
	if to, ok := Map.Moved(t, s.at, n, n); ok {
		s.at = max(to, 0)
		return s, nil
	}
	switch {
	case key.Matches(t, Map.Shelf):
		return s, screen.Go{To: screen.Shelf}
	case key.Matches(t, Map.Open) && s.at < n:
		return s, screen.Open{Smelt: s.made.Smelts[s.at].ID, On: screen.Replay}
	case key.Matches(t, Map.Open):
		return s, screen.Refuse(words.NothingToCompare)
	}
	return s, screen.Refuse(words.NoAct(screen.KeyLabel(string(t))))
}
