package draw

import (
	"slices"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/session"
	modelwords "chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/theme"
)

// ResultRows is how tall the card of the result is when all of it stands.
const ResultRows = 11

// Result paints what came of a smelt that is over: what it gave, on what that is
// counted, and what was foretold; of what is not known what to weigh.
func (p Pen) Result(g cell.Grid, r figure.Reading, o session.Outcome) {
	w, h := g.Size()
	g.Text(2, 0, modelwords.ResultHead, p.Style(theme.Quiet))
	parts := p.ResultParts(r, o)
	const from = 12
	beside, bases, gap := w >= 76, true, 0
	if rows := 2 * len(parts); !beside && h-1 < rows {
		parts = slices.DeleteFunc(parts, func(part modelwords.ResultPart) bool { return part.Spare })
	}
	rows := 2 * len(parts)
	if beside {
		rows = len(parts)
	} else if h-1 < rows {
		bases, rows = false, len(parts)
	}
	if h-2 >= rows+len(parts)-1 {
		gap = 1
	}
	y := 1 + gap
	for _, part := range parts {
		g.Text(2, y, part.Name, p.Style(theme.Quiet))
		style := p.Style(theme.Strong)
		if !part.Known {
			style = p.Style(theme.Text)
		}
		g.TextIn(cell.Rect{X: from, Y: y, W: w - from - 1, H: 1}, part.Says, style)
		switch base := p.Style(theme.Text); {
		case beside:
			g.TextIn(cell.Rect{X: from + 34, Y: y, W: w - from - 35, H: 1}, InParts(g, part.Base, w-from-35, 1), base)
		case bases:
			y++
			g.TextIn(cell.Rect{X: from, Y: y, W: w - from - 1, H: 1}, InParts(g, part.Base, w-from-1, 1), base)
		}
		y += 1 + gap
	}
}

// ResultParts are the lines of the card.
func (p Pen) ResultParts(r figure.Reading, o session.Outcome) []modelwords.ResultPart {
	return modelwords.Result(p.Units, o, unweighed(r, entry.Ore), unweighed(r, entry.Charcoal))
}

// unweighed says what is still to be weighed of a material.
func unweighed(r figure.Reading, what entry.What) string {
	return firstOf(toWeigh(r, what), modelwords.SomeUnweighed)
}
