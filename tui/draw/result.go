package draw

import (
	"slices"

	"chargehand/model/account"
	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/session"
	modelwords "chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/theme"
)

// ResultRows is how tall the card of the result is when all of it stands, in a small window
// without what can be spared.
func ResultRows(small bool) int {
	if small {
		return 12
	}
	return 15
}

// Came is what came of a smelt that is over.
type Came struct {
	session.Outcome
	Iron     *account.Yield // of the bloom, of the ore; nil where it is not known
	Lesson   string         // kept for next time
	MayLearn bool           // one may be kept
}

// Result paints what came of a smelt that is over: what it gave, on what that is
// counted, and what was foretold; of what is not known what to weigh.
func (p Pen) Result(g cell.Grid, r *figure.Reading, o Came) {
	w, h := g.Size()
	g.Text(2, 0, modelwords.ResultHead, p.Style(theme.Quiet))
	const from = 12
	beside := w >= 76
	parts := p.fitting(r, o, beside, h-1)
	rows := 0
	for _, part := range parts {
		rows += rowsOf(part, beside)
	}
	gap := 0
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
		says, base := w-from-1, cell.Rect{X: from, Y: y + 1, W: w - from - 1, H: 1}
		if beside && part.Base != "" {
			says, base = 33, cell.Rect{X: from + 34, Y: y, W: w - from - 35, H: 1}
		}
		g.TextIn(cell.Rect{X: from, Y: y, W: says, H: 1}, part.Says, style)
		if part.Base != "" {
			g.TextIn(base, InParts(g, part.Base, base.W, 1), p.Style(theme.Text))
		}
		y += rowsOf(part, beside) + gap
	}
}

// rowsOf is how many rows a part takes, with what it is counted on below it or beside it.
func rowsOf(part modelwords.ResultPart, beside bool) int {
	if beside || part.Base == "" {
		return 1
	}
	return 2
}

// fitting are the parts as they fit so many rows: without the bases that say least, then
// without what can be spared, then without any base.
func (p Pen) fitting(r *figure.Reading, o Came, beside bool, room int) []modelwords.ResultPart {
	parts := p.ResultParts(r, o)
	fit := func() bool {
		rows := 0
		for _, part := range parts {
			rows += rowsOf(part, beside)
		}
		return rows <= room
	}
	bare := func(all bool) {
		for i := range parts {
			if all || parts[i].SpareBase {
				parts[i].Base = ""
			}
		}
	}
	if !fit() {
		bare(false)
	}
	if !fit() {
		parts = slices.DeleteFunc(parts, func(part modelwords.ResultPart) bool { return part.Spare })
	}
	if !fit() {
		bare(true)
	}
	return parts
}

// ResultParts are the lines of the card.
func (p Pen) ResultParts(r *figure.Reading, o Came) []modelwords.ResultPart {
	parts := modelwords.Result(p.Units, o.Outcome, unweighed(r, entry.Ore), unweighed(r, entry.Charcoal))
	if o.Iron != nil {
		parts = slices.Insert(parts, 2, modelwords.ResultIronOf(*o.Iron))
	}
	if o.Lesson != "" || o.MayLearn {
		parts = append(parts, modelwords.ResultLesson(o.Lesson))
	}
	return parts
}

// unweighed says what is still to be weighed of a material.
func unweighed(r *figure.Reading, what entry.What) string {
	return firstOf(toWeigh(r, what), modelwords.SomeUnweighed)
}
