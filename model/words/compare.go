package words

import (
	"fmt"
	"strings"

	"chargehand/model/compare"
	"chargehand/model/shelf"
)

// Comparing smelts.
const (
	CompareDoes  = "holds two to four smelts beside each other: what went in, what came out, what differed most among one's own, and what goes with a good yield"
	CompareWants = "compare: wants two to four smelts"
	CompareTwice = "compare: names a smelt twice"
	TooFewToTell = "too few to tell"
)

var measureWords = map[compare.Measure]struct {
	word, unit string
	decimals   int
}{
	compare.Ore:      {"ore", "kg", 1},
	compare.Charcoal: {"charcoal", "kg", 1},
	compare.Ratio:    {"charcoal a kg ore", "kg", 2},
	compare.Interval: {"a charge", "min", 0},
	compare.Blast:    {"blast", "l/min", 0},
	compare.Rise:     {"until full ore", "min", 0},
	compare.Hours:    {"hours", "h", 1},
	compare.Slag:     {"slag", "kg", 1},
	compare.Bloom:    {"bloom", "kg", 1},
	compare.Yield:    {"of the ore", "%", 0},
	compare.PerBloom: {"charcoal a kg bloom", "kg", 1},
}

// CompareWord names a measure.
func CompareWord(m compare.Measure) string { return measureWords[m].word }

// CompareValue is a measure of a smelt with its unit, "" where it is not known.
func (u Units) CompareValue(s shelf.Summary, m compare.Measure) string {
	v, known := compare.Value(s, m)
	if !known {
		return ""
	}
	if m == compare.Bloom && v == 0 {
		return "none"
	}
	return u.Compared(v, m)
}

// Compared is a measure with its unit.
func (u Units) Compared(v float64, m compare.Measure) string {
	w := measureWords[m]
	switch m {
	case compare.Yield:
		return Number(100*v, 0) + " %"
	case compare.Ratio, compare.PerBloom, compare.Hours, compare.Interval, compare.Rise:
		return Number(v, w.decimals) + " " + w.unit // of one mass by another, or of time: in no other unit
	}
	return u.Value(v, w.unit, w.decimals)
}

// Differed says how smelts differed most, at most three ways, or why nothing is said.
func (u Units) Differed(c compare.Compared) []string {
	if c.Own < compare.Few {
		return []string{fmt.Sprintf("what differed most: %s: %s so far, five are needed", TooFewToTell, counted(c.Own, "smelt"))}
	}
	if len(c.Differed) == 0 {
		return []string{"what differed most: nothing that all of them and five that count have been measured in"}
	}
	var all []string
	for _, d := range c.Differed[:min(3, len(c.Differed))] {
		all = append(all, fmt.Sprintf("%s: %s to %s, %s the spread of your %d", CompareWord(d.Measure), u.Compared(d.Low, d.Measure), u.Compared(d.High, d.Measure), times1(d.Spreads), c.Own))
	}
	return all
}

func times1(v float64) string {
	return Number(v, 1) + " times"
}

// CannotSay is the limit of it.
func CannotSay(n int) string {
	return [...]string{"", "", "two", "three", "four"}[min(n, 4)] + " smelts cannot say what did it"
}

// Trend says what goes with a good yield over own smelts.
func Trend(c compare.Compared) string {
	if c.Own < compare.Few {
		return fmt.Sprintf("trends: %s, from five smelts on", TooFewToTell)
	}
	if len(c.Trends) == 0 {
		return "trends: " + TooFewToTell + ": under five of your smelts know their yield"
	}
	t := c.Trends[0]
	if !t.Stands() {
		return fmt.Sprintf("trends: over %d smelts nothing goes with the yield more than by chance", t.N)
	}
	var with []string
	for _, t := range c.Trends {
		if t.Stands() && len(with) < 3 {
			way := "more "
			if t.Rank < 0 {
				way = "less "
			}
			with = append(with, way+trendWord(t.Measure))
		}
	}
	return fmt.Sprintf("trend: over %d smelts a good yield goes with %s; by chance in 1 of %s; not what did it", t.N, strings.Join(with, ", "), oneIn(c.Trends[len(with)-1].Chance))
}

func trendWord(m compare.Measure) string {
	switch m {
	case compare.Interval:
		return "minutes a charge"
	case compare.Rise:
		return "minutes until full ore"
	}
	return CompareWord(m)
}

func oneIn(chance float64) string {
	for _, n := range []float64{1000, 200, 100, 50} {
		if chance < 1/n {
			return fmt.Sprintf("%.0f", n)
		}
	}
	return "20"
}

// OreBase says on which ore a smelt is counted.
func OreBase(s shelf.Summary) string {
	if s.OreDry.Positive() {
		return "dry"
	}
	return "as charged"
}

// Compared is a comparison in words, a smelt a column.
func Compared(u Units, c compare.Compared) string {
	var b strings.Builder
	cells := func(head string, of func(shelf.Summary) string) {
		fmt.Fprintf(&b, "%-20s", head)
		for _, s := range c.Smelts {
			fmt.Fprintf(&b, "  %-27.27s", of(s))
		}
		b.WriteString("\n")
	}
	cells("", func(s shelf.Summary) string { return s.ID })
	cells("day", func(s shelf.Summary) string {
		if s.Undated {
			return "not known"
		}
		return s.Lit.Format("2 Jan 2006")
	})
	cells("ore mix", func(s shelf.Summary) string { return s.Mix })
	cells("tried", func(s shelf.Summary) string { return s.Tried })
	for _, m := range compare.All {
		cells(CompareWord(m), func(s shelf.Summary) string {
			said := orElse(u.CompareValue(s, m), NotKnown)
			if m == compare.Ore || m == compare.Yield {
				if _, known := compare.Value(s, m); known {
					said += ", " + OreBase(s)
				}
			}
			return said
		})
	}
	b.WriteString("\n")
	for _, line := range u.Differed(c) {
		b.WriteString(line + "\n")
	}
	b.WriteString(CannotSay(len(c.Smelts)) + "\n" + Trend(c) + "\n")
	var lines []string
	for _, l := range strings.Split(b.String(), "\n") {
		lines = append(lines, strings.TrimRight(l, " "))
	}
	return strings.Join(lines, "\n")
}
