package fire

import (
	"math"
	"strconv"
	"strings"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/rule"
	modelwords "chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/chart"
	"chargehand/tui/draw"
	"chargehand/tui/letter"
	"chargehand/tui/scene"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// farRoomy tells whether the far view has room for its letters.
func farRoomy(w, h int) bool { return scene.SizeOf(w, h) > scene.Cramped }

// paintFarRoomy paints the far view in letters of our own: an act before all else,
// else the minutes with the measure that burns beside them; then the charge, and in
// a place of its own what is wrong.
func paintFarRoomy(g cell.Grid, p pen, r *figure.Reading, v scene.View) {
	w, h := g.Size()
	_, body := g.Bounds().CutBottom(draw.FootRows)
	var bar cell.Rect
	if v.NotKept > 0 || v.Asked != "" {
		bar, body = body.CutTop(min(max(h/7, 5), body.H/4))
		p.farBar(g.Sub(bar), v)
	}
	if len(v.Warnings) > 0 && v.Warnings[0].Grade == rule.Act {
		top, rest := body.CutTop((body.H + draw.FootRows) * 38 / 100)
		why, charge := rest.CutTop(p.farRemedyRows(w, rest.H, v.Warnings[0]))
		p.farAct(g.Sub(top), r, v)
		p.farRemedy(g.Sub(why), v.Warnings[0])
		p.farBelow(g.Sub(charge), r, v, (h*farLeast+99)/100)
		return
	}
	below := 2
	if v.Caution != nil && len(v.Warnings) == 0 {
		below = p.CautionRows(w, *v.Caution)
	}
	keeps := 9 // rows for the charge, with the line over it
	if body.H-below-keeps < 6 {
		keeps = 5
	}
	head, charge := body.CutTop(min((body.H+draw.FootRows)*40/100+1, body.H-below-keeps))
	notice, charge := charge.CutBottom(below)
	if r.Phase == entry.BurnsDown {
		p.farEnding(g.Sub(head), r, v)
	} else {
		p.farHead(g.Sub(head), r, v)
	}
	p.Line(g.Sub(charge))
	_, charge = charge.CutTop(1)
	p.farParts(g.Sub(charge), r, v, w*76/100)
	if v.Caution != nil && len(v.Warnings) == 0 {
		p.Caution(g.Sub(notice), *v.Caution)
		return
	}
	p.farStands(g.Sub(notice), r, v)
}

// farBar says over the whole width that entries are NOT kept and why, else what is
// asked.
func (p pen) farBar(g cell.Grid, v scene.View) {
	w, h := g.Size()
	text, style, why := modelwords.EntriesNotKept(v.NotKept), p.Style(theme.Act), v.Trouble
	if v.NotKept == 0 {
		text, style, why = p.M.Ask+" "+v.Asked, p.Style(theme.Picked), ""
	}
	g.Fill(g.Bounds(), ' ', style)
	rows := h
	if why != "" {
		rows--
		g.TextIn(cell.Rect{X: 2, Y: h - 1, W: w - 3, H: 1}, why, style)
	}
	capital, all := letter.Capitals(text)
	if s, fits := letter.Fitting(capital, w-4, rows); all && fits {
		_, tall := s.Size(capital)
		s.Text(g, 2, (rows-tall)/2, capital, style, p.Theme.ASCII)
		return
	}
	g.TextIn(cell.Rect{X: 2, Y: (rows - 1) / 2, W: w - 3, H: 1}, text, style.With(cell.Bold))
}

// farEnding is how long it has burned down, and beside it what the end is judged by.
func (p pen) farEnding(g cell.Grid, r *figure.Reading, v scene.View) {
	w, h := g.Size()
	t := draw.TimedBy(r, v.Due)
	p.farCaption(g, t, v, "")
	p.farMinutes(g, t, h-2, w*46/100-4)
	x := w * 48 / 100
	p.farDown(g.Sub(cell.Rect{X: x, Y: 1, W: w - x, H: h - 1}), r, v)
}

// farStyle is how the minutes are drawn.
func (p pen) farStyle(t draw.Timed) cell.Style {
	if t.Late {
		return p.Style(theme.Strong)
	}
	return p.Style(theme.Now)
}

// minutesOf is the number that is drawn large.
func minutesOf(t draw.Timed) string {
	if t.Minutes {
		return t.Digits
	}
	if hours, rest, long := strings.Cut(t.Digits, "h"); long {
		h, _ := strconv.Atoi(hours)
		m, _ := strconv.Atoi(rest)
		return strconv.Itoa(60*h + m)
	}
	m, _, _ := strings.Cut(t.Digits, ":")
	return m
}

// farMinutes draws the number in a box at the left of g below its first row.
func (p pen) farMinutes(g cell.Grid, t draw.Timed, rows, wide int) {
	text := minutesOf(t)
	d := letter.Digits{W: rows * 26 / 15, H: 2 * rows}
	for d.Width(text) > wide && d.W > 3 {
		d.W--
	}
	d.Draw(g, 2, 1, text, p.farStyle(t), p.Theme.ASCII)
}

// farCaption says what the number is, in the first row, and before it what makes it
// doubtful where both have room.
func (p pen) farCaption(g cell.Grid, t draw.Timed, v scene.View, doubt string) {
	w, _ := g.Size()
	end := w - 1 - p.Safety(g, w-1, draw.TopView{Kept: v.Kept, Keeping: v.Keeping, NoBook: v.NoBook}) - 3
	end -= g.TextRight(end, 0, v.Now.Format(modelwords.Clock), p.Style(theme.Text)) + 2
	style := p.Style(theme.Text)
	text := t.Label + ", " + modelwords.MinutesShort
	if t.Minutes {
		text = modelwords.NextChargeIn + ", " + modelwords.MinutesShort
	}
	if t.Late {
		style = p.Style(theme.Look)
	}
	x := 2
	for _, is := range []string{v.Tag, v.Past} {
		if is != "" {
			x += g.Text(x, 0, " "+g.Cut(is, end-x-2)+" ", p.Style(theme.Tag)) + 2
		}
	}
	if v.Fire != "" {
		text = v.Fire + ": " + text
	}
	if both := doubt + "; " + text; doubt != "" && x+g.Width(both) <= end {
		text = both
	}
	g.TextIn(cell.Rect{X: x, W: end - x, H: 1}, text, style)
}

// farHead is the minutes and beside them the spread and the measure that burns.
func (p pen) farHead(g cell.Grid, r *figure.Reading, v scene.View) {
	w, h := g.Size()
	t := draw.TimedBy(r, v.Due)
	p.farCaption(g, t, v, "")
	p.farMinutes(g, t, h-2, w*46/100-4)
	x, y := w*52/100, 1
	text := func(s string, role theme.Role) {
		g.TextIn(cell.Rect{X: x, Y: y, W: w - x - 1, H: 1}, s, p.Style(role))
		y++
	}
	switch {
	case t.Late:
		p.letters(g, cell.Rect{X: x, Y: y, W: w - x - 2, H: 7}, words.FarLate, p.Style(theme.Look))
		return
	case t.Minutes && v.Due != nil:
		low, _, high := v.Due.Next.Left(r.At)
		if high > 0 {
			text(words.FarBetween, theme.Quiet)
			y += p.letters(g, cell.Rect{X: x, Y: y, W: w - x - 2, H: max(4, h/4)}, strconv.Itoa(max(low, 0))+" TO "+strconv.Itoa(high), p.Style(theme.Text))
		} else {
			y += p.letters(g, cell.Rect{X: x, Y: y, W: w - x - 2, H: max(4, h/4)}, words.FarNow, p.Style(theme.Now))
		}
	}
	if t.Doubt != "" && y < h {
		g.Wrap(cell.Rect{X: x, Y: y, W: w - x - 1, H: min(2, h-y)}, t.Doubt, p.Style(theme.Strong))
		y += 2
	}
	since := r.Figure(figure.SinceCharge)
	if v.Due == nil || !since.Known() || h-y < 4 {
		return
	}
	m := v.Due.Next.Minutes
	if h-y > 8 {
		y++
	}
	text(words.FarSince(int(math.Round(m.P50))), theme.Quiet)
	rows := min(max(h-y-4, 1), 4)
	chart.Minutes{Since: math.Floor(since.P50 / 60), Early: m.P10, Due: m.P50, Late: m.P90}.Draw(g, p.Theme, x, y, w-x-2, rows)
	y += rows + 2
	if n := len(r.Charges); n > 0 && y+1 < h {
		y++
		text(words.FarWentIn(r.Charges[n-1].Number, r.Wall(r.Charges[n-1].At)), theme.Text)
	}
}

// letters draws a text as large as it fits into r, in plain where it does not, and
// returns the rows it took.
func (p pen) letters(g cell.Grid, r cell.Rect, text string, style cell.Style) int {
	capital, all := letter.Capitals(text)
	s, fits := letter.Fitting(capital, r.W, r.H)
	if !all || !fits {
		g.TextIn(cell.Rect{X: r.X, Y: r.Y, W: r.W, H: 1}, text, style.With(cell.Bold))
		return 1
	}
	tw, th := s.Size(capital)
	if style.Paper != 0 {
		g.Fill(cell.Rect{X: r.X - 1, Y: r.Y, W: tw + 2, H: th}, ' ', style)
	}
	s.Text(g, r.X, r.Y, capital, style, p.Theme.ASCII)
	return th
}

// farParts draws what the next charge is in two lines of letters, with what each
// weighs to their right.
func (p pen) farParts(g cell.Grid, r *figure.Reading, v scene.View, wide int) {
	w, h := g.Size()
	lines := p.farCharge(r, v)
	style := p.Style(theme.Strong)
	if v.Adding != nil {
		style = p.Style(theme.Now)
	}
	if len(lines) == 0 {
		return
	}
	if p.farAbreast(g, lines, style) {
		return
	}
	if capital, all := letter.Capitals(lines[0]); all && r.Phase == entry.BurnsDown {
		if wide, _ := letter.Small.Size(capital); wide > w-3 { // the burden stands among the facts too
			first, rest, _ := strings.Cut(lines[0], " ")
			lines = []string{first, rest}
		}
	}
	gap := 0
	if h > 4*len(lines) { // letters that touch are read as one
		gap = 1
	}
	each := max((h-gap*(len(lines)-1))/len(lines), 1)
	longest := ""
	for _, line := range lines {
		if capital, _ := letter.Capitals(line); len(capital) > len(longest) {
			longest = capital
		}
	}
	if s, fits := letter.Fitting(longest, wide, each); !fits || s.Wide < 2 && each >= 7 {
		wide = w - 3
	}
	s, fits := letter.Fitting(longest, wide, each)
	for i, line := range lines {
		y := i * (each + gap)
		capital, all := letter.Capitals(line)
		if number, word, parted := strings.Cut(line, " "); parted && all && !fits && each >= 4 { // the count in letters at least
			nw, _ := letter.Small.Size(number)
			letter.Small.Text(g, 2, y, number, style, p.Theme.ASCII)
			g.TextIn(cell.Rect{X: nw + 4, Y: y + 1, W: w - nw - 5, H: 1}, word, style.With(cell.Bold))
			if v.Adding == nil && i < len(r.Next) && len(lines) == len(r.Next) {
				g.TextIn(cell.Rect{X: nw + 4, Y: y + 2, W: w - nw - 5, H: 1}, p.Weight(r.Next[i], true), p.Style(theme.Text))
			}
			continue
		}
		if !all || !fits {
			g.TextIn(cell.Rect{X: 2, Y: y, W: w - 3, H: 1}, line, style)
			continue
		}
		s.Text(g, 2, y, capital, style, p.Theme.ASCII)
		tw, th := s.Size(capital)
		if v.Adding != nil || i >= len(r.Next) || len(lines) < len(r.Next) {
			continue
		}
		if x := max(tw+6, wide+3); x < w-10 {
			g.TextIn(cell.Rect{X: x, Y: y + (th-1)/2, W: w - x - 1, H: 1}, p.Weight(r.Next[i], false), p.Style(theme.Strong))
			g.TextIn(cell.Rect{X: x, Y: y + (th+1)/2, W: w - x - 1, H: 1}, modelwords.Material(r.Next[i].What), p.Style(theme.Text))
		}
	}
}

// farAbreast draws two lines beside each other where they have no room below.
func (p pen) farAbreast(g cell.Grid, lines []string, style cell.Style) bool {
	w, h := g.Size()
	if len(lines) != 2 || h >= 8 || h < 4 {
		return false
	}
	first, all := letter.Capitals(lines[0])
	second, too := letter.Capitals(lines[1])
	a, _ := letter.Small.Size(first)
	b, _ := letter.Small.Size(second)
	if !all || !too || a+b+7 > w {
		return false
	}
	letter.Small.Text(g, 2, 0, first, style, p.Theme.ASCII)
	letter.Small.Text(g, 5+a, 0, second, style, p.Theme.ASCII)
	return true
}

// farStands is the place of a warning: what it is and how it is mended, or that
// nothing is wrong.
func (p pen) farStands(g cell.Grid, r *figure.Reading, v scene.View) {
	_, h := g.Size()
	if len(v.Warnings) == 0 {
		g.Text(2, h-1, words.FarNoWarning, p.Style(theme.Quiet))
		return
	}
	p.Warned(g, r, v.Warnings, false)
}
