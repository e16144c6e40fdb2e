package compare

import (
	"math"
	"slices"
	"strings"

	"chargehand/model/compare"
	"chargehand/model/shelf"
	modelwords "chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/letter"
	"chargehand/tui/scene"
	"chargehand/tui/screen"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// Paint shows what differed most, the table, and the days.
func (s Screen) Paint(g cell.Grid, sh *screen.Shared) {
	th := sh.Theme
	of := ""
	if s.read && len(s.made.Smelts) >= Least {
		of = words.ComparedAre(s.mix())
	}
	screen.Top(g, sh, words.DoCompare, of)
	body := screen.Body(g)
	n := len(s.made.Smelts)
	switch {
	case !s.read:
		g.Text(2, body.Y+1, words.BeingReckoned, th.Style(theme.Text))
		return
	case n < Least:
		g.Wrap(cell.Rect{X: 2, Y: body.Y + 1, W: body.W - 4, H: 3}, words.NothingToCompare, th.Style(theme.Text))
		return
	}
	w, h := g.Size()
	size := scene.SizeOf(w, h)
	answer := 5
	if size >= scene.Middle {
		answer = 8
	}
	top, rest := body.CutTop(answer)
	s.answer(g.Sub(top), sh)
	table, strips := rest.CutTop(n + 2)
	s.table(g.Sub(table), sh)
	s.strips(g.Sub(strips), sh)
}

// mix is the ore mix that all are of.
func (s Screen) mix() string {
	for _, l := range s.made.Smelts {
		if l.Mix != s.made.Smelts[0].Mix {
			return ""
		}
	}
	if len(s.made.Smelts) == 0 {
		return ""
	}
	return s.made.Smelts[0].Mix
}

// answer is what differed most, in large letters where there is room, and in words.
func (s Screen) answer(g cell.Grid, sh *screen.Shared) {
	th := sh.Theme
	w, h := g.Size()
	said := append(sh.Units.Differed(s.made), modelwords.CannotSay(len(s.made.Smelts)))
	trend := modelwords.Trend(s.made)
	if h < 8 {
		for y, line := range append(said[:min(len(said), h-2)], trend) {
			style := th.Style(theme.Text)
			if y == 0 {
				style = th.Style(theme.Strong)
			}
			g.TextIn(cell.Rect{X: 2, Y: y, W: w - 3, H: 1}, line, style)
		}
		g.Fill(cell.Rect{Y: h - 1, W: w, H: 1}, th.Marks().HLine, th.Style(theme.Frame))
		return
	}
	x := 2
	if len(s.made.Differed) > 0 {
		g.Text(2, 0, words.DifferedMost, th.Style(theme.Quiet))
		large := strings.ToUpper(words.DifferedLarge(s.made.Differed[0].Measure))
		letter.Small.Text(g, 2, 1, large, th.Style(theme.Strong), th.ASCII)
		x = w * 2 / 5
		if wide, _ := letter.Small.Size(large); 2+wide+2 > x {
			x = 2 + wide + 3
		}
	}
	g.Text(x, 0, words.InWords, th.Style(theme.Quiet))
	y := 1
	for i, line := range said {
		style := th.Style(theme.Text)
		if i == 0 {
			style = th.Style(theme.Strong)
		}
		rows := min(g.Rows(line, w-x-1), 2)
		g.Wrap(cell.Rect{X: x, Y: y, W: w - x - 1, H: rows}, line, style)
		y += rows
	}
	g.TextIn(cell.Rect{X: 2, Y: 6, W: w - 3, H: 1}, trend, th.Style(theme.Text))
	g.Fill(cell.Rect{Y: h - 1, W: w, H: 1}, th.Marks().HLine, th.Style(theme.Frame))
}

// measures are those of the table, those that matter most first to stay.
var measures = []compare.Measure{compare.Bloom, compare.Yield, compare.Ore, compare.Charcoal, compare.Interval, compare.Blast, compare.PerBloom, compare.Hours, compare.Rise, compare.Ratio, compare.Slag}

// table is a smelt a row.
func (s Screen) table(g cell.Grid, sh *screen.Shared) {
	th := sh.Theme
	w, h := g.Size()
	cols := []screen.Column{{Head: words.CompareSmelt, Width: nameWidth}}
	room := w - nameWidth - 6
	var shown []compare.Measure
	for _, m := range measures {
		if !s.knows(m) {
			continue
		}
		wide := max(sh.Width(words.CompareHead(m)), 10)
		if room -= wide + 2; room < 0 {
			break
		}
		shown = append(shown, m)
		cols = append(cols, screen.Column{Head: words.CompareHead(m), Width: wide, Right: true})
	}
	if room > 2 { // the last column takes what is left, which is none of these
		cols = append(cols, screen.Column{})
	}
	t := screen.Table{Columns: cols, Heads: true, Picked: s.at}
	for _, l := range s.made.Smelts {
		row := []string{nameOf(l)}
		for _, m := range shown {
			row = append(row, sh.Units.CompareValue(l, m))
		}
		row = append(row, make([]string, len(cols)-len(row))...)
		t.Rows = append(t.Rows, screen.Row{Cells: row})
	}
	t.Paint(g.Sub(cell.Rect{W: w, H: h - 1}), th)
	x := nameWidth + 4
	for _, m := range shown { // what lies far from the others is bold
		wide := max(sh.Width(words.CompareHead(m)), 10)
		for i, l := range s.made.Smelts {
			if text := sh.Units.CompareValue(l, m); i != s.at && s.made.Outlying(i, m, s.own) {
				g.TextRight(x+wide, i+1, text, th.Style(theme.Strong))
			}
		}
		x += wide + 2
	}
	g.Fill(cell.Rect{Y: h - 1, W: w, H: 1}, th.Marks().HLine, th.Style(theme.Frame))
}

// knows tells whether a measure is known of any of them.
func (s Screen) knows(m compare.Measure) bool {
	return slices.ContainsFunc(s.made.Smelts, func(l shelf.Summary) bool { _, known := compare.Value(l, m); return known })
}

// nameWidth is how wide the names stand in table and strips.
const nameWidth = 24

func nameOf(l shelf.Summary) string {
	if l.Undated || l.Lit.IsZero() {
		return l.ID
	}
	return l.Lit.Format("2 Jan 06") + " " + l.Furnace
}

// mostStripRows is how tall a day becomes where there is room.
const mostStripRows = 15

// strips are the days one under another, at one scale, lined up at the first ore.
func (s Screen) strips(g cell.Grid, sh *screen.Shared) {
	th := sh.Theme
	w, h := g.Size()
	n := len(s.days)
	each := min((h-1)/n, mostStripRows)
	if each < 2 {
		return
	}
	left := nameWidth + 2
	before, after, minutes, ore := 0.0, 60.0, 1.0, 0.1
	for _, d := range s.days {
		for _, b := range d.Charges {
			before, after = math.Max(before, -b.At), math.Max(after, b.At)
			ore = math.Max(ore, b.Ore)
			if !b.Slow {
				minutes = math.Max(minutes, math.Min(b.Minutes, 60))
			}
		}
		after = math.Max(after, d.Pull.Value)
	}
	before = math.Min(before, 180) // a long morning leaves room for the day
	scale := float64(w-left-2) / (before + after)
	wide := 2
	for _, d := range s.days {
		for i, b := range d.Charges {
			if i > 0 && (b.At-d.Charges[i-1].At)*scale < 3 && b.At*scale >= 1 {
				wide = 1
			}
		}
	}
	at := func(m float64) int { return left + int(math.Round((m+before)*scale)) }
	down := 1
	if each > 4 {
		down = max(each/3, 2)
	}
	up := each - down - 1
	if each == 2 {
		up, down = 1, 1
	}
	for i, d := range s.days {
		y := i * each
		g.Fill(cell.Rect{X: at(0), Y: y, W: 1, H: up + down}, th.Marks().VLine, th.Style(theme.Frame))
		s.strip(g, sh, d, y, up, down, wide, at, minutes, ore)
		style := th.Style(theme.Text)
		if i == s.at {
			style = th.Style(theme.Strong)
		}
		l := s.made.Smelts[i]
		g.TextIn(cell.Rect{X: 2, Y: y, W: left - 3, H: 1}, nameOf(l), style)
		if up+down > 2 {
			g.TextIn(cell.Rect{X: 2, Y: y + 1, W: left - 3, H: 1}, words.CompareGave(sh.Units, l), th.Style(theme.Strong))
		}
		if up > 2 {
			g.TextIn(cell.Rect{X: 2, Y: y + 2, W: left - 3, H: 1}, l.Tried, th.Style(theme.Quiet))
		}
	}
	s.axis(g, sh, n*each, before, after, at)
}

// strip is one day: a bar a charge, as high as it took minutes, as deep as its ore; then
// the burn-down as a line, and the pull.
func (s Screen) strip(g cell.Grid, sh *screen.Shared, d compare.Day, y, up, down, wide int, at func(float64) int, minutes, ore float64) {
	th := sh.Theme
	w, _ := g.Size()
	if len(d.Charges) == 0 {
		g.TextIn(cell.Rect{X: nameWidth + 2, Y: y, W: w - nameWidth - 3, H: 1}, words.NoDayRead, th.Style(theme.Quiet))
		return
	}
	last := -1
	for _, b := range d.Charges {
		x := max(at(b.At), last+1)
		if x < nameWidth+2 || x >= w-1 {
			continue
		}
		last = x + wide - 1
		style := th.Style(theme.Bar)
		if b.Slow {
			style = th.Style(theme.Strong)
		}
		eighths := int(math.Round(math.Min(b.Minutes/minutes, 1) * float64(8*up)))
		for r := range up {
			if fill := min(eighths-8*r, 8); fill > 0 {
				g.Fill(cell.Rect{X: x, Y: y + up - 1 - r, W: wide, H: 1}, block(th, fill), style)
			}
		}
		if b.Ore > 0 {
			halves := max(1, int(math.Round(b.Ore/ore*float64(2*down))))
			for r := range (halves + 1) / 2 {
				g.Fill(cell.Rect{X: x, Y: y + up + r, W: wide, H: 1}, oreBlock(th, halves-2*r), th.Style(theme.OreBar))
			}
		}
	}
	if d.BurnDown.Known && d.Pull.Known {
		from, to := max(at(d.BurnDown.Value), last+1), min(at(d.Pull.Value), w-2)
		g.Fill(cell.Rect{X: from, Y: y + up - 1, W: max(to-from, 0), H: 1}, th.Marks().HLine, th.Style(theme.Text))
		if word := words.CompareBurnDown; g.Width(word) < w-1-from {
			g.Text(from, y+up, word, th.Style(theme.Quiet))
		}
	}
	if d.Pull.Known {
		x := min(at(d.Pull.Value), w-2)
		g.Set(x, y+up-1, pull(th), th.Style(theme.Strong))
		if word := words.ComparePull; up > 1 && x-g.Width(word) > last {
			g.TextRight(x+1, y+up-2, word, th.Style(theme.Quiet))
		}
	}
}

func block(th theme.Theme, eighths int) rune {
	if th.ASCII {
		return '#'
	}
	return []rune("▁▂▃▄▅▆▇█")[eighths-1]
}

// oreBlock is a row of a bar of ore, of which so many halves are left; without colours it
// is told from the minutes above it by its pattern.
func oreBlock(th theme.Theme, halves int) rune {
	switch {
	case th.ASCII:
		return '='
	case th.Profile == theme.None:
		return '▒'
	case halves < 2:
		return '▀'
	}
	return '█'
}

func pull(th theme.Theme) rune {
	if th.ASCII {
		return '|'
	}
	return '┃'
}

// axis is the hours from the first ore.
func (s Screen) axis(g cell.Grid, sh *screen.Shared, y int, before, after float64, at func(float64) int) {
	th := sh.Theme
	w, h := g.Size()
	if y >= h {
		return
	}
	step := 1.0
	if after/60*5 > float64(w)/3 {
		step = 2
	}
	zero := words.CompareFirstOre
	from := at(0) - g.Width(zero)/2
	g.Text(from, y, zero, th.Style(theme.Strong))
	free := from + g.Width(zero) + 1
	for hour := step; hour*60 <= after; hour += step {
		text := words.HoursOn(hour)
		if x := at(hour*60) - g.Width(text)/2; x >= free && x+g.Width(text) < w {
			free = x + g.Width(text) + 1 + g.Text(x, y, text, th.Style(theme.Quiet)) - g.Width(text)
		}
	}
	g.TextIn(cell.Rect{X: 2, Y: y, W: min(nameWidth, from-3), H: 1}, words.CompareScale, th.Style(theme.Quiet))
	if y+1 < h {
		key := words.CompareKey
		if th.Profile == theme.None || th.ASCII {
			key = words.CompareKeyBold
		}
		g.TextIn(cell.Rect{X: 2, Y: y + 1, W: w - 3, H: 1}, key, th.Style(theme.Quiet))
	}
}
