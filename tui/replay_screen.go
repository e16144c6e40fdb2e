package tui

import (
	"github.com/charmbracelet/bubbles/key"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/paint"
	"chargehand/tui/theme"
)

// replayKeys are the keys of Replay. They move about and book nothing.
type replayKeys struct {
	Forth, Back, LeapForth, LeapBack, First, Last key.Binding
	Play, Turn, Faster, Slower                    key.Binding
	ByTime, ByEntry, ByWarning, Known, Chemistry  key.Binding
}

var replayMap = replayKeys{
	Play:      bind(words.DoPlay, "enter", "p", "0"),
	Forth:     bind(words.DoForth, "right", "6"),
	Back:      bind(words.DoBackStep, "left", "4"),
	Faster:    bind(words.DoFaster, "up", "8"),
	Slower:    bind(words.DoSlower, "down", "2"),
	Turn:      bind(words.DoTurn, "b", "-"),
	ByTime:    bind(words.DoByTime, "t", "1"),
	ByEntry:   bind(words.DoByEntry, "e", "3"),
	ByWarning: bind(words.DoByWarning, "w", "5"),
	Known:     bind(words.DoKnown, "k", "+"),
	LeapForth: bind(words.DoLeapForth, "pgdown", "9"),
	LeapBack:  bind(words.DoLeapBack, "pgup", "7"),
	First:     bind(words.DoToLight, "home", "/"),
	Last:      bind(words.DoToEnd, "end", "*"),
	Chemistry: fireMap.Chemistry,
}

func (k replayKeys) all() []key.Binding {
	return []key.Binding{
		k.Play, k.Forth, k.Back, k.Faster, k.Slower, k.Turn, k.ByTime, k.ByEntry, k.ByWarning, k.Known,
		k.LeapForth, k.LeapBack, k.First, k.Last, k.Chemistry,
	}
}

func (k replayKeys) repeating() []key.Binding {
	return []key.Binding{k.Forth, k.Back, k.LeapForth, k.LeapBack, k.Faster, k.Slower}
}

func (replay) name() screenID { return replayScreen }
func (replay) keys() keymap   { return replayMap }

// entered goes on where it stood, if it is the same smelt, and stands still.
func (r replay) entered(sh shared) screen {
	s := sh.smelt
	same := r.course.smelt.ID() == s.ID()
	begin := replay{course: courseOf(s), by: r.by, speed: r.speed, asSeen: r.asSeen}
	if r.course.smelt.ID() == "" {
		begin.speed, begin.asSeen = 3, true
	}
	if same {
		begin.course = begin.course.solved(begin.course.Whole.After(r.course.Whole))
	}
	if begin.course.Only {
		begin.asSeen = false
	}
	switch {
	case !s.Is():
		return replay{}
	case r.jump.set:
		return begin.to(r.jump.to)
	case same:
		return begin.to(r.at)
	}
	return begin.to(0)
}

// toReplay shows a moment of the smelt again.
func toReplay(l fold.Line) step {
	return step{replayAt: jump{to: l.At, set: true}, to: replayScreen}
}

func (r replay) update(sh shared, p Pressed) (screen, step) {
	t, k := typedOf(p.Key), replayMap
	if !sh.smelt.Is() {
		return r, refused(words.NoSmelt)
	}
	switch {
	case key.Matches(t, k.Chemistry):
		l, _ := paint.ReplayLayout(sh.w, sh.h)
		return r, otherChemistry(sh, l)
	case key.Matches(t, k.Play):
		r.plays, r.drawn = !r.plays, sh.now
		if r.plays && !r.back && r.at == r.course.Span {
			r = r.to(0)
		}
	case key.Matches(t, k.Turn):
		r.back = !r.back
	case key.Matches(t, k.Faster):
		r.speed = min(r.speed+1, len(speeds)-1)
		return r, said(words.SpeedOf(speeds[r.speed], r.back))
	case key.Matches(t, k.Slower):
		r.speed = max(r.speed-1, 0)
		return r, said(words.SpeedOf(speeds[r.speed], r.back))
	case key.Matches(t, k.ByTime):
		r.by = byTime
	case key.Matches(t, k.ByEntry):
		r.by = byEntry
	case key.Matches(t, k.ByWarning):
		r.by = byWarning
	case key.Matches(t, k.Known):
		if r.course.Only {
			return r, refused(words.OnlyAsWeKnow)
		}
		r.asSeen = !r.asSeen
		r = r.read()
	case key.Matches(t, k.First):
		r = r.to(0)
	case key.Matches(t, k.Last):
		r = r.to(r.course.Span)
	case key.Matches(t, k.LeapForth):
		r = r.to(r.at + oneLeap)
	case key.Matches(t, k.LeapBack):
		r = r.to(r.at - oneLeap)
	case key.Matches(t, k.Forth, k.Back):
		moved, ok := r.stepped(key.Matches(t, k.Back))
		if !ok {
			return r, refused(words.NoMoreSteps)
		}
		return moved, said(moved.says(sh.theme.Units))
	default:
		return r, refused(words.NoAct(keyLabel(string(t))))
	}
	return r, step{}
}

func (r replay) hints(sh shared) []paint.KeyHint {
	k := replayMap
	play := words.ShortPlay
	if r.plays {
		play = words.ShortStop
	}
	return []paint.KeyHint{
		short(k.Play, play), {Key: k.Back.Help().Key + k.Forth.Help().Key, Does: words.ShortStep},
		{Key: k.Faster.Help().Key + k.Slower.Help().Key, Does: words.ShortSpeed}, short(k.Turn, words.ShortTurn),
		{Key: k.ByTime.Help().Key + " " + k.ByEntry.Help().Key + " " + k.ByWarning.Help().Key, Does: words.ShortStepsBy},
		short(k.Known, words.ShortKnown), short(global.Views, words.ShortViews), hint(global.Back), chemistryHint(sh),
	}
}

func (r replay) paint(g cell.Grid, sh shared) {
	if !r.then.Is() {
		top(g, sh, words.DoReplay, "")
		g.Text(2, paint.TopRows+1, words.NoSmelt, sh.theme.Style(theme.Text))
		return
	}
	v := fireView(g, sh, r.then)
	v.Past = ""
	paint.Replay(g, sh.theme, r.then.Reading(), v, r.line())
}

// Frame is a moment of a replay that plays.
type Frame struct{ At entry.Stamp }

// playing tells whether a replay moves on the screen.
func (m Model) playing() bool {
	r, ok := m.screens[m.active].(replay)
	return ok && r.plays
}

// frame moves the replay on.
func (m Model) frame(at entry.Stamp) Model {
	if !m.playing() {
		return m
	}
	return m.withScreen(m.screens[replayScreen].(replay).moves(at))
}
