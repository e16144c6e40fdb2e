package words

import (
	"slices"
	"strconv"
	"strings"

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

// ChargeBrief is a charge where there is little room, without its weights: "charge 25:
// 1 bucket, 4 scoops".
func (u Units) ChargeBrief(number int, ps entry.Parts) string {
	return "charge " + strconv.Itoa(number) + ": " + u.PartsBrief(ps)
}

// ChargedBrief is a charge without a number likewise.
func (u Units) ChargedBrief(ps entry.Parts) string { return "charge: " + u.PartsBrief(ps) }

// NextBrief is a change of the next charge likewise.
func (u Units) NextBrief(ps entry.Parts) string { return "next: " + u.PartsBrief(ps) }

// PartsBrief are parts in their measures, by weight where they were not counted.
func (u Units) PartsBrief(ps entry.Parts) string {
	var said []string
	for i, p := range ps {
		same := func(o entry.Part) bool { return o.What == p.What && o.Measure == p.Measure && o.Count.Known }
		switch {
		case p.None():
			said = append(said, "no "+Material(p.What))
		case p.Count.Known && p.Measure != "":
			if slices.ContainsFunc(ps[:i], same) {
				continue // told with the first of them
			}
			n := entry.Count(0)
			for _, o := range ps[i:] {
				if same(o) {
					n += o.Count.Value
				}
			}
			said = append(said, Counted(n, p.Measure))
		default:
			said = append(said, u.OnePart(entry.Part{What: p.What, Count: p.Count, Mass: p.Mass}))
		}
	}
	return strings.Join(said, ", ")
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
