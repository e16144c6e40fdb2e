package shelf

import (
	"math"
	"slices"

	"chargehand/model/compare"
	"chargehand/model/shelf"
	"chargehand/tui/cell"
	"chargehand/tui/chart"
	"chargehand/tui/screen"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// measured is one thing that was measured of a smelt, beside the own others of which it is
// known too.
type measured struct {
	compare.Measure
	at        float64
	others    int
	low, high float64 // of these
}

// measuredOf are the measures of a smelt that are known, in the order in which smelts are
// compared.
func measuredOf(l shelf.Summary, all []shelf.Summary) (ms []measured) {
	for _, m := range compare.All {
		at, known := compare.Value(l, m)
		if !known {
			continue
		}
		one := measured{Measure: m, at: at, low: math.Inf(1), high: math.Inf(-1)}
		for _, o := range compare.Own(all) {
			if v, known := compare.Value(o, m); known && o.ID != l.ID {
				one.others++
				one.low, one.high = math.Min(one.low, v), math.Max(one.high, v)
			}
		}
		ms = append(ms, one)
	}
	return ms
}

// measuredRows is how many rows they take, with what stands over them: none where a smelt has
// nothing measured.
func measuredRows(ms []measured) int {
	if len(ms) == 0 {
		return 0
	}
	return len(ms) + 2
}

// paintMeasured paints them: the figure, where it lies among those of the others, and from
// where to where these go.
func paintMeasured(g cell.Grid, sh *screen.Shared, ms []measured) {
	const value, bar, long = 32, 46, 26 // where the figure ends, where its range begins, and how long it is
	th := sh.Theme
	w, h := g.Size()
	head, alone := words.ShelfMeasured, !slices.ContainsFunc(ms, func(m measured) bool { return m.others > 0 })
	if alone {
		head = words.ShelfMeasuredAlone
	}
	g.Text(2, 0, head, th.Style(theme.Quiet))
	for i, m := range ms[:max(min(len(ms), h-1), 0)] {
		y := i + 1
		says := sh.Units.Compared
		g.Text(2, y, words.MeasureWord(m.Measure), th.Style(theme.Text))
		g.TextRight(value, y, says(m.at, m.Measure), th.Style(theme.Strong))
		switch {
		case alone:
			continue
		case m.others == 0:
			g.TextIn(cell.Rect{X: value + 2, Y: y, W: w - value - 3, H: 1}, words.NoOtherMeasured, th.Style(theme.Quiet))
			continue
		case m.low == m.high:
			g.TextIn(cell.Rect{X: value + 2, Y: y, W: w - value - 3, H: 1}, words.OthersAt(says(m.low, m.Measure), m.others), th.Style(theme.Quiet))
			continue
		}
		chart.Ranged{From: math.Min(m.low, m.at), To: math.Max(m.high, m.at), Good: true, GoodFrom: m.low, Until: m.high, At: m.at}.Draw(g, th, bar, y, long)
		x := bar + long + 2
		g.TextIn(cell.Rect{X: x, Y: y, W: w - x - 1, H: 1}, words.OthersBetween(says(m.low, m.Measure), says(m.high, m.Measure), m.others), th.Style(theme.Quiet))
	}
}
