package light

import (
	"errors"
	"slices"
	"strings"

	"chargehand/model/entry"
	modelwords "chargehand/model/words"
	"chargehand/tui/act"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// light reads the form. What still stands as the starter gave it is a guess;
// a blank is not recorded. The error is about the field it names.
func (f Screen) light(s screen.Starter, u modelwords.Units) (entry.Light, field, error) {
	l := entry.Light{Furnace: s.Furnace}
	var bad error
	var at field
	fail := func(id field, err error) {
		if bad == nil {
			bad, at = err, id
		}
	}
	text := func(id field) string { return f.rows[id].input.Trimmed() }
	number := func(id field, lim screen.Limits) (float64, bool) {
		if text(id) == "" {
			return 0, false
		}
		v, err := f.rows[id].input.Value(u, lim)
		if err != nil {
			fail(id, errors.New(words.InField(labels[id].label, err.Error())))
		}
		return v, err == nil
	}
	length := func(id field) entry.Maybe[entry.Centimetre] {
		v, ok := number(id, screen.Limits{Unit: "cm", Least: 5, Most: 500})
		return entry.Maybe[entry.Centimetre]{Value: entry.Centimetre(v), Known: ok}
	}
	measure := func(name, kg field, w entry.What) entry.Measure {
		m := entry.Measure{Name: text(name), What: w}
		if m.Name == "" {
			fail(name, errors.New(words.InField(labels[name].label, words.NameMissing)))
		}
		v, ok := number(kg, screen.Limits{Unit: "kg", Least: 0.01, Most: 100})
		m.Mass = entry.Maybe[entry.Kilogram]{Value: entry.Kilogram(v), Known: ok}
		m.Guessed = ok && f.untouched(kg) && guessed(s, w)
		return m
	}
	if l.Furnace.Name = text(furnaceName); l.Furnace.Name == "" {
		fail(furnaceName, errors.New(words.InField(labels[furnaceName].label, words.NameMissing)))
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
	l.Measures = append([]entry.Measure{charcoal, ore}, spare(s, charcoal.Name, ore.Name)...)
	n, _ := number(oreCount, act.Measures)
	l.Recipe = entry.Parts{
		{What: entry.Charcoal, Measure: charcoal.Name, Count: entry.Some(entry.Count(1))},
		{What: entry.Ore, Measure: ore.Name, Count: entry.Some(entry.Count(n))},
	}
	return l, at, bad
}

// guessed tells whether a starter's measure of a material was never weighed.
func guessed(s screen.Starter, w entry.What) bool {
	for _, m := range s.Measures {
		if m.What == w {
			return m.Guessed
		}
	}
	return false
}

// spare are the starter's further measures, beside the two of the form.
func spare(s screen.Starter, names ...string) []entry.Measure {
	var ms []entry.Measure
	seen := map[entry.What]bool{}
	for _, m := range s.Measures {
		first := (m.What == entry.Charcoal || m.What == entry.Ore) && !seen[m.What]
		seen[m.What] = true
		if !first && !slices.Contains(names, m.Name) {
			ms = append(ms, m)
		}
	}
	return ms
}

// isGuess tells whether a number stands as the starter gave it, and was a guess
// there.
func (f Screen) isGuess(s screen.Starter, id field) bool {
	if !f.rows[id].input.Number() || !f.untouched(id) {
		return false
	}
	switch id {
	case charcoalKg:
		return guessed(s, entry.Charcoal)
	case oreKg:
		return guessed(s, entry.Ore)
	case boreCm, stackCm, rimCm:
		return s.Furnace.Guessed
	}
	return false
}

// untouchedYet tells whether nothing was done to the form.
func (f Screen) untouchedYet() bool {
	for _, r := range f.rows {
		if r.input.Text() != r.given {
			return false
		}
	}
	return f.row == f.last() && f.starter == 0
}

// untouched tells whether a field still stands as the starter gave it.
func (f Screen) untouched(id field) bool { return f.rows[id].input.Text() == f.rows[id].given }

// by is the initials typed into the form.
func (f Screen) by() string { return f.rows[initials].input.Trimmed() }
