package draw

import (
	"chargehand/model/figure"
	modelwords "chargehand/model/words"
	"chargehand/physics"
	"chargehand/tui/cell"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// reckoned is one thing that only the solver tells: in full, and shorter, which says no less
// of what matters.
type reckoned struct {
	name, says, short string
	role              theme.Role
}

// mostRows is how many rows one of them takes.
const mostRows = 3

// Reckoned paints what only the solver tells of slag and iron, where there is room beside the
// last entries: said shorter, the first of it before the last, rather than cut.
func (p Pen) Reckoned(g cell.Grid, r *figure.Reading) {
	w, h := g.Size()
	if h < 3 || w < 30 {
		return
	}
	p.Line(g)
	g.Text(1, 1, words.ReckonedHead, p.Style(theme.Quiet))
	const top, at = 2, 13
	room := w - at - 1
	lines := p.reckonedOf(r)
	rows := func() (n int) {
		for _, l := range lines {
			n += min(max(g.Rows(l.says, room), 1), mostRows)
		}
		return n
	}
	for i := 0; i < len(lines) && rows() > h-top; i++ {
		if lines[i].short != "" {
			lines[i].says = lines[i].short
		}
	}
	y := top
	for _, l := range lines {
		if y >= h {
			break
		}
		most := min(mostRows, h-y)
		g.Text(1, y, l.name, p.Style(theme.Text))
		y += max(g.Wrap(cell.Rect{X: at, Y: y, W: room, H: most}, InParts(g, l.says, room, most), p.Style(l.role)), 1)
	}
}

// reckonedOf are the lines, what matters most first.
func (p Pen) reckonedOf(r *figure.Reading) []reckoned {
	lines := []reckoned{{words.LineSlag, words.TooLittleSlag, words.TooLittleBrief, theme.Quiet}}
	if r.Running != (physics.Running{}) {
		lines[0] = reckoned{words.LineSlag, modelwords.Runs(r.Running), "", theme.Strong}
	}
	if m := r.Figure(figure.SlagMelts); m.Known() {
		hot := p.Units.Roughly(m.P10, m.P50, m.P90)
		lines = append(lines, reckoned{"", modelwords.MeltsAt(hot), modelwords.MeltsShort(hot), theme.Text})
	}
	if r.Figure(figure.BloomCarbon).Known() {
		lines = append(lines, reckoned{words.LineIron, modelwords.CarbonSpan(r.Carbon), modelwords.CarbonShort(r.Carbon), theme.Strong})
	}
	if y := r.Figure(figure.Yield); y.Known() {
		lines = append(lines, reckoned{words.LineYield, modelwords.PerTenShort(y), "", theme.Text})
	}
	if o := OreNote(r); o != "" {
		lines = append(lines, reckoned{modelwords.LineOre, o, "", theme.Text})
	}
	return lines
}
