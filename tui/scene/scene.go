package scene

import (
	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/picture"
	modelwords "chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/draw"
	"chargehand/tui/letter"
	"chargehand/tui/theme"
)

// Paint paints the picture in the places of a layout: all of it but the foot.
func Paint(g cell.Grid, p draw.Pen, l Layout, r *figure.Reading, v View) {
	if v.Result != nil && (l.Size == Small || l.Size == Middle) {
		l = l.headed(draw.ResultRows(l.Size == Small), downFigures)
	}
	w, _ := g.Size()
	Top(g.Sub(l.Top), p, r, v, w >= 100)
	p.Shaft(g.Sub(l.Shaft), picture.From(r), draw.ShaftView{Formula: v.Chemistry, Past: v.Past != "" || v.Gone})
	if l.Size == Cramped {
		crampedParts(g, p, l, r, v)
	} else {
		roomyParts(g, p, l, r, v)
	}
	if l.Lined {
		lined := l
		if r.Phase == entry.BurnsDown && l.Size == Small {
			lined = l.headed(draw.BurnDownRows, downFigures)
		}
		divide(g, p, lined)
	}
	if v.Caution != nil && (len(v.Warnings) == 0 || !l.Shaft.Empty()) {
		p.Caution(g.Sub(CautionRoom(l)), *v.Caution)
	}
}

// roomyParts paints what stands beside and under the shaft, each in its own place.
func roomyParts(g cell.Grid, p draw.Pen, l Layout, r *figure.Reading, v View) {
	head := l
	if r.Phase == entry.BurnsDown && l.Size == Small {
		head = l.headed(draw.BurnDownRows, downFigures)
	}
	Head(g, p, head, r, v)
	p.Ranges(g.Sub(head.Figures), r, v.Warnings, v.Left)
	p.Warned(g.Sub(l.Notice), r, v.Warnings, l.Size != Small)
	if l.Size == Small && len(v.Warnings) == 0 && l.Log.H < 2 {
		p.Log(g.Sub(l.Notice), v.Log, false)
	}
	log := l.Log
	if l.Size == Large && log.W >= 90 && !r.Phase.Over() { // then it is weighed, or will be
		var beside cell.Rect
		log, beside = log.CutLeft(log.W - reckonedColumns)
		p.Reckoned(g.Sub(beside), r)
	}
	p.Log(g.Sub(log), v.Log, l.Size != Small)
	strip := l.Strip
	if over, _ := draw.NoMore(r); l.Size == Large && !over && len(v.Ahead) > 0 && strip.W >= 120+draw.ComingColumns && strip.H > 3 {
		var beside cell.Rect
		strip, beside = strip.CutLeft(strip.W - draw.ComingColumns)
		p.Coming(g.Sub(beside), v.Ahead, v.Plan)
	}
	p.Strip(g.Sub(strip), r)
}

// reckonedColumns is how wide what is reckoned of slag and iron stands beside the
// last entries.
const reckonedColumns = 40

// crampedParts paints as much as has room.
func crampedParts(g cell.Grid, p draw.Pen, l Layout, r *figure.Reading, v View) {
	stay := downFigures
	if len(v.Warnings) > 0 {
		l, stay = raisedFor(g, p, l, r, v.Warnings), 0 // with both the card and a warning there is no room for what else is known
	}
	if r.Phase == entry.BurnsDown {
		l = l.headed(draw.BurnDownRows, stay)
	} else if v.Result != nil {
		l = l.headed(draw.ResultRows(true), stay)
	}
	Head(g, p, l, r, v)
	p.Figures(g.Sub(l.Figures), r)
	p.Notice(g.Sub(l.Notice), r, v.Warnings, v.Log)
	p.Strip(g.Sub(l.Strip), r)
}

// Head paints the time to the charge and the charge, or in their place the
// burn-down card or the result.
func Head(g cell.Grid, p draw.Pen, l Layout, r *figure.Reading, v View) {
	h := draw.HeadView{Due: v.Due, Key: v.NextKey, Adding: v.Adding, Past: v.Past != "" || v.Gone}
	switch {
	case r.Phase == entry.BurnsDown:
		p.BurnDown(g.Sub(l.Head()), r, v.Ending)
	case v.Result != nil:
		p.Result(g.Sub(l.Head()), r, *v.Result)
	case l.Size == Large:
		p.Minutes(g.Sub(l.Timer), r, h, letter.Digits{W: 20, H: 30})
		p.LargeCharge(g.Sub(l.Next), r, h)
	case l.Size == Middle:
		p.Minutes(g.Sub(l.Timer), r, h, letter.Digits{W: 11, H: 18})
		p.Charge(g.Sub(l.Next), r, h)
	case l.Size == Small:
		p.Minutes(g.Sub(l.Timer), r, h, letter.Digits{W: 7, H: 12})
		p.SmallCharge(g.Sub(l.Next), r, h)
	default:
		p.Timer(g.Sub(l.Timer), r, v.Due, l.Scale)
		p.Next(g.Sub(l.Next), r, draw.Coming{Key: v.NextKey, Adding: v.Adding, Due: v.Due})
	}
}

// Top paints the top line: with the date where it is wide.
func Top(g cell.Grid, p draw.Pen, r *figure.Reading, v View, wide bool) {
	t := draw.TopView{
		Title: v.Title, By: r.By, Kept: v.Kept, Keeping: v.Keeping, NotKept: v.NotKept, Trouble: v.Trouble, Past: v.Past, Tag: v.Tag, Lost: v.Lost,
		NoBook: v.NoBook, Phase: phaseOf(r), Clock: v.Now.Format("2 Jan " + modelwords.Clock),
	}
	if r.Light.Undated || !wide {
		t.Clock = v.Now.Format(modelwords.Clock)
	}
	p.Top(g, t)
}

// phaseOf is the phase and how long it has lasted; once the smelt is over, how
// long that took.
func phaseOf(r *figure.Reading) string {
	if r.Phase.Over() {
		return modelwords.PhaseAfter(r.Phase, r.Since)
	}
	return modelwords.Phase(r.Phase) + " " + modelwords.Lasted(r.At-r.Since)
}

// divide draws the line between the shaft and the rest and joins it to those
// that run across.
func divide(g cell.Grid, p draw.Pen, l Layout) {
	x, s := l.Timer.X, p.Style(theme.Frame)
	for y := l.Shaft.Y; y < l.Shaft.Bottom(); y++ {
		c := p.M.VLine
		if y == l.Figures.Y || (y == l.Notice.Y && l.Notice.H > 1 && l.Notice.X > 0) || (y == l.Log.Y && l.Log.H > 1 && l.Log.X == x) {
			c = p.M.TeeRight
		}
		g.Set(x, y, c, s)
	}
}
