package shelf

import (
	"slices"

	"chargehand/model/shelf"
	"chargehand/tui/cell"
	"chargehand/tui/letter"
	"chargehand/tui/scene"
	"chargehand/tui/screen"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// record is what the smelts of a crew gave. Practice, what is invented and what is
// not over count in none of it.
type record struct {
	gave, over, unweighed int
	yields                []float64 // of ore dry, in order of size
}

func recordOf(ls []shelf.Summary) (r record) {
	for _, l := range ls {
		if l.Practice || l.Invented || l.Rehearsal || !l.Phase.Over() {
			continue
		}
		switch {
		case l.NoBloom:
			r.over++
		case l.Bloom.Known:
			r.over++
			r.gave++
		case !l.BloomNever:
			r.unweighed++
		}
		if y, dry, ok := l.Yield(); ok && dry {
			r.yields = append(r.yields, y)
		}
	}
	slices.Sort(r.yields)
	return r
}

// middle is the median yield; there is at least one.
func (r record) middle() float64 {
	n := len(r.yields)
	return (r.yields[(n-1)/2] + r.yields[n/2]) / 2
}

// rows is how many rows the answer takes at a size.
func (r record) rows(size scene.Size) int {
	switch {
	case size == scene.Cramped:
		return 0
	case size == scene.Small || r.over == 0 && len(r.yields) == 0:
		return 2
	}
	return 8
}

// answer says what the smelts gave: how many a bloom, and how much of the ore.
func (r record) answer(g cell.Grid, sh *screen.Shared, size scene.Size) {
	th := sh.Theme
	w, _ := g.Size()
	n := len(r.yields)
	if r.rows(size) == 2 {
		text := words.NoneOver
		if r.over > 0 {
			text = words.GaveLine(r.gave, r.over)
		}
		x := 2 + g.Text(2, 0, text, th.Style(theme.Strong))
		if n > 0 {
			g.TextIn(cell.Rect{X: x + 3, W: w - x - 4, H: 1}, words.YieldLine(r.middle()), th.Style(theme.Strong))
		}
		g.Fill(cell.Rect{Y: 1, W: w, H: 1}, th.Marks().HLine, th.Style(theme.Frame))
		return
	}
	half := w / 2
	g.Text(2, 0, words.GaveOf, th.Style(theme.Quiet))
	g.Text(half, 0, words.YieldOf, th.Style(theme.Quiet))
	if r.over > 0 {
		letter.Small.Text(g, 2, 1, words.OfLetters(r.gave, r.over), th.Style(theme.Strong), th.ASCII)
		g.TextIn(cell.Rect{X: 2, Y: 6, W: half - 3, H: 1}, words.NotWeighed(r.unweighed), th.Style(theme.Text))
	} else {
		g.Text(2, 2, words.NoneOver, th.Style(theme.Text))
	}
	if n > 0 {
		letter.Small.Text(g, half, 1, words.PercentLetters(r.middle()), th.Style(theme.Strong), th.ASCII)
		g.TextIn(cell.Rect{X: half, Y: 6, W: w - half - 1, H: 1}, words.YieldsBetween(r.yields[0], r.yields[n-1], n), th.Style(theme.Text))
	} else {
		g.Text(half, 2, words.NoYieldYet, th.Style(theme.Text))
	}
	g.Fill(cell.Rect{Y: 7, W: w, H: 1}, th.Marks().HLine, th.Style(theme.Frame))
}
