package paint

import (
	"strings"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/theme"
)

// farCharge is what the next charge is, a line a part.
func (p painter) farCharge(r figure.Reading, v FireView) []string {
	switch over, why := noMore(r); {
	case v.Adding != nil:
		return []string{"+" + words.Number(v.Adding.Count, 2) + " " + v.Adding.What}
	case r.Phase == entry.BurnsDown:
		lines := []string{words.FarUsual(figure.BurnDownLeast, figure.BurnDownMost)}
		if f := r.Figure(figure.StackHeight); f.Known() {
			lines = append(lines, p.u.FarBurden(f.P50))
		}
		return lines
	case over:
		return []string{why}
	case len(r.Next) == 0:
		return []string{words.NextIsUnset}
	}
	called := map[string]int{}
	for _, part := range r.Next {
		called[part.Measure]++
	}
	var lines []string
	for _, part := range r.Next {
		line := p.u.OnePart(counting(part))
		if part.Count.Known && part.Measure != "" && called[part.Measure] == 1 {
			line = words.Counted(part.Count.Value, part.Measure) // it says what is in it
		}
		lines = append(lines, line)
	}
	if why := oreNote(r); why != "" {
		lines = append(lines, why)
	}
	return lines
}

// farNext draws the next charge as large as it fits, with its weight small.
func (p painter) farNext(g cell.Grid, r figure.Reading, v FireView, most int) {
	w, h := g.Size()
	y := 0
	if h >= 5 {
		y = 1
		if p.farNextLabel(g.Sub(cell.Rect{Y: 1, W: w, H: 1}), r, v) {
			y = 2
		}
	}
	style := p.style(theme.Strong)
	if v.Adding != nil {
		style = p.style(theme.Now)
	}
	lines := p.farCharge(r, v)
	b := p.fit(lines, w-4, h-y, most)
	if r.Phase == entry.BurnsDown && b.wide == 0 {
		b = p.fit(lines[:1], w-4, h-y, most) // the burden stands among the facts too
	}
	if b.wide == 0 && b.rows() > h-y {
		b.lines = []string{strings.Join(b.lines, ", ")}
	}
	p.blocks(g, 2, y, b, style)
}

// farNextLabel says what the large letters are, where they do not say it
// themselves.
func (p painter) farNextLabel(g cell.Grid, r figure.Reading, v FireView) bool {
	if over, _ := noMore(r); over {
		return false
	}
	if v.Adding != nil {
		g.Text(2, 0, words.OpenMeasure, p.style(theme.Quiet))
		return true
	}
	w, _ := g.Size()
	x := 2 + g.Text(2, 0, words.NextCharge+" ", p.style(theme.Quiet))
	p.keyBox(g, x, 0, v.NextKey)
	x += g.Width(v.NextKey) + 4
	var weights []string
	for _, part := range r.Next {
		if text := p.weight(part, true); part.Mass.Known() && text != "" {
			weights = append(weights, text)
		}
	}
	g.TextIn(cell.Rect{X: x, W: w - x - 1, H: 1}, strings.Join(weights, ", "), p.style(theme.Quiet))
	return true
}
