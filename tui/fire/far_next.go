package fire

import (
	"strings"

	"chargehand/model/entry"
	"chargehand/model/figure"
	modelwords "chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/draw"
	"chargehand/tui/scene"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// farCharge is what the next charge is, a line a part.
func (p pen) farCharge(r *figure.Reading, v scene.View) []string {
	switch over, why := draw.NoMore(r); {
	case v.Adding != nil:
		return []string{modelwords.Number(v.Adding.Count, 2) + " " + v.Adding.What}
	case r.Phase == entry.BurnsDown:
		lines := []string{words.FarUsual(figure.BurnDownLeast, figure.BurnDownMost)}
		if f := r.Figure(figure.StackHeight); f.Known() && !r.StackLost() {
			lines = append(lines, words.FarBurden(p.Units, f.P50))
		}
		return lines
	case over:
		return []string{why}
	case len(r.Next) == 0:
		return []string{modelwords.NextIsUnset}
	}
	called := map[string]int{}
	for _, part := range r.Next {
		called[part.Measure]++
	}
	var lines []string
	for _, part := range r.Next {
		line := p.Units.OnePart(draw.Counting(part))
		if part.Count.Known && part.Measure != "" && called[part.Measure] == 1 {
			line = modelwords.Counted(part.Count.Value, part.Measure) // it says what is in it
		}
		lines = append(lines, line)
	}
	if why := draw.OreNote(r); why != "" {
		lines = append(lines, why)
	}
	return lines
}

// farNext draws the next charge as large as it fits, with its weight small.
func (p pen) farNext(g cell.Grid, r *figure.Reading, v scene.View, most int) {
	w, h := g.Size()
	y := 0
	if h >= 5 {
		y = 1
		if p.farNextLabel(g.Sub(cell.Rect{Y: 1, W: w, H: 1}), r, v) {
			y = 2
		}
	}
	style := p.Style(theme.Strong)
	if v.Adding != nil {
		style = p.Style(theme.Now)
	}
	lines := p.farCharge(r, v)
	b := p.Fit(lines, w-4, h-y, most)
	if r.Phase == entry.BurnsDown && b.Wide == 0 {
		b = p.Fit(lines[:1], w-4, h-y, most) // the burden stands among the facts too
	}
	if b.Wide == 0 && b.Rows() > h-y {
		b.Lines = []string{strings.Join(b.Lines, ", ")}
	}
	p.DrawBlocks(g, 2, y, b, style)
}

// farNextLabel says what the large letters are, where they do not say it
// themselves.
func (p pen) farNextLabel(g cell.Grid, r *figure.Reading, v scene.View) bool {
	if over, _ := draw.NoMore(r); over {
		return false
	}
	if v.Adding != nil {
		g.Text(2, 0, modelwords.OpenMeasure, p.Style(theme.Quiet))
		return true
	}
	w, _ := g.Size()
	x := 2 + g.Text(2, 0, modelwords.NextCharge+" ", p.Style(theme.Quiet))
	p.KeyBox(g, x, 0, v.NextKey)
	x += g.Width(v.NextKey) + 4
	var weights []string
	for _, part := range r.Next {
		if text := p.Weight(part, true); part.Mass.Known() && text != "" {
			weights = append(weights, text)
		}
	}
	g.TextIn(cell.Rect{X: x, W: w - x - 1, H: 1}, strings.Join(weights, ", "), p.Style(theme.Quiet))
	return true
}
