package draw

import (
	"chargehand/model/figure"
	"chargehand/tui/cell"
	"chargehand/tui/theme"
)

// Columns of a figure line: where the value starts, what stands beside it, the
// bar, and the remark. A part that has no room is left out.
type figureColumns struct{ value, beside, bar, barWidth, remark int }

func columnsOf(w int) figureColumns {
	switch {
	case w >= 104:
		return figureColumns{value: 12, beside: 32, bar: 53, barWidth: 26, remark: 81}
	case w >= 90:
		return figureColumns{value: 11, beside: 27, bar: 48, barWidth: 15, remark: 65}
	case w >= 66:
		return figureColumns{value: 10, beside: 25, bar: 42, barWidth: 10, remark: 53}
	}
	return figureColumns{value: 10, beside: 25, remark: 25}
}

// Figures paints a line for each figure, as many as fit, with a blank between
// when there is room for that.
func (p Pen) Figures(g cell.Grid, r *figure.Reading) {
	w, h := g.Size()
	if h < 1 {
		return
	}
	p.Line(g)
	lines := p.figureLines(r)
	step, y := 1, 1
	switch {
	case h >= 2*len(lines)+1:
		step = 2
	case h >= len(lines)+2:
		y = 1
	}
	for _, l := range lines {
		if y >= h {
			return
		}
		p.figure(g.Sub(cell.Rect{X: 1, Y: y, W: w - 1, H: 1}), l, columnsOf(w-1))
		y += step
	}
}

func (p Pen) figure(g cell.Grid, l figureLine, c figureColumns) {
	w, _ := g.Size()
	g.Text(1, 0, l.name, p.Style(theme.Quiet))
	style := p.Style(theme.Strong)
	if !l.known {
		style = p.Style(theme.Text)
	}
	end := c.value + g.Text(c.value, 0, l.value, style)
	x := max(c.beside, end+1)
	if len(l.remark) > 1 && g.Width(l.remark.full()) > w-max(c.remark, end+1) {
		l.beside, l.remark, l.bar = say(l.remark.in(g, w-x)), nil, nil
	}
	switch {
	case c.remark == c.beside: // one of the two, the remark when there is no value to speak for itself
		text := l.beside.full()
		if text == "" || !l.known {
			text = l.remark.full()
		}
		g.TextIn(cell.Rect{X: x, W: w - x, H: 1}, text, p.Style(theme.Text))
		return
	case !l.known && len(l.beside) == 0:
		g.TextIn(cell.Rect{X: x, W: w - x, H: 1}, l.remark.full(), p.Style(theme.Quiet))
		return
	}
	g.TextIn(cell.Rect{X: x, W: c.remark - x - 1, H: 1}, l.beside.full(), p.Style(theme.Text))
	if l.bar != nil && c.bar > 0 && x+g.Width(l.beside.full()) < c.bar {
		p.bar(g, c.bar, c.barWidth, *l.bar)
	}
	remark := l.remark.full()
	if whole := remark + ", " + l.more; l.more != "" && g.Width(whole) <= w-c.remark {
		remark = whole
	}
	g.TextIn(cell.Rect{X: c.remark, W: w - c.remark, H: 1}, remark, p.Style(theme.Quiet))
}
