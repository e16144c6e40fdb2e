// Package light is the form that asks for furnace and measures before a fire is
// lit.
package light

import (
	"slices"

	"github.com/charmbracelet/bubbles/key"

	"chargehand/model/entry"
	modelwords "chargehand/model/words"
	"chargehand/tui/act"
	"chargehand/tui/draw"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// Screen asks once for the furnace and its measures. It opens with a
// starter, so that a fire can be lit at once and the numbers mended later.
type Screen struct {
	store    screen.Store     // for the furnaces of the last smelts
	usual    []screen.Starter // furnaces that are always offered
	starters []screen.Starter // to choose from, the person's own first
	starter  int
	row      int // the first one chooses the starter, the last one lights
	rows     []row
	bad      int // the row that is wrong, -1 for none
}

// row is one field of the form.
type row struct {
	id    field
	input screen.Input
	given string // as the starter gave it
}

// field names a field of the form.
type field int

const (
	furnaceName field = iota
	boreCm
	stackCm
	rimCm
	charcoalName
	charcoalKg
	oreName
	oreKg
	oreCount
	initials
	fields
)

// Keys are the keys of the form. Letters and digits are typed.
type Keys struct {
	Next, Previous, Left, Right, Done, Back key.Binding
}

// Map are those keys.
var Map = Keys{
	Next:     screen.Bind(words.DoNextRow, "down", "tab"),
	Previous: screen.Bind(words.DoPrevRow, "up", "shift+tab"),
	Left:     screen.Bind(words.DoStarterBack, "left"),
	Right:    screen.Bind(words.DoStarter, "right"),
	Done:     screen.Bind(words.DoLight, "enter"),
	Back:     screen.Bind(words.DoBack, "esc"),
}

// All of them.
func (k Keys) All() []key.Binding {
	return []key.Binding{k.Done, k.Next, k.Previous, k.Right, k.Left, k.Back}
}

// Repeating are the ones that move.
func (k Keys) Repeating() []key.Binding {
	return []key.Binding{k.Next, k.Previous, k.Left, k.Right}
}

// New is the form with furnaces to begin with. The store is read for the person's
// own ones.
func New(usual []screen.Starter, store screen.Store) Screen {
	return Screen{store: store, usual: usual, starters: usual, bad: -1}
}

func (Screen) ID() screen.ID       { return screen.Light }
func (Screen) Keys() screen.KeyMap { return Map }

// Listed never: the start leads here.
func (Screen) Listed(screen.Shared) string { return "" }

// Typing is true: the rows take text.
func (Screen) Typing() bool { return true }

// Entered begins anew, with the furnaces of the newest smelts being read; the
// cursor stands on the last row, so that enter lights.
func (f Screen) Entered(sh screen.Shared, _ any) (screen.Screen, screen.Effect) {
	return f.anew(sh.Units), f.readOwn(sh.Shelf.Lines)
}

func (f Screen) anew(u modelwords.Units) Screen {
	f.bad, f.starter, f.rows = -1, 0, nil
	f = f.with(f.starters[0], u)
	f.row = f.last()
	return f
}

func (f Screen) last() int { return int(fields) + 1 }

// with fills the form from a starter. Initials stay.
func (f Screen) with(s screen.Starter, u modelwords.Units) Screen {
	by := screen.NewInput(false)
	if len(f.rows) > 0 {
		by = f.rows[initials].input
	}
	f.rows = make([]row, fields)
	put := func(id field, in screen.Input) { f.rows[id] = row{id: id, input: in, given: in.Text()} }
	set := func(id field, text string) { put(id, screen.Prefilled(text, false)) }
	number := func(id field, v entry.Maybe[float64]) { put(id, screen.PrefilledWith(u, v, labels[id].unit)) }
	set(furnaceName, s.Furnace.Name)
	number(boreCm, act.Given(s.Furnace.Bore))
	number(stackCm, act.Given(s.Furnace.Stack))
	number(rimCm, act.Given(s.Furnace.Rim))
	for _, m := range slices.Backward(s.Measures) { // the first of each material stays
		switch m.What {
		case entry.Charcoal:
			set(charcoalName, m.Name)
			number(charcoalKg, act.Given(m.Mass))
		case entry.Ore:
			set(oreName, m.Name)
			number(oreKg, act.Given(m.Mass))
		}
	}
	n, _ := s.Recipe.Count(entry.Ore)
	number(oreCount, entry.Some(float64(n)))
	set(initials, "")
	f.rows[initials].input = by
	return f
}

// Update takes a key: up and down go from row to row, left and right change the
// starter on the first row and move the cursor of the others.
func (f Screen) Update(sh screen.Shared, p screen.Pressed) (screen.Screen, screen.Effect) {
	t := screen.TypedOf(p.Key)
	f.bad = -1
	switch k := Map; {
	case key.Matches(t, k.Next):
		f.row = min(f.row+1, f.last())
		return f, nil
	case key.Matches(t, k.Previous):
		f.row = max(f.row-1, 0)
		return f, nil
	case key.Matches(t, k.Left, k.Right) && f.row == f.last():
		return f, screen.Refuse(words.StarterRow)
	case key.Matches(t, k.Right) && f.row == 0:
		return f.choose(sh, f.starter+1), nil
	case key.Matches(t, k.Left) && f.row == 0:
		return f.choose(sh, f.starter-1), nil
	case key.Matches(t, k.Done) && f.row == f.last():
		l, at, err := f.light(f.starters[f.starter], sh.Units)
		if err != nil {
			f.bad, f.row = int(at), int(at)+1
			return f, screen.Refuse(err.Error())
		}
		return f, act.Kindle(l, f.by())
	case key.Matches(t, k.Done):
		f.row++
		return f, nil
	case f.row == 0 || f.row == f.last():
		return f, screen.Refuse(words.NotARow)
	}
	r := f.rows[f.row-1]
	in, ok := r.input.Typed(p.Key)
	if !ok {
		return f, screen.Refuse(words.NotInField(r.input.Number()))
	}
	rows := append([]row{}, f.rows...)
	rows[f.row-1].input = in
	f.rows = rows
	return f, nil
}

func (f Screen) choose(sh screen.Shared, n int) Screen {
	f.starter = (n + len(f.starters)) % len(f.starters)
	return f.with(f.starters[f.starter], sh.Units)
}

// Hints are how to go about in it.
func (Screen) Hints(screen.Shared) []draw.KeyHint {
	return screen.Hints(Map.Done, Map.Previous, Map.Next, Map.Right, Map.Back)
}
