package words

import (
	"strconv"

	"chargehand/model/entry"
)

// MeasureOf is a measure with what it weighs: "bucket of charcoal, 1.9 kg".
func (u Units) MeasureOf(m entry.Measure) string {
	s := m.Name + " of " + Material(m.What)
	switch {
	case !m.Mass.Known:
		return s + ", not weighed"
	case m.Guessed:
		return s + ", " + u.Kg(m.Mass.Value) + ", a guess"
	}
	return s + ", " + u.Kg(m.Mass.Value)
}

// Clock is how a time of day is written.
const Clock = "15:04"

// ChargeLine is a charge: "charge 25: 1 bucket 1.9 kg, 4 scoops 2 kg".
func (u Units) ChargeLine(number int, ps entry.Parts, charcoal, ore entry.Maybe[entry.Kilogram]) string {
	s := "charge " + strconv.Itoa(number) + ": " + u.total(ps, entry.Charcoal, charcoal)
	if holds(ps, entry.Ore) {
		s += ", " + u.total(ps, entry.Ore, ore)
	}
	for _, p := range ps {
		if p.What != entry.Charcoal && p.What != entry.Ore {
			s += ", " + u.OnePart(p)
		}
	}
	return s
}

// total is all of one material in a charge: its measures when it was counted,
// and its weight.
func (u Units) total(ps entry.Parts, w entry.What, kg entry.Maybe[entry.Kilogram]) string {
	s := Material(w)
	if n, counted := ps.Count(w); counted {
		for _, p := range ps {
			if p.What == w && p.Measure != "" {
				s = Counted(n, p.Measure)
				break
			}
		}
	}
	switch {
	case kg.Known:
		return s + " " + u.Kg(kg.Value)
	case holds(ps, w):
		return s + ", not weighed"
	}
	return s
}

func holds(ps entry.Parts, w entry.What) bool {
	for _, p := range ps {
		if p.What == w && !p.None() {
			return true
		}
	}
	return false
}

// IntoCharge is ore that goes with an earlier charge.
func (u Units) IntoCharge(ps entry.Parts, number int) string {
	return u.AllParts(ps) + ", to charge " + strconv.Itoa(number)
}
