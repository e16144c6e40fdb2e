// Package shelf is the list of all smelts.
package shelf

import (
	"slices"

	"github.com/charmbracelet/bubbles/key"

	"chargehand/model/shelf"
	"chargehand/tui/act"
	"chargehand/tui/draw"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// Screen is the list of the smelts, newest first, then an invented one to look
// at. Practice is set aside: the last line leads to it, and back from it.
type Screen struct {
	at     int
	aside  bool // shows the practice
	order  order
	find   find
	marked []string // to be compared, in the order in which they were marked
}

// Keys are the keys of the shelf.
type Keys struct {
	screen.MoveKeys
	Open, Replay, Find, Sort, Mark, Compare, Log, Week key.Binding
}

// Map are those keys.
var Map = Keys{MoveKeys: screen.Move, Open: screen.Bind(words.DoOpen, "enter"), Replay: screen.Bind(words.DoReplayIt, "r"),
	Find: screen.Bind(words.DoFind, "i"), Sort: screen.Bind(words.DoSort, "o"),
	Mark: screen.Bind(words.DoMarkToCompare, "k"), Compare: screen.Bind(words.DoCompareMarked, "m"),
	Log: screen.Bind(words.DoLogs, "g"), Week: screen.Bind(words.DoInventedWeek, "w")}

// All of them, the weightiest first.
func (k Keys) All() []key.Binding {
	return append([]key.Binding{k.Open, k.Replay, k.Find, k.Sort, k.Mark, k.Compare, k.Log, k.Week}, k.MoveKeys.All()...)
}

func (Screen) ID() screen.ID       { return screen.Shelf }
func (Screen) Keys() screen.KeyMap { return Map }

// New is the list of the smelts at its top.
func New() Screen { return Screen{} }

// Listed always.
func (Screen) Listed(*screen.Shared) string { return words.DoShelf }

// Hints are what can be done.
func (s Screen) Hints(*screen.Shared) []draw.KeyHint {
	if s.find.typing {
		return []draw.KeyHint{screen.Short(Map.Open, words.DoFindEnds), screen.Short(screen.Global.Back, words.DoFindAll)}
	}
	back := screen.Hint(screen.Global.Back)
	if s.find.asks() || s.order != byDay {
		back = screen.Short(screen.Global.Back, words.DoFindAll)
	}
	hs := append(screen.Hints(Map.Open, Map.Replay, Map.Find, Map.Sort), screen.Short(Map.Mark, words.ShortMark), screen.Short(Map.Compare, words.ShortCompare), screen.Short(Map.Log, words.ShortLogs), screen.Short(Map.Week, words.ShortWeek), back)
	return append(hs, screen.Hints(screen.Global.Views, Map.Up, Map.Down)...)
}

// lines of the shelf. The one without a smelt turns to the other list.
func (s Screen) lines(sh *screen.Shared) []shelf.Summary {
	var shown, aside []shelf.Summary
	for _, l := range sh.Shelf.Lines {
		switch {
		case !s.find.holds(l):
		case l.ID == sh.Running.ID():
			shown = append(shown, sh.Running.Summary())
		case l.ID == sh.Other.ID():
			shown = append(shown, sh.Other.Summary())
		case l.Practice:
			aside = append(aside, l)
		default:
			shown = append(shown, l)
		}
	}
	shown, aside = s.order.sorted(shown), s.order.sorted(aside)
	if s.aside {
		return append(aside, shelf.Summary{})
	}
	if sh.Shelf.Demo != nil && s.find.holds(*sh.Shelf.Demo) {
		shown = append(shown, *sh.Shelf.Demo)
	}
	if len(aside) > 0 {
		shown = append(shown, shelf.Summary{})
	}
	return shown
}

// turns says what the line without a smelt leads to.
func (s Screen) turns() string {
	if s.aside {
		return words.ShelfBack
	}
	return words.ShelfPractice
}

// Update takes a key.
func (s Screen) Update(sh *screen.Shared, p screen.Pressed) (screen.Screen, screen.Effect) {
	if s.find.typing {
		return s.typed(p)
	}
	t := screen.TypedOf(p.Key)
	ls := s.lines(sh)
	at := min(s.at, max(len(ls)-1, 0))
	if to, ok := Map.Moved(t, at, len(ls), s.rowsAt(sh)); ok {
		s.at = max(to, 0)
		return s, nil
	}
	switch {
	case key.Matches(t, Map.Find):
		s.find = find{input: screen.Prefilled(s.find.input.Text(), false), typing: true}
		return s, nil
	case key.Matches(t, Map.Sort):
		s.order, s.at = (s.order+1)%orders, 0
		return s, nil
	case key.Matches(t, Map.Log):
		return s, screen.Go{To: screen.Logs}
	case key.Matches(t, Map.Week):
		return s, screen.Week{}
	case key.Matches(t, Map.Compare) && len(s.marked) < 2:
		return s, screen.Refuse(words.MarkTwoFirst)
	case key.Matches(t, Map.Compare):
		return s, screen.Go{To: screen.Compare, With: screen.Compares(slices.Clone(s.marked))}
	case !key.Matches(t, Map.Open, Map.Replay, Map.Mark):
		return s, screen.Refuse(words.NoAct(screen.KeyLabel(string(t))))
	case len(ls) == 0 && s.find.asks():
		return s, screen.Refuse(words.FoundNone)
	case len(ls) == 0:
		return s, screen.Refuse(words.ShelfBare)
	}
	l := ls[at]
	if key.Matches(t, Map.Mark) {
		return s.mark(l)
	}
	if l.ID == "" {
		return Screen{aside: !s.aside, marked: s.marked}, nil
	}
	on := screen.Fire
	if key.Matches(t, Map.Replay) || !l.Unfinished() { // what is over is looked at from its beginning on
		on = screen.Replay
	}
	open := func(*screen.Shared) screen.Effect { return screen.Open{Smelt: l.ID, On: on} }
	if l.Unfinished() && !l.Practice && l.ID != sh.Running.ID() && l.ID != sh.Other.ID() {
		return s, act.Alongside(sh, open)
	}
	if l.Unfinished() && l.Practice && l.ID != sh.Running.ID() {
		return s, act.LeavingRunning(sh, open)
	}
	return s, open(sh)
}

// mark marks a smelt to be compared, or takes its mark off.
func (s Screen) mark(l shelf.Summary) (screen.Screen, screen.Effect) {
	i := slices.Index(s.marked, l.ID)
	switch {
	case l.ID == "":
		return s, screen.Refuse(words.NotToCompare)
	case i >= 0:
		s.marked = slices.Delete(slices.Clone(s.marked), i, i+1)
	case len(s.marked) == mostMarked:
		return s, screen.Refuse(words.NoMoreToMark)
	default:
		s.marked = append(slices.Clone(s.marked), l.ID)
	}
	return s, screen.Said(words.Marked(len(s.marked)))
}

// mostMarked is how many are compared at the most.
const mostMarked = 4

// holds says how many smelts the list has.
func (s Screen) holds(ls []shelf.Summary) string {
	n := count(ls)
	if s.aside {
		return words.PracticeHolds(n)
	}
	return words.ShelfHolds(n)
}

// count is how many of the lines are smelts.
func count(ls []shelf.Summary) (n int) {
	for _, l := range ls {
		if l.ID != "" {
			n++
		}
	}
	return n
}

// Repeating are the keys that move and sort: they may come as fast as a hand can.
func (k Keys) Repeating() []key.Binding { return append(k.MoveKeys.Repeating(), k.Sort) }
