// Package start is the first screen.
package start

import (
	"time"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/entry"
	"chargehand/model/session"
	"chargehand/tui/act"
	"chargehand/tui/draw"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// Screen is the first screen: four plain lines, and before them the smelt that
// was not finished, when there is one.
type Screen struct {
	usual screen.Starter // to practise with

	rehearses bool // practise is a rehearsal
	at        int
	waits     bool // for the shelf, to go on with the smelt that it says was not finished
}

// Keys are the keys of the start screen; the number of a line chooses it
// too.
type Keys struct {
	GoOn, GoOther, Practise, Prepare, Smelt, Look, Choose, Quit, Up, Down key.Binding
}

// Map are those keys.
var Map = Keys{
	GoOn:     screen.Bind(words.DoGoOn, "g"),
	GoOther:  screen.Bind(words.DoGoOther, "o"),
	Practise: screen.Bind(words.DoPractise, "p"),
	Prepare:  screen.Bind(words.DoPrepare, "e"),
	Smelt:    screen.Bind(words.DoSmelt, "r"),
	Look:     screen.Bind(words.DoLookAt, "l"),
	Choose:   screen.Bind(words.DoChoose, "enter"),
	Quit:     screen.Bind(words.DoQuit, "q"),
	Up:       screen.Bind(words.DoUp, "up"),
	Down:     screen.Bind(words.DoDown, "down"),
}

// All of them.
func (k Keys) All() []key.Binding {
	return []key.Binding{k.GoOn, k.GoOther, k.Practise, k.Prepare, k.Smelt, k.Look, k.Choose, k.Up, k.Down, k.Quit}
}

// Repeating are the ones that move.
func (k Keys) Repeating() []key.Binding { return []key.Binding{k.Up, k.Down} }

func (Screen) ID() screen.ID       { return screen.Start }
func (Screen) Keys() screen.KeyMap { return Map }

// New is the start screen; practice is with that furnace.
func New(usual screen.Starter) Screen { return Screen{usual: usual} }

// Rehearsing is the start screen whose practise is a rehearsal.
func Rehearsing(usual screen.Starter) Screen { return Screen{usual: usual, rehearses: true} }

// Listed always.
func (Screen) Listed(*screen.Shared) string { return words.DoStart }

// Entered begins at the first line.
func (s Screen) Entered(*screen.Shared, any) (screen.Screen, screen.Effect) {
	return Screen{usual: s.usual, rehearses: s.rehearses}, nil
}

// Receive goes on with the smelt that was not finished once the shelf is read, when
// a key asked for that.
func (s Screen) Receive(sh *screen.Shared, msg tea.Msg) (screen.Screen, screen.Effect, bool) {
	if _, read := msg.(screen.Read); !read {
		return s, nil, false
	}
	if !s.waits {
		return s, nil, true
	}
	s.waits = false
	if on := unfinished(sh); on.id != "" {
		return s, screen.Open{Smelt: on.id, On: screen.Fire}, true
	}
	return s, screen.Refuse(words.NoneUnfinished), true
}

// startLine is one line to choose.
type startLine struct {
	key      key.Binding
	is, more string // what it is; what it takes, or how far it is
	then     func(*screen.Shared) screen.Effect
}

// lines of the start screen, the unfinished smelt first.
func (s Screen) lines(sh *screen.Shared) []startLine {
	var ls []startLine
	if on := unfinished(sh); on.id != "" {
		ls = append(ls, startLine{Map.GoOn, on.is, on.more, func(*screen.Shared) screen.Effect { return screen.Open{Smelt: on.id, On: screen.Fire} }})
	}
	if on := otherUnfinished(sh); on.id != "" {
		ls = append(ls, startLine{Map.GoOther, on.is, on.more, func(*screen.Shared) screen.Effect { return screen.Open{Smelt: on.id, On: screen.Fire} }})
	}
	ls = append(ls,
		startLine{Map.Practise, words.PractiseIs, words.PractiseTakes, func(sh *screen.Shared) screen.Effect {
			return act.LeavingRunning(sh, func(sh *screen.Shared) screen.Effect {
				if s.rehearses {
					return screen.Rehearse{UnderWay: true}
				}
				return s.Practise()
			})
		}})
	if !sh.Running.Is() { // with a fire before one, the next is planned from its own screen
		ls = append(ls, startLine{Map.Prepare, words.PrepareIs, words.PrepareTakes, func(*screen.Shared) screen.Effect {
			return screen.Go{To: screen.Plan, With: screen.Prepare{}}
		}})
	}
	return append(ls,
		startLine{Map.Smelt, words.SmeltIs, words.SmeltTakes, func(sh *screen.Shared) screen.Effect {
			return act.Alongside(sh, func(*screen.Shared) screen.Effect { return screen.Go{To: screen.Light} })
		}},
		startLine{Map.Look, words.LookIs, words.LookTakes, func(*screen.Shared) screen.Effect { return screen.Go{To: screen.Shelf} }})
}

// goesOn is a smelt to go on with; none where it has no id.
type goesOn struct {
	id, is, more string
	practice     bool
}

// unfinished is the smelt to go on with: the one at work, else the newest that
// was not finished, a practice last.
func unfinished(sh *screen.Shared) goesOn {
	if s := sh.Running; s.Is() {
		return burning(s)
	}
	var spare goesOn
	for _, l := range sh.Shelf.Lines {
		if !l.Unfinished() || l.Practice && spare.id != "" {
			continue
		}
		on := goesOn{l.ID, words.UnfinishedIs(l.ID, l.Phase, l.Charges), "", l.Practice}
		if !l.Practice {
			return on
		}
		spare = on
	}
	return spare
}

// burning is a smelt that is at work.
func burning(s session.Session) goesOn {
	r := s.Reading()
	on := goesOn{s.ID(), words.UnfinishedIs(s.ID(), r.Phase, 0), "", s.Light().Practice}
	if n := len(r.Charges); n > 0 {
		on.is, on.more = words.BurningIs(s.ID(), r.Phase), words.FarWentIn(r.Charges[n-1].Number, r.Wall(r.Charges[n-1].At))
	}
	return on
}

// bothBurn is how long ago the last of a second smelt that was not finished may be for it
// to count as burning beside the first.
const bothBurn = 12 * time.Hour

// otherUnfinished is the other fire that burns, or, before one of them was gone on with,
// the second that may.
func otherUnfinished(sh *screen.Shared) goesOn {
	if sh.Other.Is() {
		return burning(sh.Other)
	}
	first := unfinished(sh)
	if sh.Running.Is() || first.id == "" || first.practice {
		return goesOn{}
	}
	var burns []goesOn
	for _, l := range sh.Shelf.Lines {
		if l.MayBurn(sh.Now.Wall, bothBurn) {
			burns = append(burns, goesOn{l.ID, words.UnfinishedIs(l.ID, l.Phase, l.Charges), "", false})
		}
	}
	if len(burns) > 1 && burns[0].id == first.id {
		return burns[1]
	}
	return goesOn{}
}

// Practise begins a practice smelt with its light, which asks nothing.
func (s Screen) Practise() screen.Effect {
	f := s.usual
	return act.Kindle(entry.Light{Furnace: f.Furnace, Measures: f.Measures, Recipe: f.Recipe, Practice: true}, "", time.Time{}, 0)
}

// Update takes a key.
func (s Screen) Update(sh *screen.Shared, p screen.Pressed) (screen.Screen, screen.Effect) {
	t := screen.TypedOf(p.Key)
	ls := s.lines(sh)
	s.waits = false
	if !sh.Shelf.Known && !sh.Running.Is() { // which line comes first is not known yet
		switch {
		case key.Matches(t, Map.GoOn):
			s.waits = true
			return s, screen.Said(words.ShelfBeingRead)
		case key.Matches(t, Map.Choose), screen.Digit(t) != "":
			return s, screen.Refuse(words.ShelfBeingRead)
		}
	}
	if d := screen.Digit(t); d != "" && int(d[0]-'1') < len(ls) && d != "0" {
		return s, ls[d[0]-'1'].then(sh)
	}
	switch k := Map; {
	case key.Matches(t, k.Up):
		s.at = max(s.at-1, 0)
		return s, nil
	case key.Matches(t, k.Down):
		s.at = min(s.at+1, len(ls)-1)
		return s, nil
	case key.Matches(t, k.Choose):
		return s, ls[min(s.at, len(ls)-1)].then(sh)
	case key.Matches(t, k.Quit):
		return s, act.Leave(sh)
	}
	for _, l := range ls {
		if key.Matches(t, l.key) {
			return s, l.then(sh)
		}
	}
	return s, screen.Refuse(words.NoAct(screen.KeyLabel(string(t))))
}

// Hints are the lines and how to leave.
func (s Screen) Hints(sh *screen.Shared) []draw.KeyHint {
	var hs []draw.KeyHint
	for _, l := range s.lines(sh) {
		hs = append(hs, screen.Hint(l.key))
	}
	return append(hs, screen.Short(screen.Global.Views, words.ShortViews), screen.Hint(Map.Quit))
}
