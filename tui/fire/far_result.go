package fire

import (
	"slices"

	"chargehand/model/figure"
	modelwords "chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/draw"
	"chargehand/tui/scene"
	"chargehand/tui/theme"
)

// paintFarResult paints the far view of a smelt that is over: what it gave as large as it
// fits, then on what that is counted, then what still stands.
func paintFarResult(g cell.Grid, p pen, r *figure.Reading, v scene.View) {
	w, h := g.Size()
	_, body := g.Bounds().CutBottom(draw.FootRows)
	if v.NotKept > 0 || v.Asked != "" {
		bar, rest := body.CutTop(min(max(h/7, 3), body.H/4))
		p.farBar(g.Sub(bar), v)
		body = rest
	}
	var notice cell.Rect
	switch {
	case len(v.Warnings) > 0:
		notice, body = body.CutBottom(min(2, body.H/4))
		p.Warned(g.Sub(notice), r, v.Warnings, false)
	case v.Caution != nil:
		notice, body = body.CutBottom(min(p.CautionRows(w, *v.Caution), body.H/2))
		p.Caution(g.Sub(notice), *v.Caution)
	}
	caption, body := body.CutTop(1)
	p.farResultCaption(g.Sub(caption), v)
	came := *v.Result
	came.MayLearn = false // what nobody kept is nothing to read from afar
	parts := p.ResultParts(r, came)
	if len(parts) > body.H/2 { // the bloom in letters comes first
		parts = slices.DeleteFunc(parts, func(part modelwords.ResultPart) bool {
			return part.Spare || part.Name == modelwords.ResultIron || part.Name == modelwords.ResultNextTime
		})
	}
	rows := 0 // what it is counted on stands below each where there is room
	for _, part := range parts[1:] {
		if rows++; part.Base != "" {
			rows++
		}
	}
	bases := body.H-rows >= 9
	if !bases {
		rows = len(parts[1:])
	}
	lead, rest := body.CutTop(max(body.H-rows-2, 1))
	style := p.Style(theme.Strong)
	if !parts[0].Known {
		style = p.Style(theme.Text)
	}
	name, lead := lead.CutTop(1)
	g.TextIn(cell.Rect{X: 2, Y: name.Y, W: w - 3, H: 1}, parts[0].Name, p.Style(theme.Quiet))
	p.letters(g, cell.Rect{X: 2, Y: lead.Y, W: w - 4, H: max(lead.H, 1)}, parts[0].Far, style)
	p.farResultRest(g.Sub(rest), parts, bases)
}

// farResultCaption says what is shown, whether it is now, and how safe the log is.
func (p pen) farResultCaption(g cell.Grid, v scene.View) {
	w, _ := g.Size()
	end := w - 1 - p.Safety(g, w-1, draw.TopView{Kept: v.Kept, Keeping: v.Keeping, NoBook: v.NoBook}) - 2
	x := 2
	for _, is := range []string{v.Tag, v.Past} {
		if is != "" {
			x += g.Text(x, 0, " "+g.Cut(is, end-x-2)+" ", p.Style(theme.Tag)) + 2
		}
	}
	g.TextIn(cell.Rect{X: x, W: end - x, H: 1}, modelwords.ResultHead, p.Style(theme.Text))
}

// farResultRest lists what else there is to say of it below a line, in full.
func (p pen) farResultRest(g cell.Grid, parts []modelwords.ResultPart, bases bool) {
	const from = 12
	w, _ := g.Size()
	p.Line(g)
	y := 0
	for _, part := range parts[1:] {
		says := part.Says
		y++
		if bases && part.Base != "" {
			g.TextIn(cell.Rect{X: from, Y: y + 1, W: w - from - 1, H: 1}, part.Base, p.Style(theme.Text))
		} else if both := says + ", " + part.Base; part.Base != "" && g.Width(both) <= w-from-1 {
			says = both
		}
		g.Text(2, y, part.Name, p.Style(theme.Quiet))
		g.TextIn(cell.Rect{X: from, Y: y, W: w - from - 1, H: 1}, says, p.Style(theme.Strong))
		if bases && part.Base != "" {
			y++
		}
	}
}
