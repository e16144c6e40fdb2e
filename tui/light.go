package tui

import (
	"errors"
	"strconv"
	"strings"

	"github.com/charmbracelet/bubbles/key"

	"chargehand/model/entry"
	"chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/paint"
	"chargehand/tui/theme"
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

func newLightForm(starters []Starter) lightForm {
	f := lightForm{bad: -1}
	if len(starters) > 0 {
		f = f.with(starters[0])
	}
	f.row = f.last()
	return f
}

func (lightForm) name() screenID { return lightScreen }
func (lightForm) keys() keymap   { return lightMap }
func (lightForm) typing() bool   { return true }

// entered begins anew; the cursor stands on the last row, so that enter lights.
func (lightForm) entered(sh shared) screen { return newLightForm(sh.starters) }

func (f lightForm) last() int { return int(lightFields) + 1 }

// with fills the form from a starter. Initials stay.
func (f lightForm) with(s Starter) lightForm {
	by := input{}
	if len(f.rows) > 0 {
		by = f.rows[initials].input
	}
	f.rows = make([]lightRow, lightFields)
	set := func(id lightField, text string, number bool) {
		f.rows[id] = lightRow{id: id, input: prefilled(text, number), given: text}
	}
	set(furnaceName, s.Furnace.Name, false)
	set(boreCm, given(s.Furnace.Bore), true)
	set(stackCm, given(s.Furnace.Stack), true)
	set(rimCm, given(s.Furnace.Rim), true)
	for _, m := range s.Measures {
		switch m.What {
		case entry.Charcoal:
			set(charcoalName, m.Name, false)
			set(charcoalKg, given(m.Mass), true)
		case entry.Ore:
			set(oreName, m.Name, false)
			set(oreKg, given(m.Mass), true)
		}
	}
	n, _ := s.Recipe.Count(entry.Ore)
	set(oreCount, strconv.FormatFloat(float64(n), 'f', -1, 64), true)
	set(initials, "", false)
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
		l, at, err := f.light(sh.starters[f.starter])
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
	return f.with(sh.starters[f.starter])
}

// light reads the form. What still stands as the starter gave it is a guess;
// a blank is not recorded. The error is about the field it names.
func (f lightForm) light(s Starter) (entry.Light, lightField, error) {
	l := entry.Light{Furnace: s.Furnace}
	var bad error
	var at lightField
	fail := func(id lightField, err error) {
		if bad == nil {
			bad, at = err, id
		}
	}
	text := func(id lightField) string { return f.rows[id].input.trimmed() }
	number := func(id lightField, lim limits) (float64, bool) {
		if text(id) == "" {
			return 0, false
		}
		v, err := f.rows[id].input.value(lim.unit, lim.least, lim.most)
		if err != nil {
			fail(id, errors.New(words.InField(lightLabels[id].label, err.Error())))
		}
		return v, err == nil
	}
	length := func(id lightField) entry.Maybe[entry.Centimetre] {
		v, ok := number(id, limits{"cm", 5, 500})
		return entry.Maybe[entry.Centimetre]{Value: entry.Centimetre(v), Known: ok}
	}
	measure := func(name, kg lightField, w entry.What) entry.Measure {
		m := entry.Measure{Name: text(name), What: w}
		if m.Name == "" {
			fail(name, errors.New(words.InField(lightLabels[name].label, words.NameMissing)))
		}
		v, ok := number(kg, limits{"kg", 0.01, 100})
		m.Mass = entry.Maybe[entry.Kilogram]{Value: entry.Kilogram(v), Known: ok}
		m.Guessed = ok && f.untouched(kg)
		return m
	}
	if l.Furnace.Name = text(furnaceName); l.Furnace.Name == "" {
		fail(furnaceName, errors.New(words.InField(lightLabels[furnaceName].label, words.NameMissing)))
	}
	l.Furnace.Bore, l.Furnace.Stack, l.Furnace.Rim = length(boreCm), length(stackCm), length(rimCm)
	if l.Furnace.Rim.Known && l.Furnace.Stack.Known && l.Furnace.Rim.Value < l.Furnace.Stack.Value {
		fail(rimCm, errors.New(words.RimBelowMark))
	}
	l.Furnace.Guessed = s.Furnace.Guessed && f.untouched(boreCm) && f.untouched(stackCm)
	charcoal, ore := measure(charcoalName, charcoalKg, entry.Charcoal), measure(oreName, oreKg, entry.Ore)
	if strings.EqualFold(charcoal.Name, ore.Name) {
		fail(oreName, errors.New(words.SameMeasure))
	}
	l.Measures = []entry.Measure{charcoal, ore}
	n, _ := number(oreCount, measures)
	l.Recipe = entry.Parts{
		{What: entry.Charcoal, Measure: charcoal.Name, Count: entry.Some(entry.Count(1))},
		{What: entry.Ore, Measure: ore.Name, Count: entry.Some(entry.Count(n))},
	}
	return l, at, bad
}

// untouched tells whether a field still stands as the starter gave it.
func (f lightForm) untouched(id lightField) bool { return f.rows[id].input.text == f.rows[id].given }

// by is the initials typed into the form.
func (f lightForm) by() string { return f.rows[initials].input.trimmed() }

func (lightForm) hints(shared) []paint.KeyHint {
	return hints(lightMap.Done, lightMap.Previous, lightMap.Next, lightMap.Right, lightMap.Back)
}

// lightLabels are the labels and units of the form's fields.
var lightLabels = [lightFields]struct{ label, unit string }{
	furnaceName:  {words.FormFurnace, ""},
	boreCm:       {words.FormBore, "cm"},
	stackCm:      {words.FormStack, "cm"},
	rimCm:        {words.FormRim, "cm"},
	charcoalName: {words.FormCharcoalName, ""},
	charcoalKg:   {words.FormCharcoalKg, "kg"},
	oreName:      {words.FormOreName, ""},
	oreKg:        {words.FormOreKg, "kg"},
	oreCount:     {words.FormOreCount, ""},
	initials:     {words.FormInitials, ""},
}

func (f lightForm) paint(g cell.Grid, sh shared) {
	top(g, sh, words.DoSmelt, words.LightAsks)
	body := bodyOf(g)
	n := f.last() + 1
	first := 0 // scrolled so that the row is seen
	if body.H < n {
		first = max(0, min(f.row-body.H/2, n-body.H))
	}
	blank := 0
	if body.H >= n+4 {
		blank = 1
	}
	label := 2
	for _, l := range lightLabels {
		label = max(label, g.Width(l.label))
	}
	for i := first; i < n && i-first < body.H; i++ {
		y := body.Y + i - first
		if i > 0 {
			y += blank
		}
		if i == f.last() {
			y += blank
		}
		f.paintRow(g.Sub(cell.Rect{X: 1, Y: y, W: body.W - 2, H: 1}), sh, i, label)
	}
}

func (f lightForm) paintRow(g cell.Grid, sh shared, i, label int) {
	th := sh.theme
	mark := " "
	if i == f.row {
		mark = th.Marks().Picked
	}
	g.Text(0, 0, mark, th.Style(theme.Now))
	switch {
	case i == 0:
		g.Text(2, 0, words.FormStarter, th.Style(theme.Quiet))
		name := sh.starters[f.starter].Name
		x := label + 4 + g.Text(label+4, 0, name, th.Style(theme.Strong))
		g.Text(x+2, 0, words.StarterOf(f.starter+1, len(sh.starters)), th.Style(theme.Quiet))
	case i == f.last():
		style := th.Style(theme.Strong)
		if i == f.row {
			style = th.Style(theme.Picked)
		}
		g.Text(2, 0, " "+words.DoLight+" ", style)
	default:
		r := f.rows[i-1]
		l := lightLabels[r.id]
		g.Text(2, 0, l.label, th.Style(theme.Quiet))
		style := th.Style(theme.Strong)
		if i == f.row {
			style = th.Style(theme.Field)
		}
		x := label + 4 + g.Text(label+4, 0, r.input.text, style)
		if i == f.row {
			x += g.Text(x, 0, th.Marks().Cursor, th.Style(theme.Now))
		}
		x += 1 + g.Text(x+1, 0, l.unit, th.Style(theme.Quiet))
		switch {
		case i-1 == f.bad:
			g.Text(x+2, 0, th.Marks().Look+" "+words.FormWrong, th.Style(theme.Look))
		case r.input.text == "" && r.id != initials:
			g.Text(x+2, 0, words.FormBlank, th.Style(theme.Quiet))
		case r.input.number && f.untouched(r.id):
			g.Text(x+2, 0, words.FormGuess, th.Style(theme.Quiet))
		}
	}
}
