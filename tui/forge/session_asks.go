package forge

import (
	"slices"
	"strings"

	"chargehand/model/entry"
	modelwords "chargehand/model/words"
	"chargehand/tui/draw"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// value is what stands in a field.
func (f session) value(id field) string {
	switch id {
	case didField:
		var all []string
		for _, d := range f.doneSo() {
			all = append(all, string(d))
		}
		return strings.Join(all, ", ")
	case fuelField:
		return f.fuels[f.fuel].says
	case withField:
		var names []string
		for _, w := range f.with {
			if w.in {
				names = append(names, w.name)
			}
		}
		return strings.Join(names, withSep)
	case nowField:
		return f.nowNames()[f.now]
	}
	return f.in[id].Trimmed()
}

// label is a field of this session as a draft is found by.
func (f session) label(id field) string { return words.SessionOf + f.name + ": " + typed[id].label }

// Labels are those of its fields.
func (f session) Labels() (all []string) {
	for id := range fields {
		all = append(all, f.label(id))
	}
	return all
}

// Half is what is typed so far.
func (f session) Half(*screen.Shared) (half []screen.Answered) {
	for id := range fields {
		if text := f.value(id); text != "" && (id != fuelField || f.fuel > 0) && (id != nowField || f.now > 0) {
			half = append(half, screen.Answered{Label: f.label(id), Text: text})
		}
	}
	return half
}

// Resumed is the line with what was half typed in it.
func (f session) Resumed(left map[string]string) screen.Dialog {
	for id := range fields {
		text, half := left[f.label(id)]
		if !half {
			continue
		}
		switch id {
		case didField:
			for i, d := range forgeds {
				f.did[i] = slices.Contains(strings.Split(text, ", "), string(d))
			}
		case withField:
			f.with = slices.Clone(f.with)
			for i, w := range f.with {
				f.with[i].in = slices.Contains(strings.Split(text, withSep), w.name)
			}
		case fuelField:
			f.fuel = max(slices.IndexFunc(f.fuels, func(one fuel) bool { return one.says == text }), 0)
		case nowField:
			f.now = max(slices.IndexFunc(f.nows, func(k entry.PieceKind) bool { return modelwords.PieceKindShort(k) == text }), 0)
		default:
			f.in[id] = screen.Prefilled(text, typed[id].number)
		}
	}
	f.bad = words.SessionHalf
	return f
}

// Ask is the field at hand, in the foot.
func (f session) Ask(sh *screen.Shared) *draw.Ask {
	if f.at == fields {
		return &draw.Ask{Label: words.SessionOf + f.name, Hint: words.SessionEnds}
	}
	hint := f.bad
	if hint == "" {
		hint = f.hint(sh)
	}
	a := &draw.Ask{Label: typed[f.at].label, Hint: hint}
	if f.at != didField && f.at != fuelField && f.at != nowField && f.at != withField {
		a.Value = func(width int) string { return f.in[f.at].Draw(sh.Theme, width) }
	}
	return a
}

// hint says how a field is filled.
func (f session) hint(sh *screen.Shared) string {
	switch f.at {
	case didField:
		return words.SessionDidKeys(didKeys())
	case fuelField:
		return words.SessionOneOf(f.fuelNames())
	case nowField:
		return words.SessionOneOf(f.nowNames())
	case withField:
		return f.withHint()
	case costField:
		return words.CostHint
	}
	return words.UnitBlank(sh.Units.Name(typed[f.at].Unit))
}

// Hints are how to go about in it.
func (f session) Hints() []draw.KeyHint {
	k := SessionKeys
	if f.at == fields {
		return []draw.KeyHint{screen.Short(k.Done, words.DoKeepIt), screen.Hint(k.Previous), screen.Hint(k.Back)}
	}
	return []draw.KeyHint{screen.Short(k.Done, words.DoNextField), screen.Hint(k.Last), screen.Hint(k.Previous), screen.Hint(k.Back)}
}
