// Package rehearsal is the screen from which a rehearsal is begun, held and left, and which opens the seal at its end: what
// happened, what the screen believed and what was done, on one time line. In a rehearsal it stands where the start does.
package rehearsal

import (
	"time"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/entry"
	"chargehand/model/rehearse"
	"chargehand/model/session"
	modelwords "chargehand/model/words"
	"chargehand/tui/act"
	"chargehand/tui/draw"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// Screen is that of the rehearsal shown.
type Screen struct {
	smelt  string // that end is of
	end    rehearse.End
	err    error
	busy   string        // the smelt whose end is being worked out
	shafts bool          // shown instead of the lanes
	at     time.Duration // walked to on the line, since light; 0 for nowhere
}

// Keys are its keys.
type Keys struct {
	GoOn, Again, Another, Practise, Mishaps, Why, Shafts, Back, On, Leave key.Binding
}

// Map are those keys.
var Map = Keys{
	GoOn:     screen.Bind(words.DoGoOnHere, "enter"),
	Again:    screen.Bind(words.DoSameAgain, "g"),
	Another:  screen.Bind(words.DoAnotherNumber, "n"),
	Practise: screen.Bind(words.DoPractise, "p"),
	Mishaps:  screen.Bind(words.DoMishaps, "m"),
	Why:      screen.Bind(words.DoWhy, "w"),
	Shafts:   screen.Bind(words.DoShafts, "k"),
	Back:     screen.Bind(words.DoWalkBack, "left"),
	On:       screen.Bind(words.DoWalkOn, "right"),
	Leave:    screen.Bind(words.DoLeaveIt, "x", "q"),
}

// All of them, the weightiest first.
func (k Keys) All() []key.Binding {
	return []key.Binding{k.GoOn, k.Again, k.Another, k.Practise, k.Mishaps, k.Why, k.Shafts, k.Back, k.On, k.Leave}
}

// Repeating are the ones that walk.
func (k Keys) Repeating() []key.Binding { return []key.Binding{k.Back, k.On} }

// New is the screen before anything is known.
func New() Screen { return Screen{} }

func (Screen) ID() screen.ID       { return screen.Start }
func (Screen) Keys() screen.KeyMap { return Map }

// Listed always.
func (Screen) Listed(*screen.Shared) string { return words.DoRehearsal }

// ended brings the end of a rehearsal.
type ended struct {
	smelt string
	end   rehearse.End
	err   error
}

// Entered works out how the rehearsal shown went, once its seal is open.
func (s Screen) Entered(sh *screen.Shared, _ any) (screen.Screen, screen.Effect) {
	s.at = 0
	id := sh.Smelt.ID()
	if !IsOpened(sh.Smelt) || s.smelt == id || s.busy == id {
		return s, nil
	}
	s.busy = id
	entries := sh.Smelt.Entries()
	return s, screen.Run{Cmd: func() tea.Msg {
		end, err := rehearse.EndOf(entries)
		return ended{id, end, err}
	}}
}

// IsOpened tells whether the seal of a smelt is open.
func IsOpened(s session.Session) bool {
	if !s.Is() || !s.Light().Rehearsal {
		return false
	}
	for l := range s.Backward() {
		if _, opened := l.Event.(entry.Opened); opened {
			return true
		}
	}
	return false
}

// Receive takes what was worked out.
func (s Screen) Receive(_ *screen.Shared, msg tea.Msg) (screen.Screen, screen.Effect, bool) {
	switch msg := msg.(type) {
	case ended:
		s.smelt, s.end, s.err, s.busy = msg.smelt, msg.end, msg.err, ""
		return s, nil, true
	case screen.Read:
		return s, nil, true
	}
	return s, nil, false
}

// shows tells whether the end of the smelt shown is known.
func (s Screen) shows(sh *screen.Shared) bool {
	return s.smelt != "" && s.smelt == sh.Smelt.ID() && s.err == nil
}

// sealed is the seal of the smelt shown.
func sealed(sh *screen.Shared) (entry.Sealed, bool) {
	if !sh.Smelt.Is() {
		return entry.Sealed{}, false
	}
	for _, e := range sh.Smelt.Entries() {
		if seal, ok := e.Event.(entry.Sealed); ok {
			return seal, true
		}
	}
	return entry.Sealed{}, false
}

// chosen is what was chosen to go wrong, as it is asked for again.
func chosen(seal entry.Sealed) string {
	if len(seal.Mishaps) > 0 {
		return seal.Mishaps[0]
	}
	return ""
}

// leaves goes to another rehearsal, and asks first while one is at work.
func leaves(sh *screen.Shared, r screen.Rehearse) screen.Effect {
	r.Fresh = true
	return act.LeavingRunning(sh, func(*screen.Shared) screen.Effect { return r })
}

// Update takes a key.
func (s Screen) Update(sh *screen.Shared, p screen.Pressed) (screen.Screen, screen.Effect) {
	t := screen.TypedOf(p.Key)
	seal, _ := sealed(sh)
	open := IsOpened(sh.Smelt)
	switch k := Map; {
	case key.Matches(t, k.GoOn) && !open && sh.Smelt.Is():
		return s, screen.Go{To: screen.Fire}
	case key.Matches(t, k.GoOn, k.Again):
		return s, leaves(sh, screen.Rehearse{Number: seal.Number, Mishap: chosen(seal), UnderWay: begunUnderWay(sh.Smelt)})
	case key.Matches(t, k.Another):
		return s, leaves(sh, screen.Rehearse{})
	case key.Matches(t, k.Practise):
		return s, leaves(sh, screen.Rehearse{UnderWay: true})
	case key.Matches(t, k.Mishaps):
		return s, mishaps(seal.Number)
	case key.Matches(t, k.Why):
		return s, screen.Go{To: screen.Why}
	case key.Matches(t, k.Shafts):
		s.shafts = !s.shafts
		return s, nil
	case key.Matches(t, k.Back):
		return s.walks(-1), nil
	case key.Matches(t, k.On):
		return s.walks(1), nil
	case key.Matches(t, k.Leave):
		return s, act.Leave(sh)
	}
	return s, screen.Refuse(words.NoAct(screen.KeyLabel(string(t))))
}

// begunUnderWay tells whether a crew worked first.
func begunUnderWay(s session.Session) bool {
	for _, e := range s.Entries() {
		if r, ok := e.Event.(entry.Recipe); ok {
			return len(r.Ramp) > 0 && e.Key == ""
		}
		if e.Key != "" {
			return false
		}
	}
	return false
}

// mishaps asks what is to go wrong in the same furnace.
func mishaps(number int64) screen.Effect {
	all := rehearse.Mishaps()
	list := []screen.Option{screen.Opt("0", words.MishapNone, func(sh *screen.Shared) screen.Effect {
		return leaves(sh, screen.Rehearse{Number: number, Mishap: "none", UnderWay: true})
	})}
	for i, m := range all {
		list = append(list, screen.Opt(string(rune('1'+i)), modelwords.Mishap(m), func(sh *screen.Shared) screen.Effect {
			return leaves(sh, screen.Rehearse{Number: number, Mishap: string(m), UnderWay: true})
		}))
	}
	return screen.Choose(words.DoMishaps, list...)
}

// walks goes to the next moment at which something happened, one way or the other.
func (s Screen) walks(by int) Screen {
	moments := moments(s.end)
	i := 0
	for i < len(moments) && moments[i] < s.at {
		i++
	}
	switch here := i < len(moments) && moments[i] == s.at; {
	case by > 0 && here:
		i++
	case by < 0:
		i--
	}
	if i >= 0 && i < len(moments) {
		s.at = moments[i]
	}
	return s
}

// Hints are what can be done.
func (s Screen) Hints(sh *screen.Shared) []draw.KeyHint {
	k := Map
	if IsOpened(sh.Smelt) {
		hints := append(screen.Hints(k.Again, k.Another), screen.Short(k.Why, words.WhyTitle), screen.Short(k.Shafts, words.ShortShafts))
		return append(hints, screen.Hints(k.Mishaps, k.Back, k.On, k.Leave, screen.Global.Views)...)
	}
	return screen.Hints(k.GoOn, k.Another, k.Practise, k.Mishaps, k.Leave, screen.Global.Views)
}
