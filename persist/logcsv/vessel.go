package logcsv

import (
	"slices"

	"chargehand/model/entry"
)

// Names of the measures that the columns measures and scoops count, when
// Options names no other.
const (
	DefaultMeasure = "measure"
	DefaultScoop   = "scoop"
)

// vessels are the names of the two measures that the table counts.
type vessels struct{ charcoal, ore string }

// namedMeasures gives the measures of a smelt: those that were named, and one
// of unknown mass for each column that counts a measure which was not.
func namedMeasures(named []entry.Measure, measures, scoops bool) []entry.Measure {
	ms := slices.Clone(named)
	for i, m := range ms {
		switch {
		case m.What != "":
		case m.Name == DefaultScoop:
			ms[i].What = entry.Ore
		default:
			ms[i].What = entry.Charcoal
		}
	}
	have := vesselsOf(ms)
	if measures && have.charcoal == "" {
		ms = append(ms, entry.Measure{Name: DefaultMeasure, What: entry.Charcoal})
	}
	if scoops && have.ore == "" {
		ms = append(ms, entry.Measure{Name: DefaultScoop, What: entry.Ore})
	}
	return ms
}

// vesselsOf gives the first measure of each material.
func vesselsOf(ms []entry.Measure) (v vessels) {
	for _, m := range slices.Backward(ms) {
		switch m.What {
		case entry.Charcoal:
			v.charcoal = m.Name
		case entry.Ore:
			v.ore = m.Name
		}
	}
	return v
}
