// Package account is the screen of where the iron of a smelt went: what went in, what
// came out, what is open, and what that rests on. It stays open for days: any line is
// weighed whenever somebody gets to it.
package account

import (
	"github.com/charmbracelet/bubbles/key"

	"chargehand/model/account"
	"chargehand/model/session"
	"chargehand/tui/act"
	"chargehand/tui/draw"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// Screen is the account of the smelt shown. What does not fit is scrolled to; made is
// the account as it was last worked out.
type Screen struct {
	rows screen.Rows
	made *made
}

// made is an account, and of what.
type made struct {
	smelt     string
	len, home int
	whole     session.Session // the smelt as all of it is known
	account   account.Account
	err       error
}

// Keys are the keys of the account.
type Keys struct {
	screen.MoveKeys
	Weigh, Lesson, Sample key.Binding
}

// Map are those keys.
var Map = Keys{
	MoveKeys: screen.Move,
	Weigh:    screen.Bind(words.DoWeigh, "w"),
	Lesson:   screen.Bind(words.DoLesson, "n"),
	Sample:   screen.Bind(words.DoSampleTaken, "p"),
}

// All of them, the weightiest first.
func (k Keys) All() []key.Binding {
	return append([]key.Binding{k.Weigh, k.Lesson, k.Sample}, k.MoveKeys.All()...)
}

// New is the account at its top.
func New() Screen { return Screen{made: new(made)} }

func (Screen) ID() screen.ID       { return screen.Account }
func (Screen) Keys() screen.KeyMap { return Map }

// Listed when there is a smelt to give an account of.
func (Screen) Listed(sh *screen.Shared) string {
	if !sh.Smelt.Is() {
		return ""
	}
	return words.DoAccount
}

// Entered begins at the top.
func (s Screen) Entered(*screen.Shared, any) (screen.Screen, screen.Effect) {
	s.rows = screen.Rows{}
	return s, nil
}

// Hints are what can be done.
func (Screen) Hints(sh *screen.Shared) []draw.KeyHint {
	hints := screen.Hints(Map.Up, Map.Down, screen.Global.Views, screen.Global.Back)
	if sh.Smelt.ToLook() {
		return hints
	}
	return append([]draw.KeyHint{screen.Short(Map.Weigh, words.ShortWeigh), screen.Short(Map.Lesson, words.ShortLesson), screen.Short(Map.Sample, words.ShortSample)}, hints...)
}

// Update takes a key.
func (s Screen) Update(sh *screen.Shared, p screen.Pressed) (screen.Screen, screen.Effect) {
	t := screen.TypedOf(p.Key)
	if to, ok := s.rows.Moved(sh, t, s.lines); ok {
		s.rows = to
		return s, nil
	}
	switch k := Map; {
	case key.Matches(t, k.Weigh):
		return s, act.Now(act.AskWeigh)(sh)
	case key.Matches(t, k.Sample):
		return s, act.Now(act.AskSample)(sh)
	case key.Matches(t, k.Lesson):
		return s, act.AskLesson(sh)
	}
	return s, screen.Refuse(words.NoAct(screen.KeyLabel(string(t))))
}

// of gives the account of the smelt shown, worked out once for what is known of it.
func (s Screen) of(sh *screen.Shared) made {
	now := made{smelt: sh.Smelt.ID(), len: sh.Smelt.Len(), home: len(sh.Home.Lines())}
	if s.made.smelt != now.smelt || s.made.len != now.len || s.made.home != now.home {
		now.whole = sh.Smelt.Overview().Whole
		now.account, now.err = sh.AccountOf(sh.Smelt)
		*s.made = now
	}
	return *s.made
}
