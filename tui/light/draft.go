package light

import (
	"slices"

	"chargehand/tui/screen"
)

// Half are the rows that do not stand as they were given, by their labels.
func (f Screen) Half(screen.Shared) []screen.Answered {
	var half []screen.Answered
	for id, r := range f.rows {
		if text := r.input.Text(); text != r.given {
			half = append(half, screen.Answered{Label: labels[id].label, Text: text})
		}
	}
	return half
}

// OfSmelt tells whether it is about the smelt shown.
func (f Screen) OfSmelt() bool { return f.mends }

// Resumed is the form with rows as they were left; x at its ends begins it anew.
func (f Screen) Resumed(typed map[string]string) screen.Screen {
	f.rows = slices.Clone(f.rows)
	for id, r := range f.rows {
		if text, ok := typed[labels[id].label]; ok {
			f.rows[id].input = screen.Prefilled(text, r.input.Number())
			f.resumed = true
		}
	}
	return f
}
