package screen

import (
	"errors"
	"strings"
	"time"
	"unicode"

	"github.com/charmbracelet/bubbles/key"

	"chargehand/model/entry"
	modelwords "chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/draw"
	"chargehand/tui/words"
)

// FieldKeys leave a field.
var FieldKeys = struct{ Done, Back key.Binding }{Done: Bind(words.DoDone, "enter"), Back: Bind(words.DoBack, "esc")}

// Field asks for one number or one line of words. A number field has no use
// for letters, so they may lead elsewhere: "off", or another way to say it; before a
// digit is typed, not behind one.
type Field struct {
	Label, Unit string
	Blank       string // what a blank means, said beside the unit
	Input       Input
	Instead     []Option
	Done        func(*Shared, Input) (Effect, error)
	Left        func(*Shared) Effect         // what leaving it does, nil for nothing: an optional last step
	Keeps       func(*Shared, string) string // what is half typed, as it will still be true later; nil where it is
	draft       bool                         // half typed earlier, and no key since
	cleared     string                       // what x took away, until another key
	bad         string                       // what is wrong with what was typed
}

// Answered is an effect: a field was answered, on the way to an act.
type Answered struct{ Label, Text string }

func (Answered) effect() {}

// Opened writes the number that is given in the person's unit.
func (f Field) Opened(sh *Shared) Dialog {
	if f.Input.fresh && f.Input.exact.Known {
		f.Input = PrefilledWith(sh.Units, f.Input.exact, f.Unit)
	}
	return f
}

// Typing is true: a field takes text.
func (f Field) Typing() bool { return true }

// Stays as long as a hand may be away: a field that closes by itself loses nothing.
func (f Field) Stays() time.Duration { return Readable }

// Half is what is typed so far, nothing while it stands as it was given.
func (f Field) Half(sh *Shared) string {
	if f.Input.fresh && !f.draft {
		return ""
	}
	return f.keeps(sh)
}

func (f Field) keeps(sh *Shared) string {
	if f.Keeps == nil {
		return f.Input.Text()
	}
	return f.Keeps(sh, f.Input.Text())
}

// Place names the field among what is half typed.
func (f Field) Place() string { return f.Label }

// Resumed is the field with what was half typed at a time of the day. Words go on where
// they ended; a number is taken as it stands or typed anew, since nobody sees a digit
// that is put behind others.
func (f Field) Resumed(text, at string) Dialog {
	f.Input = Prefilled(text, f.Input.number)
	f.Input.fresh, f.draft, f.bad = f.Input.number, true, words.HalfTypedAt(at, f.Input.number)
	return f
}

// Update takes a key into the field, or ends it.
func (f Field) Update(sh *Shared, k Pressed) (Dialog, Effect) {
	t := TypedOf(k.Key)
	if f.draft {
		f.draft, f.bad = false, ""
		if t == "x" {
			f.cleared, f.bad = f.Input.Text(), words.DraftCleared
			f.Input = NewInput(f.Input.number)
			return f, nil
		}
	}
	if was := f.cleared; was != "" {
		f.cleared, f.bad = "", ""
		if key.Matches(t, editKeys.DeleteCharacterBackward) {
			f.Input = Prefilled(was, f.Input.number)
			f.Input.fresh = false
			return f, nil
		}
	}
	switch {
	case key.Matches(t, FieldKeys.Back) && f.Left != nil:
		return nil, f.Left(sh)
	case key.Matches(t, FieldKeys.Back):
		return nil, Said(words.NothingDone)
	case key.Matches(t, FieldKeys.Done):
		e, err := f.Done(sh, f.Input)
		if refused, ok := e.(Refuse); ok && err == nil {
			err = errors.New(string(refused))
		}
		if err != nil { // the step at fault stays, with what was typed
			f.bad = err.Error()
			return f, Refuse(f.bad)
		}
		return nil, Each{Answered{f.Label, f.keeps(sh)}, e}
	}
	for _, o := range f.Instead {
		if typed := !f.Input.fresh && f.Input.Trimmed() != ""; typed {
			break // a letter in a number, an o for a nought: it voids the number, and means nothing else
		}
		if key.Matches(t, o.Binding) {
			return nil, o.Then(sh)
		}
	}
	in, ok := f.Input.Typed(k.Key)
	if letter := []rune(string(t)); !ok && f.Input.number && len(letter) == 1 && unicode.IsLetter(letter[0]) {
		// No number has a letter in it: what was typed is not what was meant.
		typed := f.Input.Trimmed()
		if f.Input.fresh {
			typed = ""
		}
		was := f
		f.Input = NewInput(true)
		f.bad = words.NumberVoid(typed, KeyLabel(string(t)))
		if strings.Contains(ActKeys, string(t)) {
			return f, Past{Closed: words.NumberNotKept(f.Label, typed), Was: was, Else: Refuse(f.bad)}
		}
		return f, Refuse(f.bad)
	}
	if !ok {
		f.bad = words.NotInField(f.Input.number)
		return f, Refuse(f.bad)
	}
	f.Input, f.bad = in, ""
	return f, nil
}

// Leaves is what leaving it does where another key or the time closes it, nil for nothing.
func (f Field) Leaves(sh *Shared) Effect {
	if f.Left == nil {
		return nil
	}
	return f.Left(sh)
}

// Ask is the field in the foot.
func (f Field) Ask(sh *Shared) *draw.Ask {
	hint := f.bad
	if hint == "" {
		hint = sh.Units.Name(f.Unit)
		if hint != "" && f.Blank != "" {
			hint += ", "
		}
		hint += f.Blank
	}
	return &draw.Ask{Label: f.Label, Value: func(width int) string { return f.Input.Draw(sh.Theme, width) }, Hint: hint}
}

// Hints are the other ways to say it first: that enter is done everybody knows.
func (f Field) Hints() []draw.KeyHint {
	var hs []draw.KeyHint
	for _, o := range f.Instead {
		hs = append(hs, Hint(o.Binding))
	}
	return append(hs, Hints(FieldKeys.Done, FieldKeys.Back)...)
}

// Paint draws nothing: the field stands in the foot.
func (f Field) Paint(cell.Grid, *Shared) {}

// AskNumber opens a field for a number.
func AskNumber(label string, l Limits, given entry.Maybe[float64], then func(float64) Effect, instead ...Option) Effect {
	return Ask{Field{
		Label: label, Unit: l.Unit, Input: PrefilledWith(modelwords.Units{}, given, l.Unit), Instead: instead,
		Done: func(sh *Shared, in Input) (Effect, error) {
			v, err := in.Value(sh.Units, l)
			if err != nil {
				return nil, err
			}
			return then(v), nil
		},
	}}
}

// AskMaybe opens a field for a number that may stay blank: then it is not known.
func AskMaybe(label string, l Limits, given entry.Maybe[float64], then func(entry.Maybe[float64]) Effect, instead ...Option) Effect {
	return Ask{MaybeField(label, l, given, then, instead...)}
}

// MaybeField is that field.
func MaybeField(label string, l Limits, given entry.Maybe[float64], then func(entry.Maybe[float64]) Effect, instead ...Option) Field {
	return Field{
		Label: label, Unit: l.Unit, Blank: words.BlankIsNot, Input: PrefilledWith(modelwords.Units{}, given, l.Unit), Instead: instead,
		Done: func(sh *Shared, in Input) (Effect, error) {
			if in.Trimmed() == "" {
				return then(entry.None[float64]()), nil
			}
			v, err := in.Value(sh.Units, l)
			if err != nil {
				return nil, err
			}
			return then(entry.Some(v)), nil
		},
	}
}

// AskWords opens a field for a line of words.
func AskWords(label, given string, then func(string) Effect) Effect {
	return Ask{Field{
		Label: label, Input: Prefilled(given, false),
		Done: func(_ *Shared, in Input) (Effect, error) {
			if s := in.Trimmed(); s != "" {
				return then(s), nil
			}
			return Said(words.NothingDone), nil
		},
	}}
}
