package why

import (
	"chargehand/model/ahead"
	"chargehand/model/rehearse"
	"chargehand/model/why"
	modelwords "chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/draw"
	"chargehand/tui/letter"
	"chargehand/tui/screen"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// Paint shows how cold it was and what was left, and what would have changed it, the most first.
func (s Screen) Paint(g cell.Grid, sh *screen.Shared) {
	s.rows.Paint(g, sh, words.WhyTitle, s.lines)
}

// lines paints everything from a row on, above the window too, and gives how many rows it takes.
func (s Screen) lines(g cell.Grid, sh *screen.Shared, from int) int {
	w, _ := g.Size()
	p := painter{Screen: s, g: g, sh: sh, w: w, y: from}
	switch {
	case !sh.Smelt.Is():
		p.says(words.WhyNoSmelt, theme.Text)
	case !isOver(sh.Smelt) || s.smelt != sh.Smelt.ID():
		p.says(words.WhyBurns, theme.Text)
	case s.looking != nil && s.told.NoOre:
		p.says(words.WhyNoOre, theme.Text)
	case s.looking == nil || s.told.Asked == 0 && !s.told.Lacks:
		p.says(modelwords.WhyIsOpinion, theme.Strong)
		p.says(words.WhyAsking, theme.Quiet)
	default:
		p.all()
		p.theDay(from)
	}
	return p.y - from
}

// painter paints one part under the other.
type painter struct {
	Screen
	g  cell.Grid
	sh *screen.Shared
	w  int
	y  int
}

func (p *painter) style(r theme.Role) cell.Style { return p.sh.Theme.Style(r) }

func (p *painter) says(text string, r theme.Role) {
	p.y += p.g.Wrap(cell.Rect{X: 2, Y: p.y, W: p.w - 4, H: 9}, text, p.style(r))
}

func (p *painter) rule() {
	p.g.Fill(cell.Rect{Y: p.y, W: p.w, H: 1}, p.sh.Theme.Marks().HLine, p.style(theme.Frame))
	p.y++
}

// roomy tells whether there is room for large letters, wide whether the truth has columns of its own.
func (p *painter) roomy() bool { return p.w >= 110 && p.sh.H >= 34 }
func (p *painter) wide() bool  { return p.w >= 112 }

func (p *painter) all() {
	if p.told.Lacks {
		p.says(words.WhyLacks, theme.Text)
	} else {
		p.answers()
		p.rule()
	}
	p.says(modelwords.WhyHead(p.told.Asked), theme.Strong)
	if p.err != nil {
		p.says(words.WhyFailed(p.err), theme.Warn)
	}
	said := words.WhyByCold
	if p.by == why.ByLeft {
		said = words.WhyByLeft
	}
	if !p.told.Done() {
		said += "; " + words.WhyAsked(p.told.Asked, ahead.Furnaces)
	}
	p.says(said, theme.Quiet)
	p.table()
	p.rule()
	p.says(p.sh.Units.WhyCounted(), theme.Quiet)
	if len(p.truly) > 0 {
		p.says(modelwords.WhyTrulyCounted, theme.Quiet)
	}
}

// theDay shows, where rows are left, the day that is asked about: when the hearth was cold.
func (p *painter) theDay(from int) {
	const head, least, most = 2, 8, 16 // rows over it, and how many it takes
	left := p.sh.H - draw.TopRows - draw.FootRows - (p.y - from)
	if !p.roomy() || left < head+least || len(p.day.Hearth) == 0 {
		return
	}
	rows := min(left-head, most)
	p.g.TextIn(cell.Rect{X: 2, Y: p.y + 1, W: p.w - 4, H: 1}, words.WhyDay, p.style(theme.Quiet))
	p.sh.Pen().Heats(p.g.Sub(cell.Rect{Y: p.y + head, W: p.w, H: rows}), p.day)
	p.y += head + rows
}

// answers are how long the hearth was too cold, and what of the ore was left.
func (p *painter) answers() {
	was := p.told.Outcomes[0]
	half := p.w / 2
	for i, a := range []struct{ large, under, caption string }{
		{words.WhyColdLarge(was.Cold.P50), modelwords.WhyHours(was.Cold), words.WhyColdAt},
		{words.WhyLeftLarge(was.Left.P50), modelwords.WhyLeft(was.Left), words.WhyLeftAt},
	} {
		if !p.roomy() {
			x := 2 + p.g.Text(2, p.y+i, a.under, p.style(theme.Strong))
			p.g.TextIn(cell.Rect{X: x + 1, Y: p.y + i, W: p.w - x - 2, H: 1}, a.caption, p.style(theme.Quiet))
			continue
		}
		x := 2 + i*half
		p.g.TextIn(cell.Rect{X: x, Y: p.y, W: half - 3, H: 1}, a.caption, p.style(theme.Quiet))
		capitals, _ := letter.Capitals(a.large)
		letter.Small.Text(p.g, x, p.y+1, capitals, p.style(theme.Strong), p.sh.Theme.ASCII)
		p.g.TextIn(cell.Rect{X: x, Y: p.y + 6, W: half - 3, H: 1}, a.under, p.style(theme.Text))
	}
	if p.y += 2; p.roomy() {
		p.y += 5
	}
}

// columns are where each begins.
type columns struct{ hours, left, hearth, sure, truth int }

func (p *painter) columns() columns {
	if p.wide() {
		return columns{30, 51, 67, 78, 97}
	}
	return columns{30, 51, 67, 0, 0}
}

// table is a head and a row for each thing otherwise.
func (p *painter) table() {
	c := p.columns()
	p.row(c, theme.Quiet, words.WhyOtherwise, words.WhyHours, words.WhyLeft, words.WhyHearth(p.sh.Units.Name("°C")), words.WhySure)
	var was rehearse.Truly
	if len(p.truly) > 0 {
		was = p.truly[0]
		if p.wide() {
			p.g.TextIn(cell.Rect{X: c.truth, Y: p.y - 1, W: p.w - c.truth - 1, H: 1}, words.WhyInTruth, p.style(theme.Quiet))
		}
		p.row(c, theme.Text, modelwords.WhyChoice(why.Choice{Name: why.AsWas}), p.asWas(func(o why.Outcome) string { return modelwords.WhyHours(o.Cold) }), p.asWas(func(o why.Outcome) string { return modelwords.WhyLeft(o.Left) }), "", "")
		p.truth(c, was, was)
	}
	for _, o := range p.told.Ranked(p.by) {
		role := theme.Strong
		if !o.Changes() {
			role = theme.Quiet
		}
		if p.told.Known() {
			p.row(c, role, modelwords.WhyChoice(o.Choice), modelwords.WhyHoursBy(o.ColdChange), modelwords.WhyLeftBy(o.LeftMore), p.sh.Units.WhyHearthBy(o.Shift), modelwords.WhySure(o, p.told.Asked))
		} else {
			p.row(c, role, modelwords.WhyChoice(o.Choice), "", "", "", "")
		}
		for _, t := range p.truly {
			if t.Mishap == "" && t.Name == o.Name {
				p.truth(c, t, was)
			}
		}
		for _, t := range o.Against() {
			p.y += p.g.Wrap(cell.Rect{X: 4, Y: p.y, W: p.w - 6, H: 3}, modelwords.WhyAgainst(t), p.style(theme.Look))
		}
	}
	for _, t := range p.truly {
		if t.Mishap != "" {
			p.row(c, theme.Strong, modelwords.WhyWithout(t.Mishap), words.WhyNotModel, "", "", "")
			p.truth(c, t, was)
		}
	}
	if p.told.Done() && p.told.Known() && !p.changes() {
		p.says(modelwords.WhyNothing, theme.Text)
	}
}

func (p *painter) asWas(of func(why.Outcome) string) string {
	if !p.told.Known() {
		return ""
	}
	return of(p.told.Outcomes[0])
}

func (p *painter) changes() bool {
	for _, o := range p.told.Outcomes {
		if o.Changes() {
			return true
		}
	}
	return false
}

// row writes one.
func (p *painter) row(c columns, r theme.Role, name, hours, left, hearth, sure string) {
	p.g.TextIn(cell.Rect{X: 2, Y: p.y, W: c.hours - 3, H: 1}, name, p.style(r))
	for _, a := range []struct {
		x, to int
		text  string
	}{{c.hours, c.left, hours}, {c.left, c.hearth, left}, {c.hearth, max(c.sure, c.hearth+10), hearth}, {c.sure, c.truth, sure}} {
		if a.x > 0 && a.text != "" {
			w := a.to - a.x - 1
			if left == "" {
				w = p.w - a.x - 1
			}
			p.g.TextIn(cell.Rect{X: a.x, Y: p.y, W: w, H: 1}, a.text, p.style(r))
		}
	}
	p.y++
}

// truth writes what the furnace would truly have done beside the row above, or under it.
func (p *painter) truth(c columns, t, was rehearse.Truly) {
	if p.wide() {
		hours, left, bloom := p.sh.Units.WhyTruly(t, was)
		for i, text := range []string{hours, left, bloom} {
			x := c.truth + 7*i
			p.g.TextIn(cell.Rect{X: x, Y: p.y - 1, W: p.w - x - 1, H: 1}, text, p.style(theme.Now))
		}
		return
	}
	p.g.TextIn(cell.Rect{X: 4, Y: p.y, W: p.w - 5, H: 1}, p.sh.Units.WhyTrulyLine(t, was), p.style(theme.Now))
	p.y++
}
