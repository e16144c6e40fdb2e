package draw

import (
	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/forecast"
	modelwords "chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/theme"
)

// Coming is what is said of the next charge besides the reading.
type Coming struct {
	Key    string        // books it as shown
	Adding *Adding       // the open measure, while something is being added to it
	Due    *forecast.Due // when it is due
}

// Adding is the open measure: how much of what is in it so far.
type Adding struct {
	Count float64
	What  string
}

// Next paints what the next charge is: counts large, weights beside them. The
// open measure, while something is being added to it, takes its place.
func (p Pen) Next(g cell.Grid, r *figure.Reading, n Coming) {
	w, h := g.Size()
	if g.Bounds().Empty() {
		return
	}
	if n.Adding != nil {
		p.adding(g, *n.Adding)
		return
	}
	if h <= 2 {
		p.nextBrief(g, r, n.Key)
		return
	}
	if over, why := NoMore(r); over {
		g.Text(1, 0, why, p.Style(theme.Quiet))
		return
	}
	x := g.Text(1, 0, modelwords.NextCharge+" ", p.Style(theme.Quiet)) + 1
	p.KeyBox(g, x, 0, n.Key)
	if len(r.Next) == 0 {
		g.Text(1, 2, modelwords.NextIsUnset, p.Style(theme.Strong))
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
		g.Text(1, y, modelwords.LineRatio+" "+modelwords.Ratio(r.NextRatio.P50), p.Style(theme.Quiet))
		y++
	}
	if why := OreNote(r); why != "" && y < h {
		g.Text(1, y, why, p.Style(theme.Strong))
		y++
	}
	if n.Due != nil && y < h {
		says := third(r, n.Due)
		g.TextIn(cell.Rect{X: 1, Y: y, W: w - 1, H: 1}, fitting(g, w-1, says[0], says[1:]...), p.Style(theme.Quiet))
	}
}

// KeyBox shows the key that does it.
func (p Pen) KeyBox(g cell.Grid, x, y int, key string) {
	if key == "" {
		return
	}
	x += g.Text(x, y, "(", p.Style(theme.Quiet))
	x += g.Text(x, y, key, p.Style(theme.Now))
	g.Text(x, y, ")", p.Style(theme.Quiet))
}

// NoMore tells whether the smelt takes no more charges.
func NoMore(r *figure.Reading) (bool, string) {
	if r.Phase == entry.BurnsDown || r.Phase.Over() {
		return true, modelwords.NoMoreCharge
	}
	return false, ""
}

// OreNote says why there is no ore in the charge.
func OreNote(r *figure.Reading) string {
	switch {
	case r.LastOre:
		return modelwords.NoMoreOre
	case r.OreHeld:
		return modelwords.OreIsHeld
	}
	return ""
}

// countScale is how large the counts of a charge can be drawn, 0 for as text.
func (p Pen) countScale(parts []figure.Part, w, h int) int {
	Widest := 0
	for _, part := range parts {
		Widest = max(Widest, DotsWide(p.countOf(part)))
	}
	const beside = 16 // columns for the words
	for scale := 3; scale > 0; scale-- {
		if len(parts)*DigitRows(scale)+2 <= h && 1+Widest*scale+2+beside <= w {
			return scale
		}
	}
	return 0
}

// countOf is the number of a part that is drawn large: of its measures, or its
// weight where it is not counted.
func (p Pen) countOf(part figure.Part) string {
	if part.Count.Known {
		return modelwords.Number(float64(part.Count.Value), 2)
	}
	if part.Mass.Known() {
		return modelwords.Number(p.Units.Shown(part.Mass.P50, "kg"), 2)
	}
	return "?"
}

// part paints one part and returns the rows it took.
func (p Pen) part(g cell.Grid, y int, part figure.Part, scale int) int {
	w, _ := g.Size()
	if scale == 0 {
		what := fitting(g, w-1, p.Units.OnePart(Counting(part)), p.countOf(part)+" "+p.whatOf(part))
		g.TextIn(cell.Rect{X: 1, Y: y, W: w - 1, H: 1}, what, p.Style(theme.Strong))
		g.TextIn(cell.Rect{X: 3, Y: y + 1, W: w - 3, H: 1}, p.weightIn(g, w-3, part, false), p.Style(theme.Text))
		return 2
	}
	count := p.countOf(part)
	p.Big(g, 1, y, count, scale, p.Style(theme.Strong))
	n, rows := BigSize(count, scale)
	beside := cell.Rect{X: n + 3, Y: y + (rows-2)/2, W: w - n - 3, H: 1}
	g.TextIn(beside, p.whatOf(part), p.Style(theme.Strong))
	beside.Y++
	g.TextIn(beside, p.weightIn(g, beside.W, part, true), p.Style(theme.Text))
	return rows + rows/5
}

// Counting is a part without its mass, when it is counted.
func Counting(part figure.Part) entry.Part {
	if part.Count.Known {
		part.Part.Mass = entry.None[entry.Kilogram]()
	}
	return part.Part
}

// whatOf names what is counted: the measures of it, or kilograms.
func (p Pen) whatOf(part figure.Part) string {
	if part.Count.Known {
		return modelwords.Measures(part.Part)
	}
	return p.Units.Name("kg") + " " + modelwords.Material(part.What)
}

// Weight is what a counted part weighs, with the material where nothing else
// names it.
func (p Pen) Weight(part figure.Part, material bool) string {
	text := p.bareWeight(part, material)
	if text != "" && part.Count.Known && part.Mass.Known() && part.Mass.Basis == figure.Guessed {
		text += ", " + modelwords.Basis(figure.Guessed)
	}
	return text
}

// weightIn is the same in so many columns: rather without its basis than cut.
func (p Pen) weightIn(g cell.Grid, columns int, part figure.Part, material bool) string {
	return fitting(g, columns, p.Weight(part, material), p.bareWeight(part, material))
}

func (p Pen) bareWeight(part figure.Part, material bool) string {
	what := ""
	if material {
		what = " " + modelwords.Material(part.What)
	}
	switch {
	case part.Count.Known && part.Mass.Known():
		return p.Units.Kg(entry.Kilogram(part.Mass.P50)) + what
	case !part.Mass.Known() && material:
		return modelwords.Material(part.What)
	case !part.Mass.Known():
		return modelwords.WeighA(part.Measure)
	}
	return ""
}

// nextBrief is the charge in two lines, for small windows.
func (p Pen) nextBrief(g cell.Grid, r *figure.Reading, key string) {
	w, _ := g.Size()
	if over, why := NoMore(r); over {
		g.Text(2, 0, why, p.Style(theme.Quiet))
		return
	}
	x := 2 + g.Text(2, 0, modelwords.NextCharge+" ", p.Style(theme.Quiet))
	p.KeyBox(g, x, 0, key)
	x = max(x+4, 18)
	if len(r.Next) == 0 {
		g.TextIn(cell.Rect{X: x, W: w - x, H: 1}, modelwords.NextIsUnset, p.Style(theme.Strong))
	}
	for y, part := range r.Next {
		text := p.Units.OnePart(Counting(part))
		g.TextIn(cell.Rect{X: x, Y: y, W: w - x, H: 1}, text, p.Style(theme.Strong))
		n := x + g.Width(text) + 2
		g.TextIn(cell.Rect{X: n, Y: y, W: w - n, H: 1}, p.weightIn(g, w-n, part, false), p.Style(theme.Text))
	}
	if why := OreNote(r); why != "" && len(r.Next) < 2 {
		g.TextIn(cell.Rect{X: x, Y: 1, W: w - x, H: 1}, why, p.Style(theme.Strong))
	}
}

// adding shows the open measure, its count as large as it fits.
func (p Pen) adding(g cell.Grid, a Adding) {
	w, h := g.Size()
	count := modelwords.Number(a.Count, 2)
	if h <= 2 {
		x := 2 + g.Text(2, 0, count+" ", p.Style(theme.Now))
		g.TextIn(cell.Rect{X: x, W: w - x, H: 1}, a.What, p.Style(theme.Strong))
		g.Text(2, 1, modelwords.OpenMeasure, p.Style(theme.Quiet))
		return
	}
	g.Text(1, 0, modelwords.OpenMeasure, p.Style(theme.Quiet))
	scale := 1
	for n := 4; n > 1; n-- {
		if bw, bh := BigSize(count, n); bw+2 <= w && bh+3 <= h {
			scale = n
			break
		}
	}
	p.Big(g, 1, 1, count, scale, p.Style(theme.Now))
	g.TextIn(cell.Rect{X: 1, Y: 2 + DigitRows(scale), W: w - 1, H: 1}, a.What, p.Style(theme.Strong))
}

// third is when the third charge from now is due, in fewer words where there is little
// room. While the next is late it waits for that: it is no nearer than two charges.
func third(r *figure.Reading, due *forecast.Due) []string {
	_, next, _ := due.Next.At()
	low, _, high := due.Three.Left(min(r.At, next))
	return []string{modelwords.ThirdIn(thirdFrom(r), low, high), modelwords.ThirdInShort(thirdFrom(r), low, high), modelwords.ThirdInBrief(thirdFrom(r), low, high)}
}

// thirdFrom is the number of the third charge from now.
func thirdFrom(r *figure.Reading) int {
	last := 0
	if n := len(r.Charges); n > 0 {
		last = r.Charges[n-1].Number
	}
	return last + 3
}
