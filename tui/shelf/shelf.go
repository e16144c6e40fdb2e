// Package shelf is the list of all smelts.
package shelf

import (
	"strconv"

	"github.com/charmbracelet/bubbles/key"

	"chargehand/model/entry"
	"chargehand/model/shelf"
	modelwords "chargehand/model/words"
	"chargehand/tui/act"
	"chargehand/tui/cell"
	"chargehand/tui/draw"
	"chargehand/tui/screen"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// Screen is the list of the smelts, newest first, then an invented one to look
// at. Practice is set aside: the last line leads to it, and back from it.
type Screen struct {
	at    int
	aside bool // shows the practice
}

// Keys are the keys of the shelf.
type Keys struct {
	screen.MoveKeys
	Open, Replay key.Binding
}

// Map are those keys.
var Map = Keys{MoveKeys: screen.Move, Open: screen.Bind(words.DoOpen, "enter"), Replay: screen.Bind(words.DoReplayIt, "r")}

// All of them, the weightiest first.
func (k Keys) All() []key.Binding {
	return append([]key.Binding{k.Open, k.Replay}, k.MoveKeys.All()...)
}

func (Screen) ID() screen.ID       { return screen.Shelf }
func (Screen) Keys() screen.KeyMap { return Map }

// New is the list of the smelts at its top.
func New() Screen { return Screen{} }

// Listed always.
func (Screen) Listed(screen.Shared) string { return words.DoShelf }

// Hints are what can be done.
func (Screen) Hints(screen.Shared) []draw.KeyHint {
	return screen.Hints(Map.Open, Map.Replay, Map.Up, Map.Down, screen.Global.Views, screen.Global.Back)
}

// lines of the shelf. The one without a smelt turns to the other list.
func (s Screen) lines(sh screen.Shared) []shelf.Summary {
	var shown, aside []shelf.Summary
	for _, l := range sh.Shelf.Lines {
		switch {
		case l.ID == sh.Running.ID():
			shown = append(shown, sh.Running.Summary())
		case l.Practice:
			aside = append(aside, l)
		default:
			shown = append(shown, l)
		}
	}
	if s.aside {
		return append(aside, shelf.Summary{})
	}
	if sh.Shelf.Demo != nil {
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
func (s Screen) Update(sh screen.Shared, p screen.Pressed) (screen.Screen, screen.Effect) {
	t := screen.TypedOf(p.Key)
	ls := s.lines(sh)
	at := min(s.at, max(len(ls)-1, 0))
	if to, ok := Map.Moved(t, at, len(ls), max(1, shelfRows(sh.H)-1)); ok {
		s.at = max(to, 0)
		return s, nil
	}
	switch {
	case !key.Matches(t, Map.Open, Map.Replay):
		return s, screen.Refuse(words.NoAct(screen.KeyLabel(string(t))))
	case len(ls) == 0:
		return s, screen.Refuse(words.ShelfBare)
	}
	l := ls[at]
	if l.ID == "" {
		return Screen{aside: !s.aside}, nil
	}
	on := screen.Fire
	if key.Matches(t, Map.Replay) {
		on = screen.Replay
	}
	open := func(screen.Shared) screen.Effect { return screen.Open{Smelt: l.ID, On: on} }
	if l.Unfinished() && l.ID != sh.Running.ID() {
		return s, act.LeavingRunning(sh, open)
	}
	return s, open(sh)
}

func shelfRows(h int) int { return max(1, h-draw.TopRows-draw.FootRows-1) }

// Paint shows the smelts as a table.
func (s Screen) Paint(g cell.Grid, sh screen.Shared) {
	th := sh.Theme
	ls := s.lines(sh)
	screen.Top(g, sh, words.DoShelf, s.holds(ls))
	body := screen.Body(g)
	switch {
	case len(ls) == 0 && sh.Spinner != "":
		g.Sub(cell.Rect{X: 2, Y: body.Y + 1, W: 2, H: 1}).Lay(sh.Spinner, th.Style(theme.Now))
		g.Text(4, body.Y+1, words.ShelfBeingRead, th.Style(theme.Text))
		return
	case len(ls) == 0:
		g.Wrap(cell.Rect{X: 2, Y: body.Y + 1, W: body.W - 4, H: 2}, words.ShelfBare, th.Style(theme.Text))
		return
	}
	at := min(s.at, len(ls)-1)
	first := screen.FirstShown(at, len(ls), body.H-1)
	t := screen.Table{Columns: columns(body.W), Heads: true, Picked: at - first}
	for _, l := range ls[first:min(first+body.H-1, len(ls))] {
		cells := []string{l.ID, markOf(l), kgOrNothing(sh.Units, l.Bloom), modelwords.Phase(l.Phase), strconv.Itoa(l.Charges),
			kgOrNothing(sh.Units, l.Ore), kgOrNothing(sh.Units, l.Charcoal), l.Furnace}
		if l.ID == "" {
			cells = append([]string{s.turns()}, make([]string, len(cells)-1)...)
		}
		t.Rows = append(t.Rows, screen.Row{Cells: cells})
	}
	t.Paint(g.Sub(body), th)
}

// holds says how many smelts the list has.
func (s Screen) holds(ls []shelf.Summary) string {
	n := 0
	for _, l := range ls {
		if l.ID != "" {
			n++
		}
	}
	if s.aside {
		return words.PracticeHolds(n)
	}
	return words.ShelfHolds(n)
}

// columns are those that fit, the ones that matter most first to stay: which
// smelt, what is special about it, what came of it.
func columns(w int) []screen.Column {
	cs := []screen.Column{
		{Head: words.ShelfSmelt, Width: 30}, {Head: words.ShelfMarks, Width: 20}, {Head: words.ShelfBloom, Width: 10, Right: true},
		{Head: words.ShelfPhase, Width: 11}, {Head: words.ShelfCharges, Width: 8, Right: true}, {Head: words.ShelfOre, Width: 9, Right: true},
		{Head: words.ShelfCharcoal, Width: 9, Right: true}, {Head: words.ShelfFurnace, Width: 30},
	}
	if w < 60 {
		cs[0].Width, cs[1].Width = 24, 11
	}
	return screen.Fit(cs, w)
}

func kgOrNothing(u modelwords.Units, m entry.Maybe[entry.Kilogram]) string {
	if !m.Known {
		return ""
	}
	return u.Kg(m.Value)
}

// markOf says what is special about a smelt.
func markOf(l shelf.Summary) string {
	switch {
	case l.Invented:
		return words.MarkInvented
	case l.Imported && l.Undated:
		return words.MarkUndated
	case l.Imported:
		return words.MarkImported
	case l.Unfinished():
		return words.MarkUnfinished
	}
	return ""
}
