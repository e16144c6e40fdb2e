package replay

import (
	"time"

	"github.com/charmbracelet/bubbles/key"

	"chargehand/model/entry"
	"chargehand/model/session"
	"chargehand/tui/cell"
	"chargehand/tui/draw"
	"chargehand/tui/scene"
	"chargehand/tui/screen"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// Keys are the keys of Replay. They move about and book nothing.
type Keys struct {
	Forth, Back, LeapForth, LeapBack, First, Last key.Binding
	Play, Turn, Faster, Slower                    key.Binding
	ByTime, ByEntry, ByWarning, Known, Chemistry  key.Binding
}

// Map are those keys.
var Map = Keys{
	Play:      screen.Bind(words.DoPlay, "enter", "p", "0"),
	Forth:     screen.Bind(words.DoForth, "right", "6"),
	Back:      screen.Bind(words.DoBackStep, "left", "4"),
	Faster:    screen.Bind(words.DoFaster, "up", "8"),
	Slower:    screen.Bind(words.DoSlower, "down", "2"),
	Turn:      screen.Bind(words.DoTurn, "b", "-"),
	ByTime:    screen.Bind(words.DoByTime, "t", "1"),
	ByEntry:   screen.Bind(words.DoByEntry, "e", "3"),
	ByWarning: screen.Bind(words.DoByWarning, "w", "5"),
	Known:     screen.Bind(words.DoKnown, "k", "+"),
	LeapForth: screen.Bind(words.DoLeapForth, "pgdown", "9"),
	LeapBack:  screen.Bind(words.DoLeapBack, "pgup", "7"),
	First:     screen.Bind(words.DoToLight, "home", "/"),
	Last:      screen.Bind(words.DoToEnd, "end", "*"),
	Chemistry: scene.ChemistryKey,
}

// All of them.
func (k Keys) All() []key.Binding {
	return []key.Binding{
		k.Play, k.Forth, k.Back, k.Faster, k.Slower, k.Turn, k.ByTime, k.ByEntry, k.ByWarning, k.Known,
		k.LeapForth, k.LeapBack, k.First, k.Last, k.Chemistry,
	}
}

// Repeating are the ones that move.
func (k Keys) Repeating() []key.Binding {
	return []key.Binding{k.Forth, k.Back, k.LeapForth, k.LeapBack, k.Faster, k.Slower, k.ByTime, k.ByEntry, k.ByWarning}
}

func (Screen) ID() screen.ID       { return screen.Replay }
func (Screen) Keys() screen.KeyMap { return Map }

// New has been to no smelt yet.
func New() Screen { return Screen{} }

// Listed while there is a smelt.
func (Screen) Listed(sh *screen.Shared) string {
	if !sh.Smelt.Is() {
		return ""
	}
	return words.DoReplay
}

// Entered goes on where it stood, if it is the same smelt, or begins at the Moment
// that it is handed; it stands still.
func (r Screen) Entered(sh *screen.Shared, with any) (screen.Screen, screen.Effect) {
	s := sh.Smelt
	if !s.Is() {
		return Screen{}, nil
	}
	same := r.day.smelt.ID() == s.ID()
	begin := Screen{day: timelineOf(s), by: r.by, speed: r.speed, asSeen: r.asSeen}
	if r.day.smelt.ID() == "" {
		begin.asSeen = true
	}
	if !same {
		begin.speed = speedFor(begin.day.Span)
	}
	if same {
		begin.day = begin.day.solved(begin.day.Whole.After(r.day.Whole))
	}
	if begin.day.Only {
		begin.asSeen = false
	}
	at, jumps := with.(screen.Moment)
	switch {
	case jumps:
		return begin.to(time.Duration(at)), nil
	case same:
		return begin.to(r.at), nil
	}
	if s.Running() {
		return begin.to(0), nil
	}
	return begin.to(s.MostToSee()), screen.Said(words.ReplayOpens(Map.Play.Help().Key, Map.First.Help().Key, Map.Last.Help().Key))
}

// Update takes a key.
func (r Screen) Update(sh *screen.Shared, p screen.Pressed) (screen.Screen, screen.Effect) {
	t, k := screen.TypedOf(p.Key), Map
	if !sh.Smelt.Is() {
		return r, screen.Refuse(words.NoSmelt)
	}
	switch {
	case key.Matches(t, k.Chemistry):
		l, _ := layoutOf(sh.W, sh.H)
		return r, scene.Chemistry(l)
	case key.Matches(t, k.Play):
		r.plays, r.drawn = !r.plays, sh.Now
		if r.plays && !r.back {
			if r.at == r.day.Span {
				r = r.to(0)
			}
			if n := len(r.day.Charges); n > 0 && r.at < r.day.Charges[0] { // nothing is to be seen before
				r = r.to(r.day.Charges[0])
			}
		}
	case key.Matches(t, k.Turn):
		r.back = !r.back
	case key.Matches(t, k.Faster):
		r.speed = min(r.speed+1, len(speeds)-1)
		return r, screen.Said(words.SpeedOf(speeds[r.speed], r.back))
	case key.Matches(t, k.Slower):
		r.speed = max(r.speed-1, 0)
		return r, screen.Said(words.SpeedOf(speeds[r.speed], r.back))
	case key.Matches(t, k.ByTime):
		return r.stepBy(sh, byTime)
	case key.Matches(t, k.ByEntry):
		return r.stepBy(sh, byEntry)
	case key.Matches(t, k.ByWarning):
		return r.stepBy(sh, byWarning)
	case key.Matches(t, k.Known):
		if r.day.Only {
			return r, screen.Refuse(words.OnlyAsWeKnow)
		}
		r.asSeen = !r.asSeen
		r = r.read()
	case key.Matches(t, k.First):
		r = r.to(0)
	case key.Matches(t, k.Last):
		r = r.to(r.day.Span)
	case key.Matches(t, k.LeapForth):
		r = r.to(r.at + oneLeap)
	case key.Matches(t, k.LeapBack):
		r = r.to(r.at - oneLeap)
	case key.Matches(t, k.Forth, k.Back):
		return r.step(sh, key.Matches(t, k.Back))
	default:
		return r, screen.Refuse(words.NoAct(screen.KeyLabel(string(t))))
	}
	return r, nil
}

// stepBy goes one step by what the arrows move by from now on, in the direction in which
// it plays.
func (r Screen) stepBy(sh *screen.Shared, by steps) (screen.Screen, screen.Effect) {
	r.by = by
	return r.step(sh, r.back)
}

// step goes one step, and says what happened there.
func (r Screen) step(sh *screen.Shared, back bool) (screen.Screen, screen.Effect) {
	moved, ok := r.stepped(back)
	if !ok {
		return r, screen.Refuse(words.NoMoreSteps)
	}
	return moved, screen.Said(moved.says(sh.Units))
}

// Hints are how to go about.
func (r Screen) Hints(sh *screen.Shared) []draw.KeyHint {
	k := Map
	play := words.ShortPlay
	if r.plays {
		play = words.ShortStop
	}
	return []draw.KeyHint{
		screen.Short(k.Play, play), {Key: k.Back.Help().Key + k.Forth.Help().Key, Does: words.ShortStep},
		{Key: k.Faster.Help().Key + k.Slower.Help().Key, Does: words.ShortSpeed}, screen.Short(k.Turn, words.ShortTurn),
		{Key: k.ByTime.Help().Key + " " + k.ByEntry.Help().Key + " " + k.ByWarning.Help().Key, Does: words.ShortStepsBy},
		screen.Short(k.Known, words.ShortKnown), screen.Short(screen.Global.Views, words.ShortViews), screen.Hint(screen.Global.Back), scene.ChemistryHint(sh),
	}
}

// Paint shows the picture of the moment, and the time line under it.
func (r Screen) Paint(g cell.Grid, sh *screen.Shared) {
	if !r.then.Is() {
		screen.Top(g, sh, words.DoReplay, "")
		g.Text(2, draw.TopRows+1, words.NoSmelt, sh.Theme.Style(theme.Text))
		return
	}
	v := scene.Of(g, sh, r.then, key.Binding{})
	v.Past, v.Gone = "", true
	paint(g, sh.Pen(), r.then.Reading(), v, r.line())
}

// Playing tells whether it moves by itself.
func (r Screen) Playing() bool { return r.plays }

// Frame moves it on.
func (r Screen) Frame(at entry.Stamp) screen.Screen { return r.moves(at) }

// The smelts of Replay that the solver works at.
const (
	moment = iota
	throughout
)

// Works are the moment shown and the whole of the day. While it plays its moment
// is a new one all the time, so the day comes first.
func (r Screen) Works() []screen.Work {
	now, day := screen.Work{N: moment, Smelt: r.then}, screen.Work{N: throughout, Smelt: r.day.Whole}
	if r.plays {
		return []screen.Work{day, now}
	}
	return []screen.Work{now, day}
}

// Worked takes in what was solved.
func (r Screen) Worked(n int, s session.Session) screen.Screen {
	if n == moment {
		r.then = s
	} else {
		r.day = r.day.solved(s)
	}
	return r
}

// At is the moment that it shows, on the smelt's clock.
func (r Screen) At() time.Duration { return r.at }

// Then is the smelt as it was at that moment.
func (r Screen) Then() session.Session { return r.then }
