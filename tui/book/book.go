// Package book is the Book: the journal of a smelt, to look through and put right.
package book

import (
	"cmp"
	"slices"
	"time"

	"github.com/charmbracelet/bubbles/key"

	"chargehand/model/entry"
	"chargehand/model/fold"
	modelwords "chargehand/model/words"
	"chargehand/tui/act"
	"chargehand/tui/draw"
	"chargehand/tui/scene"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// Screen is the Book: every entry of a smelt in the order in which things
// happened, the newest at the bottom. The cursor stays on its entry while
// others come in; 0 is the newest, whichever that is.
type Screen struct {
	seq      uint64
	filter   int
	messages bool // the page of what the book had to put right, in place of the entries
	scroll   screen.Scroll
}

// Keys are the keys of the Book.
type Keys struct {
	screen.MoveKeys
	Strike, Amend, Undo, Late, Filter, Replay, Messages key.Binding
}

// Map are those keys.
var Map = Keys{
	MoveKeys: screen.Move,
	Strike:   screen.Bind(words.DoStrike, "u"),
	Amend:    screen.Bind(words.DoAmend, "a", "enter"),
	Undo:     screen.Bind(words.DoRestore, "o"),
	Late:     screen.Bind(words.DoLate, "e"),
	Filter:   screen.Bind(words.DoFilter, "k"),
	Replay:   screen.Bind(words.DoReplayHere, "r"),
	Messages: screen.Bind(words.DoMessages, "m"),
}

// All of them, the weightiest first.
func (k Keys) All() []key.Binding {
	return append([]key.Binding{k.Amend, k.Strike, k.Undo, k.Late, k.Filter, k.Replay, k.Messages}, k.MoveKeys.All()...)
}

func (Screen) ID() screen.ID       { return screen.Book }
func (Screen) Keys() screen.KeyMap { return Map }

// New is the Book at the newest entry.
func New() Screen { return Screen{} }

// Listed while there is a smelt, or a message of the book.
func (Screen) Listed(sh *screen.Shared) string {
	if !sh.Smelt.Is() && len(sh.Messages) == 0 {
		return ""
	}
	return words.DoBook
}

// Entered begins with the messages that nobody has read, else at the newest entry.
func (j Screen) Entered(sh *screen.Shared, _ any) (screen.Screen, screen.Effect) {
	return Screen{filter: j.filter, messages: sh.Unread > 0}, nil
}

// Back goes from the messages to the entries.
func (j Screen) Back() (screen.Screen, bool) { return Screen{filter: j.filter}, j.messages }

// Hints are what can be done to an entry.
func (j Screen) Hints(sh *screen.Shared) []draw.KeyHint {
	if j.reads(sh) {
		return messageHints
	}
	return append(screen.Hints(Map.All()[:6]...), screen.Hint(screen.Global.Views), screen.Hint(screen.Global.Back))
}

// Update takes a key.
func (j Screen) Update(sh *screen.Shared, p screen.Pressed) (screen.Screen, screen.Effect) {
	t, k := screen.TypedOf(p.Key), Map
	if j.reads(sh) {
		return j.scrolled(sh, p)
	}
	lines := j.Lines(sh)
	at := j.index(lines)
	if to, ok := k.Moved(t, at, len(lines), max(1, tableRows(sh.H)-1)); ok {
		j.seq = 0
		if to < len(lines)-1 {
			j.seq = lines[to].Seq()
		}
		return j, nil
	}
	switch {
	case key.Matches(t, k.Filter):
		return j, j.askFilter()
	case key.Matches(t, k.Late):
		return j, act.EnterLate(sh)
	case key.Matches(t, k.Messages):
		return Screen{filter: j.filter, messages: true}, nil
	case !key.Matches(t, k.Strike, k.Amend, k.Undo, k.Replay):
		return j, screen.Refuse(words.NoAct(screen.KeyLabel(string(t))))
	case at < 0:
		return j, screen.Refuse(words.NoEntryHere)
	case key.Matches(t, k.Replay):
		return j, screen.Go{To: screen.Replay, With: screen.Moment(lines[at].At)}
	case screen.RightsIn(sh.Smelt) < screen.Mendable:
		return j, screen.Refuse(act.WhyNot(sh.Smelt))
	case key.Matches(t, k.Undo):
		return j, act.Undo(sh, lines[at])
	case key.Matches(t, k.Strike) && act.ClockRighted(lines[at]):
		return j, act.CrossOut(sh, lines[at])
	case !entry.IsAct(lines[at].Event) && lines[at].Entry.Kind() != entry.KindLight:
		return j, screen.Refuse(words.NotAnAct)
	case key.Matches(t, k.Strike):
		return j, act.CrossOut(sh, lines[at])
	}
	return j, askAmend(sh, lines[at])
}

// index is where the cursor stands among the lines, -1 when there are none.
func (j Screen) index(lines []fold.Line) int {
	if j.seq != 0 {
		if i := slices.IndexFunc(lines, func(l fold.Line) bool { return l.Seq() == j.seq }); i >= 0 {
			return i
		}
	}
	return len(lines) - 1
}

// Lines are the entries that the filter shows, as they happened.
func (j Screen) Lines(sh *screen.Shared) []fold.Line {
	var ls []fold.Line
	for l := range sh.Smelt.Lines() {
		if filters[j.filter].shows(l) {
			ls = append(ls, l)
		}
	}
	slices.SortStableFunc(ls, func(a, b fold.Line) int {
		return cmp.Or(cmp.Compare(a.At, b.At), cmp.Compare(a.Seq(), b.Seq()))
	})
	return ls
}

// filters are the kinds that the Book can be narrowed to; the first is how it
// opens.
var filters = []struct {
	key, word string
	shows     func(fold.Line) bool
}{
	{"a", words.FilterActs, func(l fold.Line) bool {
		return entry.IsAct(l.Event) || scene.OfKind(l, entry.KindLight, entry.KindClockJump) || unknown(l)
	}},
	{"c", words.FilterCharges, func(l fold.Line) bool {
		return scene.OfKind(l, entry.KindCharge, entry.KindFill, entry.KindLevel, entry.KindDip, entry.KindPoke)
	}},
	{"b", words.FilterBlast, func(l fold.Line) bool {
		return scene.OfKind(l, entry.KindBlast, entry.KindRod, entry.KindTuyere)
	}},
	{"l", words.FilterLooks, func(l fold.Line) bool {
		return scene.OfKind(l, entry.KindLook, entry.KindTemperature, entry.KindTap, entry.KindSample)
	}},
	{"w", words.FilterWeighings, func(l fold.Line) bool { return scene.OfKind(l, entry.KindWeigh) }},
	{"n", words.FilterNotes, func(l fold.Line) bool { return scene.OfKind(l, entry.KindNote) }},
	{"m", words.FilterMended, func(l fold.Line) bool { return l.StruckBy != 0 || l.AmendedBy != 0 }},
	{"e", words.FilterAll, func(fold.Line) bool { return true }},
}

func unknown(l fold.Line) bool {
	_, is := l.Event.(entry.Unknown)
	return is
}

// askFilter asks what to show.
func (j Screen) askFilter() screen.Effect {
	var list []screen.Option
	for i, f := range filters {
		list = append(list, screen.Opt(f.key, f.word, func(*screen.Shared) screen.Effect { return screen.Put{Screen: Screen{filter: i}} }))
	}
	return screen.Choose(words.DoFilter, list...)
}

// askAmend asks what to change about an entry, then the change.
func askAmend(sh *screen.Shared, l fold.Line) screen.Effect {
	at := screen.Opt("t", words.AmendTime, func(sh *screen.Shared) screen.Effect {
		given := sh.Smelt.Wall(l).Format(modelwords.Clock)
		return act.AskWhen(sh, words.AmendTime, given, func(at time.Time) screen.Effect { return act.Amend(sh, l, nil, at, act.WholeMinutes) })
	})
	if l.Entry.Kind() == entry.KindLight {
		return screen.Go{To: screen.Light, With: screen.AsLit{}}
	}
	ask, ok := amendAsks[l.Event.Kind()]
	list := []screen.Option{at}
	if act.Movable(sh, l) {
		list = append(list, screen.Opt("o", words.MoveTo(screen.NameOf(sh, sh.Other)), func(sh *screen.Shared) screen.Effect { return act.MoveToOther(sh, l) }))
	}
	if !ok {
		return screen.Choose(words.AmendWhat(act.Describe(sh.Units, sh.Smelt, l)), list...)
	}
	return screen.Choose(words.AmendWhat(act.Describe(sh.Units, sh.Smelt, l)), append(list, screen.Opt("w", words.AmendEvent, func(sh *screen.Shared) screen.Effect {
		return ask(sh, l.Event, func(ev entry.Event) screen.Effect { return act.Amend(sh, l, ev, time.Time{}, 0) })
	}))...)
}

// amendAsks are the forms of the kinds whose content can be changed.
var amendAsks = map[entry.Kind]act.Form{
	entry.KindCharge: act.AskCharge, entry.KindFill: act.AskFill, entry.KindRecipe: act.AskRecipe,
	entry.KindBlast: act.AskBlast, entry.KindDip: act.AskDip, entry.KindTap: act.AskTap, entry.KindLook: act.AskLook,
	entry.KindTemperature: act.AskTemperature, entry.KindWeigh: act.AskWeigh, entry.KindNote: act.AskNote,
	entry.KindArch: act.AskArch, entry.KindTuyere: act.AskTuyere, entry.KindSample: act.AskSample,
	entry.KindHandOver: act.AskHandOver, entry.KindIncident: act.AskIncident, entry.KindExtract: act.AskExtract,
	entry.KindWall: act.AskWall, entry.KindWeather: act.AskWeather,
}
