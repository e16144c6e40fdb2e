package light

import (
	"strings"

	"github.com/charmbracelet/x/ansi"

	"chargehand/tui/cell"
	"chargehand/tui/scene"
	"chargehand/tui/screen"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// labels are the labels and units of the form's fields, and the heading that
// stands over a group's first.
var labels = [fields]struct{ label, unit, heading string }{
	furnaceName:  {words.FormFurnace, "", words.FormOfFurnace},
	boreCm:       {words.FormBore, "cm", ""},
	stackCm:      {words.FormStack, "cm", ""},
	rimCm:        {words.FormRim, "cm", ""},
	baseCm:       {words.FormBase, "cm", ""},
	charcoalName: {words.FormCharcoalName, "", words.FormOfMeasures},
	charcoalKg:   {words.FormCharcoalKg, "kg", ""},
	charcoalLot:  {words.FormLot, "", ""},
	oreName:      {words.FormOreName, "", ""},
	oreKg:        {words.FormOreKg, "kg", ""},
	oreCount:     {words.FormOreCount, "", ""},
	oreLot:       {words.FormLot, "", ""},
	leftIn:       {words.FormLeftIn, "", ""},
	litDay:       {words.FormLitDay, "", ""},
	litAt:        {words.FormLitAt, "", ""},
	trying:       {words.FormTrying, "", ""},
	initials:     {words.FormInitials, "", ""},
}

// blanks say what a blank field means, where it is not that something is not known.
var blanks = [fields]string{leftIn: words.FormLeftNothing, litAt: words.FormNow, trying: words.FormTryNothing, charcoalLot: words.FormNoLot, oreLot: words.FormNoLot}

// shape is how wide the rows stand.
type shape struct {
	field int  // columns of a value
	long  bool // remarks have room to say more
}

func shapeOf(size scene.Size) shape {
	switch size {
	case scene.Middle:
		return shape{field: 16}
	case scene.Large:
		return shape{field: 24, long: true}
	}
	return shape{field: 12}
}

// formLine is one line of the form: a row of it, a heading, or a blank.
type formLine struct {
	row     int // -1 for none
	heading string
}

// lines are the rows with headings and blanks as far as there is room for them.
func (f Screen) lines(room int) []formLine {
	headings, blanks := 0, 0
	for id := range labels {
		if labels[id].heading != "" {
			headings++
		}
	}
	n := f.last() + 1
	switch all := n + headings; {
	case room < all:
		headings = 0
	case room >= all+headings+2 && room < 2*all: // with more room every line has a blank
		blanks = 1
	}
	var ls []formLine
	gap := func() {
		if blanks > 0 {
			ls = append(ls, formLine{row: -1})
		}
	}
	for i := range n {
		if i > 0 && i < f.last() {
			if text := labels[f.at(i)].heading; text != "" && headings > 0 {
				gap()
				ls = append(ls, formLine{-1, text})
			}
		}
		if i == f.last() || i == f.rowOf(litAt) && !f.mends || i == f.rowOf(litDay) && f.mends {
			gap()
		}
		ls = append(ls, formLine{row: i})
	}
	return ls
}

// paintRows shows the rows, scrolled so that the chosen one is seen.
func (f Screen) paintRows(g cell.Grid, sh *screen.Shared, sp shape) {
	w, h := g.Size()
	ls := f.lines(h)
	at := 0
	for i, l := range ls {
		if l.row == f.row {
			at = i
		}
	}
	pitch := 1
	if h >= 2*len(ls) {
		pitch = 2
	}
	first := 0
	if h < len(ls) {
		first = max(0, min(at-h/2, len(ls)-h))
	}
	label := 2
	for _, l := range labels {
		label = max(label, g.Width(l.label))
	}
	for i, l := range ls[first:] {
		line := g.Sub(cell.Rect{X: 1, Y: i * pitch, W: w - 1, H: 1})
		switch {
		case l.row >= 0:
			f.paintRow(line, sh, l.row, label, sp)
		case l.heading != "":
			line.Text(1, 0, l.heading, sh.Theme.Style(theme.Now))
		}
	}
}

func (f Screen) paintRow(g cell.Grid, sh *screen.Shared, i, label int, sp shape) {
	th := sh.Theme
	w, _ := g.Size()
	chosen := i == f.row
	if chosen {
		g.Text(0, 0, th.Marks().Picked, th.Style(theme.Now))
	}
	x := label + 4
	switch {
	case i == 0:
		g.Text(2, 0, words.FormStarter, th.Style(theme.Text))
		f.paintStarter(g, sh, chosen, x)
	case i == f.last():
		style := th.Style(theme.Strong)
		if chosen {
			style = th.Style(theme.Picked)
		}
		x := 2 + g.Text(2, 0, " "+f.does()+" ", style)
		if !f.mends && x+2+g.Width(words.FormBegins) < w {
			g.Text(x+2, 0, words.FormBegins, th.Style(theme.Quiet))
		}
	default:
		f.paintField(g, sh, f.rows[f.at(i)], chosen, x, sp)
	}
}

// paintStarter shows what the form begins with, and which of how many that is.
func (f Screen) paintStarter(g cell.Grid, sh *screen.Shared, chosen bool, x int) {
	th := sh.Theme
	w, _ := g.Size()
	name := f.starters[f.starter].Name
	if f.mends {
		g.TextIn(cell.Rect{X: x, W: w - x - 1, H: 1}, name, th.Style(theme.Strong))
		return
	}
	of, arrows := words.StarterOf(f.starter+1, len(f.starters)), words.StarterArrows
	if x+g.Width(name+"  "+of+arrows) > w {
		x = 3 + g.Width(words.FormStarter)
	}
	if x+g.Width(name+"  "+of+arrows) > w {
		arrows = ""
	}
	role := theme.Strong
	if chosen {
		role = theme.Now
	}
	room := w - x - 3 - g.Width(of+arrows)
	if g.Width(name) > room { // the furnace stands in the next row
		name = strings.TrimPrefix(name, f.starters[f.starter].Furnace.Name+", ")
	}
	g.TextIn(cell.Rect{X: x, W: room, H: 1}, name, th.Style(role))
	g.Text(x+min(g.Width(name), room)+2, 0, of+arrows, th.Style(theme.Quiet))
}

// paintField shows label, value, unit and remark of a field. A value that is a
// guess is hatched and not bold.
func (f Screen) paintField(g cell.Grid, sh *screen.Shared, r row, chosen bool, x int, sp shape) {
	th := sh.Theme
	w, _ := g.Size()
	l := labels[r.id]
	unit := sh.Units.Name(l.unit)
	g.Text(2, 0, l.label, th.Style(theme.Text))
	field := cell.Rect{X: x, W: max(min(sp.field, w-x-g.Width(unit)-2), 4), H: 1}
	if r.id == trying && (chosen || r.input.Text() != "") { // a sentence
		field.W = max(min(2*len(l.label)+20, w-x-2), 4)
	}
	guess := f.isGuess(f.starters[f.starter], r.id)
	inner := g.Sub(field)
	if chosen {
		paper := th.Style(theme.Text)
		if th.Profile >= theme.Fixed256 {
			paper = th.Around(paper)
		}
		inner.Fill(cell.Rect{W: field.W, H: 1}, ' ', paper)
		typed := r.input.Draw(th, field.W)
		at := max(field.W-ansi.StringWidth(typed), 0)
		inner.Sub(cell.Rect{X: at, W: field.W - at, H: 1}).Lay(typed, paper)
	} else {
		inner.Fill(cell.Rect{W: field.W, H: 1}, ' ', th.Pit(th.Style(theme.Text)))
		text := g.Cut(r.input.Text(), field.W-1)
		style := th.Pit(th.Style(theme.Strong))
		if guess {
			style = th.Pit(th.Style(theme.Text))
			hatch := '╱'
			if th.ASCII {
				hatch = '/'
			}
			inner.Fill(cell.Rect{W: field.W - g.Width(text) - 2, H: 1}, hatch, th.Pit(th.Style(theme.Quiet)))
		}
		inner.TextRight(field.W-1, 0, text, style)
	}
	x = field.Right() + 1
	if l.unit != "" {
		g.Text(x, 0, unit, th.Style(theme.Text))
	}
	x += 1 + max(g.Width(sh.Units.Name("kg")), g.Width(sh.Units.Name("cm")), 2)
	say := func(text string, role theme.Role) {
		g.TextIn(cell.Rect{X: x, W: w - x, H: 1}, text, th.Style(role))
	}
	switch {
	case r.id == f.bad:
		say(th.Marks().Off+" "+words.FormWrong, theme.Warn)
	case r.input.Text() == "" && blanks[r.id] != "":
		say(blanks[r.id], theme.Quiet)
	case r.input.Text() == "" && r.id != initials:
		say(words.FormBlank, theme.Quiet)
	case guess && sp.long:
		say(words.FormGuessLong, theme.Strong)
	case guess:
		say(words.FormGuess, theme.Strong)
	}
}
