package paint

import (
	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/theme"
)

// next paints what the next charge is: counts large, weights beside them. The
// open measure, while something is being added to it, takes its place.
func (p painter) next(g cell.Grid, r figure.Reading, v FireView) {
	w, h := g.Size()
	if g.Bounds().Empty() {
		return
	}
	if v.Adding != nil {
		p.adding(g, *v.Adding)
		return
	}
	if h <= 2 {
		p.nextBrief(g, r, v.NextKey)
		return
	}
	if over, why := noMore(r); over {
		g.Text(1, 0, why, p.style(theme.Quiet))
		return
	}
	x := g.Text(1, 0, words.NextCharge+" ", p.style(theme.Quiet)) + 1
	p.keyBox(g, x, 0, v.NextKey)
	if len(r.Next) == 0 {
		g.Text(1, 2, words.NextIsUnset, p.style(theme.Strong))
		return
	}
	scale := p.countScale(r.Next, w, h)
	y := 1
	if h > 9 && scale > 0 {
		y++
	}
	for _, part := range r.Next {
		y += p.part(g, y, part, scale)
	}
	if r.NextRatio.Known() && y < h {
		g.Text(1, y, words.LineRatio+" "+words.Ratio(r.NextRatio.P50), p.style(theme.Quiet))
		y++
	}
	if why := oreNote(r); why != "" && y < h {
		g.Text(1, y, why, p.style(theme.Strong))
		y++
	}
	if v.Due != nil && y < h {
		low, _, high := v.Due.Three.Left(r.At)
		g.TextIn(cell.Rect{X: 1, Y: y, W: w - 1, H: 1}, words.ThirdIn(low, high), p.style(theme.Quiet))
	}
}

// keyBox shows the key that does it.
func (p painter) keyBox(g cell.Grid, x, y int, key string) {
	if key == "" {
		return
	}
	x += g.Text(x, y, "(", p.style(theme.Quiet))
	x += g.Text(x, y, key, p.style(theme.Now))
	g.Text(x, y, ")", p.style(theme.Quiet))
}

// noMore tells whether the smelt takes no more charges.
func noMore(r figure.Reading) (bool, string) {
	if r.Phase == entry.BurnsDown || r.Phase.Over() {
		return true, words.NoMoreCharge
	}
	return false, ""
}

// oreNote says why there is no ore in the charge.
func oreNote(r figure.Reading) string {
	switch {
	case r.LastOre:
		return words.NoMoreOre
	case r.OreHeld:
		return words.OreIsHeld
	}
	return ""
}

// countScale is how large the counts of a charge can be drawn, 0 for as text.
func (p painter) countScale(parts []figure.Part, w, h int) int {
	widest := 0
	for _, part := range parts {
		widest = max(widest, dotsWide(p.countOf(part)))
	}
	const beside = 16 // columns for the words
	for scale := 3; scale > 0; scale-- {
		if len(parts)*digitRows(scale)+2 <= h && 1+widest*scale+2+beside <= w {
			return scale
		}
	}
	return 0
}

// countOf is the number of a part that is drawn large: of its measures, or its
// weight where it is not counted.
func (p painter) countOf(part figure.Part) string {
	if part.Count.Known {
		return words.Number(float64(part.Count.Value), 2)
	}
	if part.Mass.Known() {
		return words.Number(p.u.Shown(part.Mass.P50, "kg"), 1)
	}
	return "?"
}

// part paints one part and returns the rows it took.
func (p painter) part(g cell.Grid, y int, part figure.Part, scale int) int {
	w, _ := g.Size()
	if scale == 0 {
		what := fitting(g, w-1, p.u.OnePart(counting(part)), p.countOf(part)+" "+p.whatOf(part))
		g.TextIn(cell.Rect{X: 1, Y: y, W: w - 1, H: 1}, what, p.style(theme.Strong))
		g.TextIn(cell.Rect{X: 3, Y: y + 1, W: w - 3, H: 1}, p.weightIn(g, w-3, part, false), p.style(theme.Text))
		return 2
	}
	count := p.countOf(part)
	p.big(g, 1, y, count, scale, p.style(theme.Strong))
	n, rows := BigSize(count, scale)
	beside := cell.Rect{X: n + 3, Y: y + (rows-2)/2, W: w - n - 3, H: 1}
	g.TextIn(beside, p.whatOf(part), p.style(theme.Strong))
	beside.Y++
	g.TextIn(beside, p.weightIn(g, beside.W, part, true), p.style(theme.Text))
	return rows + rows/5
}

// counting is a part without its mass, when it is counted.
func counting(part figure.Part) entry.Part {
	if part.Count.Known {
		part.Part.Mass = entry.None[entry.Kilogram]()
	}
	return part.Part
}

// whatOf names what is counted: the measures of it, or kilograms.
func (p painter) whatOf(part figure.Part) string {
	if part.Count.Known {
		return words.Measures(part.Part)
	}
	return p.u.Name("kg") + " " + words.Material(part.What)
}

// weight is what a counted part weighs, with the material where nothing else
// names it.
func (p painter) weight(part figure.Part, material bool) string {
	text := p.bareWeight(part, material)
	if text != "" && part.Count.Known && part.Mass.Known() && part.Mass.Basis == figure.Guessed {
		text += ", " + words.Basis(figure.Guessed)
	}
	return text
}

// weightIn is the same in so many columns: rather without its basis than cut.
func (p painter) weightIn(g cell.Grid, columns int, part figure.Part, material bool) string {
	return fitting(g, columns, p.weight(part, material), p.bareWeight(part, material))
}

func (p painter) bareWeight(part figure.Part, material bool) string {
	what := ""
	if material {
		what = " " + words.Material(part.What)
	}
	switch {
	case part.Count.Known && part.Mass.Known():
		return p.u.Kg(entry.Kilogram(part.Mass.P50)) + what
	case !part.Mass.Known() && material:
		return words.Material(part.What)
	case !part.Mass.Known():
		return words.WeighA(part.Measure)
	}
	return ""
}

// fitting is the longer of two texts where it fits.
func fitting(g cell.Grid, columns int, long, short string) string {
	if g.Width(long) <= columns {
		return long
	}
	return short
}

// nextBrief is the charge in two lines, for small windows.
func (p painter) nextBrief(g cell.Grid, r figure.Reading, key string) {
	w, _ := g.Size()
	if over, why := noMore(r); over {
		g.Text(2, 0, why, p.style(theme.Quiet))
		return
	}
	x := 2 + g.Text(2, 0, words.NextCharge+" ", p.style(theme.Quiet))
	p.keyBox(g, x, 0, key)
	x = max(x+4, 18)
	if len(r.Next) == 0 {
		g.TextIn(cell.Rect{X: x, W: w - x, H: 1}, words.NextIsUnset, p.style(theme.Strong))
	}
	for y, part := range r.Next {
		text := p.u.OnePart(counting(part))
		g.TextIn(cell.Rect{X: x, Y: y, W: w - x, H: 1}, text, p.style(theme.Strong))
		n := x + g.Width(text) + 2
		g.TextIn(cell.Rect{X: n, Y: y, W: w - n, H: 1}, p.weightIn(g, w-n, part, false), p.style(theme.Text))
	}
	if why := oreNote(r); why != "" && len(r.Next) < 2 {
		g.TextIn(cell.Rect{X: x, Y: 1, W: w - x, H: 1}, why, p.style(theme.Strong))
	}
}

// adding shows the open measure, its count as large as it fits.
func (p painter) adding(g cell.Grid, a Adding) {
	w, h := g.Size()
	count := "+" + words.Number(a.Count, 2)
	if h <= 2 {
		x := 2 + g.Text(2, 0, count+" ", p.style(theme.Now))
		g.TextIn(cell.Rect{X: x, W: w - x, H: 1}, a.What, p.style(theme.Strong))
		g.Text(2, 1, words.OpenMeasure, p.style(theme.Quiet))
		return
	}
	g.Text(1, 0, words.OpenMeasure, p.style(theme.Quiet))
	scale := 1
	for n := 4; n > 1; n-- {
		if bw, bh := BigSize(count, n); bw+2 <= w && bh+3 <= h {
			scale = n
			break
		}
	}
	p.big(g, 1, 1, count, scale, p.style(theme.Now))
	g.TextIn(cell.Rect{X: 1, Y: 2 + digitRows(scale), W: w - 1, H: 1}, a.What, p.style(theme.Strong))
}
