// Package light is the form that asks for furnace and measures before a fire is
// lit, and that puts right afterwards what it was lit with.
package light

import (
	"cmp"
	"slices"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/entry"
	"chargehand/model/shelf"
	modelwords "chargehand/model/words"
	"chargehand/tui/act"
	"chargehand/tui/draw"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// Screen asks once for the furnace and its measures. It opens with a
// starter, so that a fire can be lit at once and the numbers mended later: with the
// same form, which then begins with the smelt as it was lit.
type Screen struct {
	store    screen.Store     // for the furnaces of the last smelts
	usual    []screen.Starter // furnaces that are always offered
	starters []screen.Starter // to choose from, the person's own first
	starter  int
	row      int // the first one chooses the starter, the last one lights
	rows     []row
	bad      field // the field that is wrong, noField for none
	units    modelwords.Units
	wanted   string          // the starter that it was left with, where that is not among those read so far
	mends    bool            // of the smelt shown, what it was lit with
	resumed  bool            // rows stand as they were left half typed
	asked    any             // what it was entered with
	was      entry.Light     // the one that is put right
	before   []shelf.Summary // smelts that ended not long ago, the newest first
}

// row is one field of the form.
type row struct {
	id    field
	input screen.Input
	given string // as the starter gave it
	own   bool   // somebody typed into it, be it what stood there
}

// field names a field of the form.
type field int

const (
	furnaceName field = iota
	boreCm
	stackCm
	rimCm
	baseCm
	charcoalName
	charcoalKg
	charcoalLot
	oreName
	oreKg
	oreCount
	oreLot
	leftIn // of the smelt before, asked where there was one not long ago
	litDay
	litAt
	trying
	initials
	fields
	noField field = -1
)

// fieldsAsked are the fields of the form, in their order: the day only where it is put
// right, the initials only where somebody lights.
func (f Screen) fieldsAsked() []field {
	asked := make([]field, 0, fields)
	for id := range fields {
		if f.mends && id == initials || !f.mends && id == litDay || id == leftIn && !f.again() {
			continue
		}
		asked = append(asked, id)
	}
	return asked
}

// at is the field of a row, noField for the first row and the last.
func (f Screen) at(row int) field {
	asked := f.fieldsAsked()
	if row < 1 || row > len(asked) {
		return noField
	}
	return asked[row-1]
}

// rowOf is the row of a field.
func (f Screen) rowOf(id field) int { return slices.Index(f.fieldsAsked(), id) + 1 }

// Keys are the keys of the form. Letters and digits are typed.
type Keys struct {
	Next, Previous, Left, Right, Done, Last, Back key.Binding
}

// Map are those keys.
var Map = Keys{
	Next:     screen.Bind(words.DoNextRow, "down", "tab"),
	Previous: screen.Bind(words.DoPrevRow, "up", "shift+tab"),
	Left:     screen.Bind(words.DoStarterBack, "left"),
	Right:    screen.Bind(words.DoStarter, "right"),
	Done:     screen.Bind(words.DoFormEnter, "enter"),
	Last:     screen.Bind(words.DoLastRow, "pgdown"),
	Back:     screen.Bind(words.DoBack, "esc"),
}

// All of them.
func (k Keys) All() []key.Binding {
	return []key.Binding{k.Done, k.Next, k.Previous, k.Last, k.Right, k.Left, k.Back}
}

// Repeating are the ones that move.
func (k Keys) Repeating() []key.Binding {
	return []key.Binding{k.Next, k.Previous, k.Last, k.Left, k.Right}
}

// New is the form with furnaces to begin with. The store is read for the person's
// own ones.
func New(usual []screen.Starter, store screen.Store) Screen {
	return Screen{store: store, usual: usual, starters: usual, bad: noField}
}

func (Screen) ID() screen.ID       { return screen.Light }
func (Screen) Keys() screen.KeyMap { return Map }

// Listed never: the start leads here.
func (Screen) Listed(*screen.Shared) string { return "" }

// Typing is true: the rows take text.
func (Screen) Typing() bool { return true }

// Entered begins anew at the top, with the furnaces of the newest smelts being read, or
// with the smelt shown as it was lit.
func (f Screen) Entered(sh *screen.Shared, with any) (screen.Screen, screen.Effect) {
	if _, mends := with.(screen.AsLit); mends {
		return f.asLit(sh), nil
	}
	f.asked = with
	f.before = ended(sh)
	f.mends, f.starters = false, append(ofHouse(sh, with), stocked(sh, f.usual)...)
	return f.anew(sh.Units), f.readOwn(sh.Shelf.Lines)
}

func (f Screen) anew(u modelwords.Units) Screen {
	f.bad, f.starter, f.row, f.rows, f.resumed = noField, 0, 0, nil, false
	f.units, f.wanted = u, ""
	return f.with(f.starters[0], u)
}

func (f Screen) last() int { return len(f.fieldsAsked()) + 1 }

// with fills the form from a starter. Initials and the time stay.
func (f Screen) with(s screen.Starter, u modelwords.Units) Screen {
	was := f.rows
	f.rows = make([]row, fields)
	put := func(id field, in screen.Input) { f.rows[id] = row{id: id, input: in, given: in.Text()} }
	set := func(id field, text string) { put(id, screen.Prefilled(text, false)) }
	number := func(id field, v entry.Maybe[float64]) { put(id, screen.PrefilledWith(u, v, labels[id].unit)) }
	set(furnaceName, s.Furnace.Name)
	number(boreCm, act.Given(s.Furnace.Bore))
	number(stackCm, act.Given(s.Furnace.Stack))
	number(rimCm, act.Given(s.Furnace.Rim))
	number(baseCm, act.Given(s.Furnace.TuyereBase))
	charcoal, ore := usualOf(s.Measures, entry.Charcoal), usualOf(s.Measures, entry.Ore)
	set(charcoalName, charcoal.Name)
	number(charcoalKg, act.Given(charcoal.Mass))
	set(oreName, ore.Name)
	number(oreKg, act.Given(ore.Mass))
	set(charcoalLot, lotOf(s, entry.Charcoal).Name)
	set(oreLot, lotOf(s, entry.Ore).Name)
	n, _ := s.Recipe.Count(entry.Ore)
	number(oreCount, entry.Some(float64(n)))
	for _, id := range []field{leftIn, litDay, litAt, initials} {
		if set(id, ""); was != nil {
			f.rows[id] = was[id]
		}
	}
	set(trying, s.Trying)
	if was != nil && was[trying].input.Text() != was[trying].given { // somebody's own words stay
		f.rows[trying].input = was[trying].input
	}
	return f
}

// usualOf is the first measure of a material.
func usualOf(ms []entry.Measure, w entry.What) entry.Measure {
	for _, m := range ms {
		if m.What == w {
			return m
		}
	}
	return entry.Measure{}
}

// lotOf is the lot that the first charge takes a material from, else the last one of it:
// the one that counts where a charge names none.
func lotOf(s screen.Starter, w entry.What) entry.Lot {
	var of entry.Lot
	for _, l := range s.Lots {
		if l.What == w {
			of = l
		}
	}
	for _, p := range s.Recipe {
		if p.What != w || p.Lot == "" {
			continue
		}
		of = entry.Lot{Name: p.Lot, What: w}
		for _, l := range s.Lots {
			if string(l.ID()) == p.Lot || l.Name == p.Lot {
				of = l
			}
		}
	}
	return of
}

// Update takes a key: up and down go from row to row and around, left and right change
// the starter on the first row and move the cursor of the others.
func (f Screen) Update(sh *screen.Shared, p screen.Pressed) (screen.Screen, screen.Effect) {
	to, e := f.updated(sh, p)
	next, form := to.(Screen)
	if was := f.at(f.row); form && was != noField && next.row != f.row && len(next.rows) > int(was) {
		next.rows = slices.Clone(next.rows)
		next.rows[was].input = next.rows[was].input.Left()
		to = next
	}
	return to, e
}

// updated is the form after a key.
func (f Screen) updated(sh *screen.Shared, p screen.Pressed) (screen.Screen, screen.Effect) {
	t := screen.TypedOf(p.Key)
	f.bad = noField
	rows := f.last() + 1
	switch k := Map; {
	case key.Matches(t, k.Next):
		f.row = (f.row + 1) % rows
		return f, nil
	case key.Matches(t, k.Previous):
		f.row = (f.row + rows - 1) % rows
		return f, nil
	case key.Matches(t, k.Last):
		f.row = f.last()
		return f, nil
	case key.Matches(t, k.Left, k.Right) && f.row == f.last():
		return f, screen.Refuse(words.StarterRow)
	case key.Matches(t, k.Right) && f.row == 0:
		return f.choose(sh, f.starter+1), nil
	case key.Matches(t, k.Left) && f.row == 0:
		return f.choose(sh, f.starter-1), nil
	case key.Matches(t, k.Done) && f.row == f.last():
		return f.done(sh)
	case key.Matches(t, k.Done):
		f.row++
		return f, nil
	case f.resumed && t == "x" && f.at(f.row) == noField && f.mends:
		return f.asLit(sh), nil
	case f.resumed && t == "x" && f.at(f.row) == noField:
		return f.anew(sh.Units), nil
	case f.at(f.row) == noField:
		return f, screen.Refuse(words.NotARow)
	}
	r := f.rows[f.at(f.row)]
	in, ok := r.input.Typed(p.Key)
	if !ok {
		return f, screen.Refuse(words.NotInField(r.input.Number()))
	}
	typed := append([]row{}, f.rows...)
	typed[r.id].input, typed[r.id].own = in, r.own || p.Key.Type == tea.KeyRunes
	f.rows = typed
	return f, nil
}

// done lights, or puts the light right. Numbers that are guesses still are asked about
// once.
func (f Screen) done(sh *screen.Shared) (screen.Screen, screen.Effect) {
	wrong := func(at field, err error) (screen.Screen, screen.Effect) {
		f.bad, f.row = at, f.rowOf(at)
		return f, screen.Refuse(err.Error())
	}
	l, at, err := f.light(f.starters[f.starter], sh.Units)
	if err != nil {
		return wrong(at, err)
	}
	if f.mends {
		e, at, err := f.mended(sh, l)
		if err != nil {
			return wrong(at, err)
		}
		return f, e
	}
	lit, uncertain, err := f.litThen(sh)
	if err != nil {
		return wrong(litAt, err)
	}
	if l.LeftIn, err = f.leftIn(); err != nil {
		return wrong(leftIn, err)
	}
	l.Trying = f.text(trying)
	l.Rested = f.rested(cmp.Or(lit, sh.Now.Wall))
	kindle, by := act.Kindle(l, f.by(), lit, uncertain), ""
	if ramp := f.ramp(l); len(ramp) > 0 {
		kindle, by = screen.Each{kindle, screen.Keep{{Event: entry.Recipe{Next: ramp[0].Parts, Ramp: ramp}}}}, l.Plan.Name
	}
	kindle = screen.Each{kindle, screen.Say(func(sh *screen.Shared) string {
		return words.LitWith(sh.Smelt.ID(), by, entry.NewerWords(l))
	})}
	if n := f.guesses(); n > 0 {
		return f, screen.Question(words.LightOnGuesses(n), func(*screen.Shared) screen.Effect { return kindle })
	}
	return f, kindle
}

func (f Screen) choose(sh *screen.Shared, n int) Screen {
	f.starter, f.wanted = (n+len(f.starters))%len(f.starters), ""
	return f.with(f.starters[f.starter], sh.Units)
}

// Hints are how to go about in it.
func (f Screen) Hints(*screen.Shared) []draw.KeyHint {
	k := Map
	enter := words.DoNextRow
	if f.row == f.last() {
		enter = f.does()
	}
	hints := []draw.KeyHint{screen.Short(k.Done, enter)}
	if f.row != f.last() {
		hints = append(hints, screen.Short(k.Last, words.DoTo(f.does())))
	}
	hints = append(hints, screen.Hints(k.Previous, k.Next)...)
	if f.row == 0 && !f.mends {
		hints = append(hints, screen.Hint(k.Right))
	}
	return append(hints, screen.Hint(k.Back))
}

// does is what enter does on the last row.
func (f Screen) does() string {
	if f.mends {
		return words.DoMendLight
	}
	return words.DoLight
}
