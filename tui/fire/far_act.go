package fire

import (
	"strconv"
	"strings"

	"chargehand/model/figure"
	"chargehand/model/rule"
	modelwords "chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/draw"
	"chargehand/tui/letter"
	"chargehand/tui/scene"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// farAct says what has to be done something about in the largest letters that fit,
// inverse over the whole width.
func (p pen) farAct(g cell.Grid, r *figure.Reading, v scene.View) {
	w, h := g.Size()
	top := v.Warnings[0]
	title, evidence, _ := p.Units.Warning(top)
	style, mark := p.Badge(top.Grade)
	g.Fill(g.Bounds(), ' ', style)
	since := modelwords.WarningSince(r.Wall(top.Onset), top.Acknowledged, len(v.Warnings)-1)
	g.TextRight(w-2, 0, since, style.With(cell.Bold))
	head := mark + modelwords.Grade(top.Grade) + "  " + modelwords.Warned(title, evidence)
	g.TextIn(cell.Rect{X: 2, W: w - 6 - g.Width(since), H: 1}, draw.InParts(g, head, w-6-g.Width(since), 1), style.With(cell.Bold))
	capital, all := letter.Capitals(title)
	s, fits := letter.Fitting(capital, w-2, h-1)
	if first, rest, two := strings.Cut(capital, " "); all && !fits && two { // a word a line
		a, fitsA := letter.Fitting(first, w-4, (h-1)/2)
		b, fitsB := letter.Fitting(rest, w-4, (h-1)/2)
		if fitsA && fitsB {
			s := letter.Scale{Wide: min(a.Wide, b.Wide), High: min(a.High, b.High)}
			s.Text(g, 2, 1, first, style, p.Theme.ASCII)
			s.Text(g, 2, 1+(h-1)/2, rest, style, p.Theme.ASCII)
			return
		}
	}
	if !all || !fits {
		g.Wrap(cell.Rect{X: 2, Y: 2, W: w - 4, H: h - 2}, title, style.With(cell.Bold))
		return
	}
	tw, th := s.Size(capital)
	s.Text(g, min(2, (w-tw)/2), 1+(h-1-th)/2, capital, style, p.Theme.ASCII)
}

// Rows that the minutes and the charge keep under an act, that a step of its remedy
// takes in letters, and the remedy in full without them.
const (
	farBelowRows = 10
	farStepRows  = 4
	farWordsRows = 3
)

// farRemedyRows is how many of so many rows what to do takes: more where its steps
// have the room to be drawn in letters.
func (p pen) farRemedyRows(w, h int, top rule.Warning) int {
	_, _, remedy := p.Units.Warning(top)
	need := 1 + cell.New(0, 0, p.Theme.ASCII).Rows(remedy, w-4)
	rows := max(farWordsRows, h*18/100)
	if steps := len(words.FarSteps(top.Rule)); steps > 0 && h-farBelowRows >= steps*farStepRows+need {
		rows = max(steps*farStepRows+need, h*55/100)
	}
	return rows
}

// farRemedy says what to do about it: its steps in letters where there is the room,
// and below in full.
func (p pen) farRemedy(g cell.Grid, top rule.Warning) {
	w, h := g.Size()
	_, _, remedy := p.Units.Warning(top)
	need, steps := g.Rows(remedy, w-4), words.FarSteps(top.Rule)
	y := 0
	if each := (h - need - 1) / max(len(steps), 1); len(steps) > 0 && each >= farStepRows {
		y = p.farSteps(g, steps, each)
	} else if need < h {
		y = 1
	}
	g.Wrap(cell.Rect{X: 2, Y: y, W: w - 4, H: h - y}, remedy, p.Style(theme.Strong))
}

// farSteps draws the steps one below the other, all at one size and numbered, and
// returns the rows that they took; none where one does not fit.
func (p pen) farSteps(g cell.Grid, steps []string, each int) int {
	const at = 7 // columns before the letters
	w, _ := g.Size()
	var one letter.Scale
	for i, step := range steps {
		capital, all := letter.Capitals(step)
		s, fits := letter.Fitting(capital, w-at-2, max(each-1, farStepRows)) // letters that touch are read as one
		if !all || !fits {
			return 0
		}
		if i == 0 || s.Wide < one.Wide {
			one = s
		}
	}
	y := 1
	for i, step := range steps {
		capital, _ := letter.Capitals(step)
		g.Text(2, y, strconv.Itoa(i+1), p.Style(theme.Quiet))
		one.Text(g, at, y, capital, p.Style(theme.Strong), p.Theme.ASCII)
		_, rows := one.Size(capital)
		y += min(max(rows+1, farStepRows), each)
	}
	return y
}

// farBelow is the minutes and the charge under an act, smaller than it; the minutes no
// fewer rows than least.
func (p pen) farBelow(g cell.Grid, r *figure.Reading, v scene.View, least int) {
	w, h := g.Size()
	t := draw.TimedBy(r, v.Due)
	p.Line(g)
	in := g.Sub(cell.Rect{Y: 1, W: w, H: h - 1})
	p.farCaption(in, t, v, t.Doubt)
	rows := min(h-2, max(8, least, h*36/100))
	if rows < 3 {
		return
	}
	p.farMinutes(in, t, rows, w*32/100)
	x := w * 37 / 100
	right := in.Sub(cell.Rect{X: x, Y: 1, W: w - x, H: h - 2})
	rw, _ := right.Size()
	p.farParts(right, r, v, rw*70/100)
}
