package draw

import (
	"chargehand/model/figure"
	"chargehand/model/forecast"
	"chargehand/model/rule"
	modelwords "chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/theme"
)

// Burning is what one row tells of a smelt that burns meanwhile.
type Burning struct {
	Name     string // of the fire, where two burn
	Due      *forecast.Due
	Warnings []rule.Warning // the gravest first
	Key      string         // books the next charge, "" where it is keyed elsewhere
	Fire     string         // the keys that lead to Fire
}

// Beside paints that row: the time to the next charge, what it is, and the gravest
// warning; of what has no room the charge goes first, then the way back.
func (p Pen) Beside(g cell.Grid, r *figure.Reading, b Burning) {
	w, _ := g.Size()
	around := func(role theme.Role) cell.Style { return p.Theme.Around(p.Style(role)) }
	g.Fill(cell.Rect{W: w, H: 1}, ' ', around(theme.Text))
	t := TimedBy(r, b.Due)
	label, value := t.Label, t.Digits
	if t.Minutes {
		label, value = modelwords.NextChargeIn, t.Digits+" "+modelwords.MinutesShort
	}
	x := 1
	if b.Name != "" {
		x += g.Text(x, 0, g.Cut(b.Name, w/3)+": ", around(theme.Strong))
	}
	x += g.Text(x, 0, label+" ", around(theme.Text))
	x += g.Text(x, 0, value, around(theme.Now))
	right := w - 1
	warned := 0
	if len(b.Warnings) > 0 {
		title, _, _ := p.Units.Warning(b.Warnings[0])
		style, mark := p.Badge(b.Warnings[0].Grade)
		badge := " " + mark + modelwords.Grade(b.Warnings[0].Grade) + " "
		warned = g.Width(badge) + 1 + g.Width(title) + 2
		if x+warned > right {
			title = g.Cut(title, right-x-g.Width(badge)-3)
			warned = g.Width(badge) + 1 + g.Width(title) + 2
		}
		right -= warned
		n := right + 1 + g.Text(right+1, 0, badge, style)
		g.Text(n+1, 0, title, around(theme.Strong))
	}
	charge := ""
	if over, _ := NoMore(r); !over {
		for _, part := range r.Next {
			if charge != "" {
				charge += ", "
			}
			charge += p.Units.OnePart(Counting(part))
		}
	}
	type piece struct {
		text string
		role theme.Role
	}
	// What stands behind the time, and in which order it gives way to the rest.
	pieces := []piece{{"", theme.Text}, {charge, theme.Strong}, {b.Key, theme.Now}, {modelwords.BooksIt, theme.Text}, {b.Fire + " " + modelwords.ToTheFire, theme.Text}}
	if t.Minutes {
		pieces[0].text = t.Below
	}
	if charge == "" || b.Key == "" {
		pieces[2].text, pieces[3].text = "", ""
	}
	wide := func() (n int) {
		for _, one := range pieces {
			if one.text != "" {
				n += 2 + g.Width(one.text)
			}
		}
		return n
	}
	gives := []int{4, 0, 3, 2, 1}
	if b.Key == "" { // the key that leads to another fire is the one that counts
		gives = []int{0, 1, 4}
	}
	for _, n := range gives {
		if x+wide() < right {
			break
		}
		pieces[n].text = ""
	}
	if pieces[3].text == "" { // the key alone stands before what it books, as in the foot
		pieces[1], pieces[2] = pieces[2], pieces[1]
	}
	for i, one := range pieces {
		switch {
		case one.text == "":
		case i == len(pieces)-1:
			g.TextRight(right, 0, one.text, around(one.role))
		default:
			x += 2 + g.Text(x+2, 0, one.text, around(one.role))
		}
	}
}
