package draw

import (
	"math"
	"time"

	"chargehand/model/entry"
	"chargehand/model/figure"
	modelwords "chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// ComingColumns is how wide the charges to come stand beside the strip.
const ComingColumns = 46

// Ahead is one charge to come.
type Ahead struct {
	Number int
	At     string // about when, as a clock shows it; "" where that is not known
	Text   string // what goes in
	Ore    bool   // ore is in it
}

// Coming paints the next charges, a line each, under the head of the plan where there
// is one.
func (p Pen) Coming(g cell.Grid, ahead []Ahead, plan bool) {
	w, h := g.Size()
	if h < 3 || len(ahead) == 0 {
		return
	}
	p.Line(g)
	head := words.NextCharges
	if plan {
		head = words.ChargingPlan
	}
	g.TextIn(cell.Rect{X: 1, Y: 1, W: w - 1, H: 1}, head, p.Style(theme.Quiet))
	for i, a := range ahead {
		y := i + 2
		if y >= h {
			return
		}
		style := p.Style(theme.Text)
		if i == 0 {
			style = p.Style(theme.Strong)
		}
		g.TextRight(4, y, modelwords.Number(float64(a.Number), 0), style)
		g.Text(6, y, a.At, p.Style(theme.Quiet))
		g.TextIn(cell.Rect{X: 13, Y: y, W: w - 13, H: 1}, a.Text, style)
		if x := 15 + g.Width(a.Text); plan && !a.Ore && x+g.Width(words.NoOreInIt) <= w {
			g.Text(x, y, words.NoOreInIt, p.Style(theme.Quiet))
		}
	}
}

// Left is what is left of a material whose lots were weighed.
type Left struct {
	What       entry.What
	Kg, Needed float64
	Each       float64 // kg of it in the next charge; 0 where that is not known
}

// withLeft says beside what was put in how much is left, and until when it lasts at
// this smelt's pace; a material that does not last as far as planned is marked.
func (p Pen) withLeft(l figureLine, r *figure.Reading, what entry.What, left []Left) figureLine {
	for _, s := range left {
		if s.What != what || r.Phase.Over() {
			continue
		}
		l.beside, l.remark, l.known = say(words.SoMuchLeft(p.Units.Kg(entry.Kilogram(s.Kg)))), nil, true
		if s.Each > 0 && r.Usual > 0 {
			charges := math.Floor(s.Kg / s.Each)
			l.remark = say(words.LastsTo(r.Wall(r.At + time.Duration(charges)*r.Usual)))
		}
		if l.off = s.Kg < s.Needed; l.off {
			l.remark = say(words.SoMuchNeeded(p.Units.Kg(entry.Kilogram(s.Needed))))
		}
	}
	return l
}
