package tui

import (
	"slices"

	"github.com/charmbracelet/bubbles/key"

	"chargehand/model/entry"
	"chargehand/model/words"
	"chargehand/tui/paint"
)

// lightForm asks once for the furnace and its measures. It opens with a
// starter, so that a fire can be lit at once and the numbers mended later.
type lightForm struct {
	starter int
	row     int // the first one chooses the starter, the last one lights
	rows    []lightRow
	bad     int // the row that is wrong, -1 for none
}

// lightRow is one field of the form.
type lightRow struct {
	id    lightField
	input input
	given string // as the starter gave it
}

// lightField names a field of the form.
type lightField int

const (
	furnaceName lightField = iota
	boreCm
	stackCm
	rimCm
	charcoalName
	charcoalKg
	oreName
	oreKg
	oreCount
	initials
	lightFields
)

// lightKeys are the keys of the form. Letters and digits are typed.
type lightKeys struct {
	Next, Previous, Left, Right, Done, Back key.Binding
}

var lightMap = lightKeys{
	Next:     bind(words.DoNextRow, "down", "tab"),
	Previous: bind(words.DoPrevRow, "up", "shift+tab"),
	Left:     bind(words.DoStarterBack, "left"),
	Right:    bind(words.DoStarter, "right"),
	Done:     bind(words.DoLight, "enter"),
	Back:     bind(words.DoBack, "esc"),
}

func (k lightKeys) all() []key.Binding {
	return []key.Binding{k.Done, k.Next, k.Previous, k.Right, k.Left, k.Back}
}
func (k lightKeys) repeating() []key.Binding {
	return []key.Binding{k.Next, k.Previous, k.Left, k.Right}
}

func newLightForm(starters []Starter, u words.Units) lightForm {
	f := lightForm{bad: -1}
	if len(starters) > 0 {
		f = f.with(starters[0], u)
	}
	f.row = f.last()
	return f
}

func (lightForm) name() screenID { return lightScreen }
func (lightForm) keys() keymap   { return lightMap }
func (lightForm) typing() bool   { return true }

// entered begins anew; the cursor stands on the last row, so that enter lights.
func (lightForm) entered(sh shared) screen { return newLightForm(sh.starters, sh.theme.Units) }

func (f lightForm) last() int { return int(lightFields) + 1 }

// with fills the form from a starter. Initials stay.
func (f lightForm) with(s Starter, u words.Units) lightForm {
	by := input{}
	if len(f.rows) > 0 {
		by = f.rows[initials].input
	}
	f.rows = make([]lightRow, lightFields)
	put := func(id lightField, in input) { f.rows[id] = lightRow{id: id, input: in, given: in.text} }
	set := func(id lightField, text string) { put(id, prefilled(text, false)) }
	number := func(id lightField, v entry.Maybe[float64]) { put(id, prefilledWith(u, v, lightLabels[id].unit)) }
	set(furnaceName, s.Furnace.Name)
	number(boreCm, given(s.Furnace.Bore))
	number(stackCm, given(s.Furnace.Stack))
	number(rimCm, given(s.Furnace.Rim))
	for _, m := range slices.Backward(s.Measures) { // the first of each material stays
		switch m.What {
		case entry.Charcoal:
			set(charcoalName, m.Name)
			number(charcoalKg, given(m.Mass))
		case entry.Ore:
			set(oreName, m.Name)
			number(oreKg, given(m.Mass))
		}
	}
	n, _ := s.Recipe.Count(entry.Ore)
	number(oreCount, entry.Some(float64(n)))
	set(initials, "")
	f.rows[initials].input = by
	return f
}

func (f lightForm) update(sh shared, p Pressed) (screen, step) {
	t := typedOf(p.Key)
	f.bad = -1
	switch k := lightMap; {
	case key.Matches(t, k.Next):
		f.row = min(f.row+1, f.last())
		return f, step{}
	case key.Matches(t, k.Previous):
		f.row = max(f.row-1, 0)
		return f, step{}
	case key.Matches(t, k.Left, k.Right) && f.row != 0:
		return f, refused(words.StarterRow)
	case key.Matches(t, k.Right):
		return f.choose(sh, f.starter+1), step{}
	case key.Matches(t, k.Left):
		return f.choose(sh, f.starter-1), step{}
	case key.Matches(t, k.Done) && f.row == f.last():
		l, at, err := f.light(sh.starters[f.starter], sh.theme.Units)
		if err != nil {
			f.bad, f.row = int(at), int(at)+1
			return f, refused(err.Error())
		}
		return f, step{light: &l, by: f.by(), say: sayLit}
	case key.Matches(t, k.Done):
		f.row++
		return f, step{}
	case f.row == 0 || f.row == f.last():
		return f, refused(words.NotARow)
	}
	r := f.rows[f.row-1]
	in, ok := r.input.typed(p.Key)
	if !ok {
		return f, refused(words.NotInField(r.input.number))
	}
	rows := append([]lightRow{}, f.rows...)
	rows[f.row-1].input = in
	f.rows = rows
	return f, step{}
}

func (f lightForm) choose(sh shared, n int) lightForm {
	f.starter = (n + len(sh.starters)) % len(sh.starters)
	return f.with(sh.starters[f.starter], sh.theme.Units)
}

func (lightForm) hints(shared) []paint.KeyHint {
	return hints(lightMap.Done, lightMap.Previous, lightMap.Next, lightMap.Right, lightMap.Back)
}
