package tui

import (
	"github.com/charmbracelet/bubbles/key"

	"chargehand/model/entry"
	"chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/paint"
)

// fieldKeys leave a field.
type fieldKeys struct{ Done, Back key.Binding }

var fieldMap = fieldKeys{Done: bind(words.DoDone, "enter"), Back: bind(words.DoBack, "esc")}

// field asks for one number or one line of words. A number field has no use
// for letters, so they may lead elsewhere: "off", or another way to say it.
type field struct {
	label, unit string
	input       input
	instead     []option
	bad         string // what is wrong with what was typed
	done        func(shared, input) (step, error)
}

// opened writes the number that is given in the person's unit.
func (f field) opened(sh shared) dialog {
	if f.input.exact.Known {
		f.input = prefilledWith(sh.theme.Units, f.input.exact, f.unit)
	}
	return f
}

func (f field) typing() bool { return true }

func (f field) update(sh shared, k Pressed) (dialog, step) {
	t := typedOf(k.Key)
	switch {
	case key.Matches(t, fieldMap.Back):
		return nil, said(words.NothingDone)
	case key.Matches(t, fieldMap.Done):
		st, err := f.done(sh, f.input)
		if err != nil {
			f.bad = err.Error()
			return f, refused(f.bad)
		}
		return nil, st
	}
	for _, o := range f.instead {
		if key.Matches(t, o.Binding) {
			return nil, o.then(sh)
		}
	}
	in, ok := f.input.typed(k.Key)
	if !ok {
		f.bad = words.NotInField(f.input.number)
		return f, refused(f.bad)
	}
	f.input, f.bad = in, ""
	return f, step{}
}

func (f field) ask(sh shared) *paint.Ask {
	hint := f.bad
	if hint == "" {
		hint = sh.theme.Units.Name(f.unit)
	}
	return &paint.Ask{Label: f.label, Value: f.input.text, Hint: hint}
}

// hints are the other ways to say it first: that enter is done everybody knows.
func (f field) hints() []paint.KeyHint {
	var hs []paint.KeyHint
	for _, o := range f.instead {
		hs = append(hs, hint(o.Binding))
	}
	return append(hs, hints(fieldMap.Done, fieldMap.Back)...)
}

func (f field) paint(cell.Grid, shared) {}

// limits are the least and the most of a quantity that a field takes. They are
// there to catch a slip of the finger, and wider than any small furnace.
type limits struct {
	unit        string
	least, most float64
}

// askNumber opens a field for a number.
func askNumber(label string, l limits, given entry.Maybe[float64], then func(float64) step, instead ...option) step {
	return step{ask: field{
		label: label, unit: l.unit, input: prefilledWith(words.Units{}, given, l.unit), instead: instead,
		done: func(sh shared, in input) (step, error) {
			v, err := in.value(sh.theme.Units, l)
			if err != nil {
				return step{}, err
			}
			return then(v), nil
		},
	}}
}

// askWords opens a field for a line of words.
func askWords(label, given string, then func(string) step) step {
	return step{ask: field{
		label: label, input: prefilled(given, false),
		done: func(_ shared, in input) (step, error) {
			if s := in.trimmed(); s != "" {
				return then(s), nil
			}
			return said(words.NothingDone), nil
		},
	}}
}
