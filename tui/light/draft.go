package light

import (
	"slices"

	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// begunWith is the starter that was chosen, "" where the form begins with the first.
func (f Screen) begunWith() string {
	if f.wanted != "" || f.starter == 0 {
		return f.wanted
	}
	return f.starters[f.starter].Name
}

// Half are the starter that was chosen and the rows that do not stand as they were given, by their labels.
func (f Screen) Half(*screen.Shared) []screen.Answered {
	var half []screen.Answered
	if name := f.begunWith(); name != "" {
		half = append(half, screen.Answered{Label: words.FormStarter, Text: name})
	}
	for id, r := range f.rows {
		if text := r.input.Text(); text != r.given || r.own {
			half = append(half, screen.Answered{Label: labels[id].label, Text: text})
		}
	}
	return half
}

// beginning is the form filled from a starter, by its name. One of the person's own may
// not have been read yet.
func (f Screen) beginning(name string) Screen {
	f.wanted = name
	for i, s := range f.starters {
		if s.Name == name {
			f.starter, f.wanted = i, ""
			return f.with(s, f.units)
		}
	}
	return f
}

// OfSmelt tells whether it is about the smelt shown.
func (f Screen) OfSmelt() bool { return f.mends }

// Resumed is the form with rows as they were left; x at its ends begins it anew.
func (f Screen) Resumed(typed map[string]string) screen.Screen {
	if name, chosen := typed[words.FormStarter]; chosen {
		f, f.resumed = f.beginning(name), true
	}
	f.rows = slices.Clone(f.rows)
	for id, r := range f.rows {
		if text, ok := typed[labels[id].label]; ok {
			f.rows[id].input, f.rows[id].own = screen.Prefilled(text, r.input.Number()), true
			f.resumed = true
		}
	}
	return f
}
