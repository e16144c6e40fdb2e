// Package why is the screen that asks of a smelt that is over what one thing otherwise would have changed: ranked by the hours
// of hearth too cold or by the ore not come down, each with its band, as the model's opinion, with what published smelts have
// against it; of a rehearsal whose seal is open beside what its own furnace would truly have done.
package why

import (
	"time"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/entry"
	"chargehand/model/rehearse"
	"chargehand/model/session"
	"chargehand/model/solve"
	"chargehand/model/why"
	"chargehand/tui/draw"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// Screen is what has been told of the smelt shown. Furnaces are asked beside the screen, one at a time.
type Screen struct {
	smelt   string
	len     int // entries of it that it is told of
	looking *why.Looking
	told    why.Opinion
	truly   []rehearse.Truly // of a rehearsal, as it was first
	err     error            // why its furnace tells nothing
	day     draw.Day         // the day that is asked about, its hearth as the model has it
	by      why.Order
	rows    screen.Rows
}

// Keys are its keys.
type Keys struct {
	screen.MoveKeys
	Order key.Binding
}

// Map are those keys.
var Map = Keys{MoveKeys: screen.Move, Order: screen.Bind(words.DoWhyOrder, "n")}

// All of them, the weightiest first.
func (k Keys) All() []key.Binding { return append([]key.Binding{k.Order}, k.MoveKeys.All()...) }

// New is the screen before anything was asked.
func New() Screen { return Screen{} }

func (Screen) ID() screen.ID       { return screen.Why }
func (Screen) Keys() screen.KeyMap { return Map }

// Listed once a smelt is over.
func (Screen) Listed(sh *screen.Shared) string {
	if !isOver(sh.Smelt) {
		return ""
	}
	return words.DoWhy
}

func isOver(s session.Session) bool { return s.Is() && s.Overview().Whole.Phase().Over() }

// Hints are what can be done.
func (Screen) Hints(sh *screen.Shared) []draw.KeyHint {
	hints := screen.Hints(Map.Up, Map.Down, screen.Global.Views, screen.Global.Back)
	if !isOver(sh.Smelt) {
		return hints
	}
	return append([]draw.KeyHint{screen.Short(Map.Order, words.ShortOrder)}, hints...)
}

// began brings what a rehearsal's furnace tells, and the model as it begins.
type began struct {
	looking *why.Looking
	truly   []rehearse.Truly
	err     error
	day     draw.Day
}

// told brings what one more furnace says.
type told struct {
	looking *why.Looking
	told    why.Opinion
}

// Entered begins to ask, unless it was asked of all of this already.
func (s Screen) Entered(sh *screen.Shared, _ any) (screen.Screen, screen.Effect) {
	s.rows = screen.Rows{}
	if !isOver(sh.Smelt) {
		return New(), nil
	}
	if s.smelt == sh.Smelt.ID() && s.len == sh.Smelt.Len() {
		return s, nil
	}
	s = Screen{smelt: sh.Smelt.ID(), len: sh.Smelt.Len(), by: s.by}
	all, entries := sh.Smelt.Overview(), sh.Smelt.Entries()
	return s, screen.Run{Cmd: func() tea.Msg { return begin(all, entries) }}
}

// begin asks a rehearsal's own furnace, if there is one and its seal is open.
func begin(all session.Overview, entries []entry.Entry) tea.Msg {
	if j, ok := all.Whole.Job(); ok { // for the day
		all.Whole = all.Whole.Solved(j.Run(new(solve.Solver)))
	}
	whole := all.Whole
	b, from := began{day: draw.DayOf(all)}, time.Duration(0)
	if whole.Light().Rehearsal {
		if from, b.err = rehearse.HandedOver(entries); b.err == nil && rehearse.IsOpened(entries) {
			b.truly, b.err = rehearse.WhyTruly(entries)
		}
	}
	b.looking = why.Begin(whole, from)
	return b
}

// asks asks one more furnace.
func asks(l *why.Looking) screen.Effect {
	if !l.More() {
		return nil
	}
	return screen.Run{Cmd: func() tea.Msg {
		l.Next()
		return told{l, l.Opinion()}
	}}
}

// Receive takes what was told, while it is of the smelt that was asked of last.
func (s Screen) Receive(sh *screen.Shared, msg tea.Msg) (screen.Screen, screen.Effect, bool) {
	switch msg := msg.(type) {
	case began:
		if s.smelt != sh.Smelt.ID() || s.looking != nil {
			return s, nil, true
		}
		s.looking, s.truly, s.err, s.told, s.day = msg.looking, msg.truly, msg.err, msg.looking.Opinion(), msg.day
		return s, asks(s.looking), true
	case told:
		if s.looking != msg.looking {
			return s, nil, true
		}
		s.told = msg.told
		return s, asks(s.looking), true
	}
	return s, nil, false
}

// Update takes a key.
func (s Screen) Update(sh *screen.Shared, p screen.Pressed) (screen.Screen, screen.Effect) {
	t := screen.TypedOf(p.Key)
	if to, ok := s.rows.Moved(sh, t, s.lines); ok {
		s.rows = to
		return s, nil
	}
	if key.Matches(t, Map.Order) {
		s.by = why.ByCold + why.ByLeft - s.by
		return s, nil
	}
	return s, screen.Refuse(words.NoAct(screen.KeyLabel(string(t))))
}
