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
	l := entry.Light{Furnace: s.Furnace, Plan: s.Plan}
	var bad error
	var at field
	fail := func(id field, err error) {
		if bad == nil {
			bad, at = err, id
		}
	}
	number := func(id field, lim screen.Limits) (float64, bool) {
		if f.text(id) == "" {
			return 0, false
		}
		v, err := f.rows[id].input.Value(u, lim)
		if err != nil {
			fail(id, errors.New(words.InField(labels[id].label, err.Error())))
		}
		return v, err == nil
	}
	length := func(id field, least float64) entry.Maybe[entry.Centimetre] {
		v, ok := number(id, screen.Limits{Unit: "cm", Least: least, Most: 500})
		return entry.Maybe[entry.Centimetre]{Value: entry.Centimetre(v), Known: ok}
	}
	measure := func(name, kg field, w entry.What) entry.Measure {
		m := usualOf(s.Measures, w)
		if !f.untouched(name) {
			m = entry.Measure{}
		}
		if m.Name, m.What = f.text(name), w; m.Name == "" && (!f.mends || f.text(kg) != "") {
			fail(name, errors.New(words.InField(labels[name].label, words.NameMissing)))
		}
		if isNumber(m.Name) { // typed a row too far down
			fail(name, errors.New(words.InField(labels[name].label, words.NameIsNumber)))
		}
		v, ok := number(kg, screen.Limits{Unit: "kg", Least: 0.01, Most: 100})
		m.Mass = entry.Maybe[entry.Kilogram]{Value: entry.Kilogram(v), Known: ok}
		m.Guessed = ok && f.isGuess(s, kg)
		return m
	}
	if l.Furnace.Name = f.text(furnaceName); l.Furnace.Name == "" && !f.mends { // a log may name none
		fail(furnaceName, errors.New(words.InField(labels[furnaceName].label, words.NameMissing)))
	}
	l.Furnace.Bore, l.Furnace.Stack, l.Furnace.Rim = length(boreCm, 5), length(stackCm, 5), length(rimCm, 5)
	l.Furnace.TuyereBase = length(baseCm, 0)
	if l.Furnace.Rim.Known && l.Furnace.Stack.Known && l.Furnace.Rim.Value < l.Furnace.Stack.Value {
		fail(rimCm, errors.New(words.RimBelowMark))
	}
	l.Furnace.Guessed = f.isGuess(s, boreCm) && f.isGuess(s, stackCm)
	charcoal, ore := measure(charcoalName, charcoalKg, entry.Charcoal), measure(oreName, oreKg, entry.Ore)
	if charcoal.Name != "" && strings.EqualFold(charcoal.Name, ore.Name) {
		fail(oreName, errors.New(words.SameMeasure))
	}
	for _, m := range []entry.Measure{charcoal, ore} {
		if m.Name != "" {
			l.Measures = append(l.Measures, m)
		}
	}
	l.Measures = append(l.Measures, spare(s, charcoal.Name, ore.Name)...)
	l.Lots = slices.Clone(s.Lots)
	var lots [2]string
	lots[0], l.Lots = f.lot(s, l.Lots, charcoalLot, entry.Charcoal)
	lots[1], l.Lots = f.lot(s, l.Lots, oreLot, entry.Ore)
	n, counted := number(oreCount, act.Measures)
	l.Recipe = slices.Clone(s.Recipe)
	l.Recipe = f.firstCharge(l.Recipe, charcoal, lots[0], entry.None[entry.Count](), charcoalName, charcoalLot)
	l.Recipe = f.firstCharge(l.Recipe, ore, lots[1], entry.Maybe[entry.Count]{Value: entry.Count(n), Known: counted}, oreName, oreLot, oreCount)
	return l, at, bad
}

// isNumber tells whether there is nothing in a name but digits and what stands between them.
func isNumber(name string) bool { return name != "" && strings.Trim(name, "0123456789., ") == "" }

// text is what stands in a field.
func (f Screen) text(id field) string { return f.rows[id].input.Trimmed() }

// lot is how a part names the lot that was typed, and the lots with it: another name is
// another lot where a fire is lit, and the lot's right name where that is put right.
func (f Screen) lot(s screen.Starter, lots []entry.Lot, id field, w entry.What) (string, []entry.Lot) {
	was, name := lotOf(s, w), f.text(id)
	i := slices.IndexFunc(lots, func(l entry.Lot) bool { return l.Name == was.Name && l.What == w })
	switch {
	case name == "":
		return "", lots
	case f.untouched(id) && i >= 0:
	case f.mends && i >= 0:
		lots[i].Name = name
	default:
		i, lots = len(lots), append(lots, entry.Lot{Name: name, What: w})
	}
	if uid := lots[i].UID; uid != "" {
		return string(uid), lots
	}
	return name, lots
}

// firstCharge is the first charge with one material as the form has it, if anything of
// it was touched or it has none of it.
func (f Screen) firstCharge(parts entry.Parts, m entry.Measure, lot string, n entry.Maybe[entry.Count], of ...field) entry.Parts {
	i := slices.IndexFunc(parts, func(p entry.Part) bool { return p.What == m.What })
	touched := slices.ContainsFunc(of, func(id field) bool { return !f.untouched(id) })
	switch {
	case i < 0 && (m.Name == "" || f.mends && !touched):
		return parts
	case i < 0:
		count := entry.Some(entry.Count(1))
		if m.What == entry.Ore {
			count = entry.Some(n.Value)
		}
		return append(parts, entry.Part{What: m.What, Lot: lot, Measure: m.Name, Count: count})
	case !touched:
		return parts
	}
	p := &parts[i]
	if p.Lot = lot; p.Measure != "" || n.Known {
		p.Measure = m.Name
	}
	if n.Known && !f.untouched(oreCount) {
		p.Count, p.Mass = n, entry.None[entry.Kilogram]()
	}
	return parts
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
// there. Who measures and types the same number has it from measuring.
func (f Screen) isGuess(s screen.Starter, id field) bool {
	if !f.rows[id].input.Number() || !f.untouched(id) || f.rows[id].own {
		return false
	}
	switch id {
	case charcoalKg:
		return guessed(s, entry.Charcoal)
	case oreKg:
		return guessed(s, entry.Ore)
	case boreCm, stackCm, rimCm, baseCm:
		return s.Furnace.Guessed
	}
	return false
}

// untouchedYet tells whether nothing was done to the form.
func (f Screen) untouchedYet() bool {
	for _, r := range f.rows {
		if r.input.Text() != r.given || r.own {
			return false
		}
	}
	return f.row == 0 && f.starter == 0
}

// untouched tells whether a field still stands as the starter gave it.
func (f Screen) untouched(id field) bool { return f.rows[id].input.Text() == f.rows[id].given }

// guesses is how many of the numbers are guesses still.
func (f Screen) guesses() int {
	n := 0
	for _, id := range numbers {
		if f.isGuess(f.starters[f.starter], id) {
			n++
		}
	}
	return n
}

// by is the initials typed into the form.
func (f Screen) by() string { return f.rows[initials].input.Trimmed() }
