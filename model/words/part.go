package words

import (
	"strconv"
	"strings"

	"chargehand/model/entry"
)

// Number is a number in as many decimals as it needs, at most so many.
func Number(v float64, decimals int) string {
	s := strconv.FormatFloat(v, 'f', decimals, 64)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	if s == "-0" {
		return "0"
	}
	return s
}

// Counted is a number of measures: "1 bucket", "half a scoop", "4 scoops".
func Counted(n entry.Count, measure string) string {
	switch n {
	case 0:
		return "no " + measure
	case 0.5:
		return "half a " + measure
	case 1:
		return "1 " + measure
	}
	return Number(float64(n), 2) + " " + plural(measure)
}

// Plural is several of what a word names one of.
func Plural(s string) string { return plural(s) }

func plural(s string) string {
	for _, end := range []string{"s", "x", "ch", "sh"} {
		if strings.HasSuffix(s, end) {
			return s + "es"
		}
	}
	return s + "s"
}

// Material is what a part is made of.
func Material(w entry.What) string {
	switch w {
	case entry.SeedSlag:
		return "seed slag"
	case entry.ReturnedSlag:
		return "returned slag"
	}
	return string(w)
}

// OnePart is one part of a charge: "4 scoops of ore", "1.9 kg charcoal".
func (u Units) OnePart(p entry.Part) string {
	what := Material(p.What)
	if p.Lot != "" && p.Lot != what && !entry.UID(p.Lot).Valid() { // a uid says nothing to anybody
		what += " (" + p.Lot + ")"
	}
	switch {
	case p.None():
		return "no " + what
	case p.Count.Known && p.Measure != "" && p.Mass.Known:
		return Counted(p.Count.Value, p.Measure) + " of " + what + ", " + u.Kg(p.Mass.Value)
	case p.Count.Known && p.Measure != "":
		return Counted(p.Count.Value, p.Measure) + " of " + what
	case p.Mass.Known:
		return u.Kg(p.Mass.Value) + " " + what
	case p.Count.Known:
		return Number(float64(p.Count.Value), 2) + " measures of " + what
	}
	return what + ", not weighed"
}

// AllParts is the content of a charge or fill.
func (u Units) AllParts(ps entry.Parts) string {
	if len(ps) == 0 {
		return "content not recorded"
	}
	said := make([]string, len(ps))
	for i, p := range ps {
		said[i] = u.OnePart(p)
	}
	return strings.Join(said, ", ")
}

// AboveTuyere is a height of the burden.
func AboveTuyere(height string) string { return height + " above the tuyere" }
