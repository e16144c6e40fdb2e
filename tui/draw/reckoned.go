package draw

import (
	"chargehand/model/figure"
	modelwords "chargehand/model/words"
	"chargehand/physics"
	"chargehand/tui/cell"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// Reckoned paints what only the solver tells of slag and iron, a line each, where
// there is room beside the last entries.
func (p Pen) Reckoned(g cell.Grid, r figure.Reading) {
	w, h := g.Size()
	if h < 3 || w < 30 {
		return
	}
	p.Line(g)
	g.Text(1, 1, words.ReckonedHead, p.Style(theme.Quiet))
	y := 2
	line := func(name, says string, role theme.Role) {
		if y >= h {
			return
		}
		g.Text(1, y, name, p.Style(theme.Text))
		y += max(g.Wrap(cell.Rect{X: 13, Y: y, W: w - 14, H: min(3, h-y)}, says, p.Style(role)), 1)
	}
	if r.Running == (physics.Running{}) {
		line(words.LineSlag, words.TooLittleSlag, theme.Quiet)
	} else {
		line(words.LineSlag, modelwords.Runs(r.Running), theme.Strong)
	}
	if m := r.Figure(figure.SlagMelts); m.Known() {
		line("", modelwords.MeltsAt(p.Units.Roughly(m.P10, m.P50, m.P90)), theme.Text)
	}
	if r.Figure(figure.BloomCarbon).Known() {
		line(words.LineIron, modelwords.CarbonSpan(r.Carbon), theme.Strong)
	}
	if y := r.Figure(figure.Yield); y.Known() {
		line(words.LineYield, modelwords.PerTenShort(y), theme.Text)
	}
	if o := OreNote(r); o != "" {
		line(modelwords.LineOre, o, theme.Text)
	}
}
