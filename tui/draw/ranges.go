package draw

import (
	"math"
	"slices"

	"chargehand/model/figure"
	"chargehand/model/rule"
	modelwords "chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/chart"
	"chargehand/tui/theme"
)

// rangeColumns says where the parts of a figure's line stand: its value, the track
// of its range, the remark. Without a track there is a place for its mark alone.
type rangeColumns struct{ value, track, wide, remark int }

func rangesOf(w int) rangeColumns {
	switch {
	case w >= 85:
		return rangeColumns{value: 11, track: 33, wide: 20, remark: 60}
	case w >= 62:
		return rangeColumns{value: 11, track: 31, wide: 9, remark: 46}
	}
	return rangeColumns{value: 8, remark: 26}
}

// Ranges paints a line for each figure in its own place: word, value, where it
// stands between two ends with what is good marked, and one plain remark. A figure
// that a warning speaks of has another mark and its remark stands out.
func (p Pen) Ranges(g cell.Grid, r *figure.Reading, ws []rule.Warning, left []Left) {
	w, h := g.Size()
	if h < 1 {
		return
	}
	p.Line(g)
	c := rangesOf(w)
	for i, l := range p.rangeLines(r, c.wide > 0, left) {
		if i+1 >= h {
			return
		}
		if spokenOf(l.name, ws) {
			l.off = true
		}
		p.ranged(g.Sub(cell.Rect{X: 1, Y: i + 1, W: w - 1, H: 1}), l, c)
	}
}

// ranged paints one of them.
func (p Pen) ranged(g cell.Grid, l figureLine, c rangeColumns) {
	w, _ := g.Size()
	g.Text(1, 0, l.name, p.Style(theme.Text))
	value, behind := theme.Strong, theme.Quiet
	if !l.known {
		value = theme.Quiet
	}
	if l.off {
		behind = theme.Warn
	}
	end := c.value + g.Text(c.value, 0, l.value, p.Style(value))
	x := max(c.remark, end+1)
	if !l.known {
		x = end + 2
	}
	says := l.behind(c).in(g, w-x)
	g.TextIn(cell.Rect{X: x, W: w - x, H: 1}, says, p.Style(behind))
	switch {
	case l.off && l.known && (c.wide == 0 || l.bar == nil) && end < c.remark-1: // with a track the value on it is the mark
		g.Text(c.remark-2, 0, p.M.Off, p.Style(theme.Warn))
	case c.wide > 0 && l.bar != nil && end+6 <= c.track:
		p.track(l).Draw(g, p.Theme, c.track, 0, c.wide)
	case c.wide > 0 && l.bar == nil && slices.Contains(l.beside, says):
		for _, base := range l.base {
			if end+2+g.Width(base)+1 < c.remark { // two blanks before the remark, or both read as one
				g.Text(end+2, 0, base, p.Style(theme.Quiet))
				break
			}
		}
	}
}

// behind is what is said behind a value: both that stands beside it and the remark where
// they have room, else the remark of what has a bar or is not as it should be, and of all
// others what stands beside.
func (l figureLine) behind(c rangeColumns) (says forms) {
	one, both := l.beside, len(l.beside) > 0 && len(l.remark) > 0
	if l.bar != nil && !l.off && len(l.remark) > 0 || len(l.beside) == 0 {
		one = l.remark
	}
	if both && (l.off || l.known && c.wide > 0) {
		says = append(says, l.beside.full()+", "+l.remark.full())
	}
	if l.more != "" && c.wide > 9 {
		says = append(says, one.full()+", "+l.more)
	}
	return append(says, one...)
}

// track is the range of a figure with its ends in words.
func (p Pen) track(l figureLine) chart.Ranged {
	b := l.bar
	to := niceEnd(b.to)
	if b.low != 0 || b.to <= 0 {
		to = b.to
	}
	return chart.Ranged{
		From: b.low, To: to, Low: endWord(b.low), High: endWord(to), Good: b.good, GoodFrom: b.from, Until: b.until, At: b.at, Outside: l.off,
	}
}

// niceEnd is the next number up that is easy to read.
func niceEnd(v float64) float64 {
	if v <= 0 {
		return v
	}
	step := math.Pow(10, math.Floor(math.Log10(v)))
	for _, m := range []float64{1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10} {
		if m*step >= v-1e-9 {
			return m * step
		}
	}
	return 10 * step
}

func endWord(v float64) string {
	if v < 0 {
		return "−" + modelwords.Number(-v, 1)
	}
	return modelwords.Number(v, 1)
}
