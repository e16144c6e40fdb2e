package words

import (
	"fmt"
	"strings"

	"chargehand/model/learn"
)

// LearnDoes is the line of help of learn.
const LearnDoes = "says what own smelts teach the next: the yield on each ore mix, and how often there was no bloom"

// Learnt says what own smelts teach.
func Learnt(h learn.History) string {
	var b strings.Builder
	smelts, failures := h.Ends()
	if smelts == 0 {
		b.WriteString("No smelt of this book teaches yet. It takes one that is over, with a day, an ore mix that is named,\nall its ore weighed, and a bloom weighed or keyed as none. Until then published smelts stand in:\n")
		fmt.Fprintf(&b, "%.0f to %.0f %% of the ore, most likely about %.0f %%.\n", 100*learn.PriorYield.P10, 100*learn.PriorYield.P90, 100*learn.PriorYield.P50)
		return b.String()
	}
	if smelts < learn.FirstSmelts {
		b.WriteString("No compact bloom: about 3 to 8 in 10 in a crew's first two smelts.\n")
	} else {
		fmt.Fprintf(&b, "No compact bloom: %s, by %s.\n", NIn10(learn.NoneRate(failures, smelts)), byOwn(failures, smelts))
	}
	for _, t := range h.Told() {
		fmt.Fprintf(&b, "\n%s: %s\n", t.Mix, yieldsIn(t.Yields))
		fmt.Fprintf(&b, "  the next that gives a bloom: %.0f to %.0f %% of the ore, most likely about %.0f %%\n", 100*t.Next.P10, 100*t.Next.P90, 100*t.Next.P50)
		if len(t.Billets) > 0 {
			fmt.Fprintf(&b, "  billet: %s; the next: %.0f to %.0f %%, most likely about %.0f %%\n", sharesIn(t.Billets), 100*t.NextBillet.P10, 100*t.NextBillet.P90, 100*t.NextBillet.P50)
		}
		if n := len(t.Compacted); n > 0 {
			fmt.Fprintf(&b, "  %d weighed when compacted, not counted with those\n", n)
		}
		if t.Few() {
			fmt.Fprintf(&b, "  fewer than %d: too few to tell more\n", learn.FewSmelts)
		}
	}
	return b.String()
}

func yieldsIn(ys []float64) string {
	if len(ys) == 0 {
		return "no bloom weighed before it was compacted"
	}
	return sharesIn(ys)
}

// sharesIn are shares of the ore, in per cent.
func sharesIn(ys []float64) string {
	all := make([]string, len(ys))
	for i, y := range ys {
		all[i] = fmt.Sprintf("%.0f %%", 100*y)
	}
	return strings.Join(all, ", ") + " of the ore, dry"
}
