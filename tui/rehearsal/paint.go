package rehearsal

import (
	"time"

	"chargehand/model/rehearse"
	"chargehand/model/rule"
	modelwords "chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/chart"
	"chargehand/tui/letter"
	"chargehand/tui/screen"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// roomyTop is how wide a screen is whose top line has room for what was opened beside the number.
const roomyTop = 100

// Paint shows the end of the rehearsal once its seal is open; before, what a rehearsal is.
func (s Screen) Paint(g cell.Grid, sh *screen.Shared) {
	title := words.DoRehearsal
	if seal, ok := sealed(sh); ok {
		title = words.FurnaceNumber(seal.Number)
	}
	phase := words.StillSealed
	if IsOpened(sh.Smelt) {
		phase = words.SealOpened
		if w, _ := g.Size(); w < roomyTop {
			phase = words.SealOpenedShort
		}
	}
	screen.Top(g, sh, title, phase)
	body := screen.Body(g)
	b := g.Sub(body)
	switch {
	case s.shows(sh):
		painter{b, sh, s.end, s.at, s.shafts}.end()
	case s.smelt != "" && s.smelt == sh.Smelt.ID() && s.err != nil:
		b.Wrap(cell.Rect{X: 2, Y: 1, W: body.W - 4, H: body.H - 1}, s.err.Error(), sh.Theme.Style(theme.Warn))
	case s.busy != "" && IsOpened(sh.Smelt):
		b.Text(2, 1, words.BeingOpened, sh.Theme.Style(theme.Quiet))
	default:
		y := 1
		for _, line := range words.RehearsalIs {
			y += b.Wrap(cell.Rect{X: 2, Y: y, W: min(body.W-4, 90), H: body.H - y}, line, sh.Theme.Style(theme.Text)) + 1
		}
	}
}

// painter paints an end.
type painter struct {
	g  cell.Grid
	sh *screen.Shared
	d  rehearse.End
	at time.Duration

	whole bool // the shafts instead of the lanes
}

func (p painter) style(r theme.Role) cell.Style { return p.sh.Theme.Style(r) }

func (p painter) line(y int) {
	w, _ := p.g.Size()
	p.g.Fill(cell.Rect{Y: y, W: w, H: 1}, p.sh.Theme.Marks().HLine, p.style(theme.Frame))
}

// end is the whole: two large answers, three lanes on one clock, three sentences.
func (p painter) end() {
	w, h := p.g.Size()
	y := p.answers(w, h)
	p.line(y)
	sentences := words.ThreeSentences(p.sh.Units, p.d)
	need := 1
	for _, t := range sentences {
		need += p.g.Rows(t, w-6)
	}
	need = min(need, h-y-12)
	left := 0
	if rows := max(need, 8); rows <= h-y-12 {
		if left = p.pictured(rows); left > 0 {
			need = 1
			for _, t := range sentences {
				need += p.g.Rows(t, w-left-8)
			}
			need = max(need, rows)
		}
	}
	lanes := cell.Rect{Y: y + 1, W: w, H: h - y - 2 - need}
	if p.whole {
		p.shafts(p.g.Sub(lanes))
	} else {
		p.lanes(p.g.Sub(lanes))
	}
	y = lanes.Bottom()
	p.line(y)
	y++
	if left > 0 {
		p.hearths(y, h-y)
	}
	if p.at > 0 {
		p.g.TextIn(cell.Rect{X: left + 2, Y: y, W: w - left - 4, H: 1}, words.Walked(p.sh.Units, p.d, p.at, heatAt(p.d.True, p.at), heatAt(p.d.Believed, p.at)), p.style(theme.Now))
	} else {
		p.g.TextIn(cell.Rect{X: left + 2, Y: y, W: w - left - 4, H: 1}, words.NothingIsKept, p.style(theme.Quiet))
	}
	y++
	for i, t := range sentences {
		p.g.Text(left+2, y, string(rune('1'+i)), p.style(theme.Now))
		y += p.g.Wrap(cell.Rect{X: left + 5, Y: y, W: w - left - 7, H: h - y}, t, p.style(theme.Strong))
	}
}

// answers are the bloom, and how many mishaps the screen told of.
func (p painter) answers(w, h int) int {
	bloom, under := words.EndBloom(p.sh.Units, p.d)
	told, lead := words.EndTold(p.d)
	right := w / 2
	if h < 24 {
		x := 4 + max(p.g.Text(2, 0, bloom, p.style(theme.Strong)), p.g.Text(2, 1, told, p.style(theme.Now)))
		p.g.TextIn(cell.Rect{X: x, Y: 0, W: w - x - 1, H: 1}, under, p.style(theme.Text))
		p.g.TextIn(cell.Rect{X: x, Y: 1, W: w - x - 1, H: 1}, lead, p.style(theme.Text))
		return 2
	}
	scale := letter.Small
	if wide, _ := letter.Middle.Size(bloom); h >= 46 && wide <= right-4 {
		scale = letter.Middle
	}
	p.g.Text(2, 0, words.EndBloomCaption, p.style(theme.Quiet))
	p.g.Text(right, 0, words.EndToldCaption, p.style(theme.Quiet))
	_, rows := scale.Size(bloom)
	for _, a := range []struct {
		x    int
		text string
		role theme.Role
	}{{2, bloom, theme.Strong}, {right, told, theme.Now}} {
		capitals, _ := letter.Capitals(a.text)
		scale.Text(p.g, a.x, 1, capitals, p.style(a.role), p.sh.Theme.ASCII)
	}
	p.g.TextIn(cell.Rect{X: 2, Y: rows + 1, W: right - 3, H: 1}, under, p.style(theme.Strong))
	p.g.TextIn(cell.Rect{X: right, Y: rows + 1, W: w - right - 1, H: 1}, lead, p.style(theme.Strong))
	return rows + 2
}

// lanes are what happened, what was believed and what was done, on one clock.
func (p painter) lanes(g cell.Grid) {
	w, h := g.Size()
	left := 20
	if w < 100 {
		left = 16
	}
	span := w - left - 2
	tight := h < 14
	thick := max(1, min(5, (h-18)/4)) // rows of a glow
	column := func(at time.Duration) int {
		return left + int(float64(span-1)*float64(at-p.d.MainBurn)/float64(max(p.d.Over-p.d.MainBurn, 1)))
	}
	caption := func(y int, head, under string) {
		g.TextIn(cell.Rect{X: 2, Y: y, W: left - 3, H: 1}, head, p.style(theme.Strong))
		if !tight {
			g.TextIn(cell.Rect{X: 2, Y: y + 1, W: left - 3, H: 1}, under, p.style(theme.Quiet))
		}
	}
	glow := func(y int, hs []rehearse.Heat) {
		for x := left; x < left+span; x++ {
			at := p.d.MainBurn + time.Duration(float64(p.d.Over-p.d.MainBurn)*float64(x-left)/float64(span))
			for row := range thick {
				if c := heatAt(hs, at); c > 0 {
					chart.Warm(g, p.sh.Theme, x, y+row, c)
				} else {
					g.Set(x, y+row, unknown(p.sh.Theme), p.style(theme.Quiet))
				}
			}
		}
	}
	figures := func(y int, hs []rehearse.Heat) {
		for _, share := range []float64{0.2, 0.5, 0.8} {
			at := p.d.MainBurn + time.Duration(share*float64(p.d.Over-p.d.MainBurn))
			if c := heatAt(hs, at); c > 0 {
				g.Text(column(at)-2, y, words.AboutDegrees(p.sh.Units, c), p.style(theme.Strong))
			}
		}
	}
	// Where one walks, and where each mishap began, goes through all lanes.
	for _, b := range p.d.Befell {
		g.Fill(cell.Rect{X: column(b.At), W: 1, H: h - 1}, p.sh.Theme.Marks().VLine, p.style(theme.Frame))
	}
	if p.at > 0 {
		g.Fill(cell.Rect{X: column(p.at), W: 1, H: h - 1}, p.sh.Theme.Marks().VLine, p.style(theme.Now))
	}
	y := 0
	caption(y, words.LaneHappened, words.LaneTrue)
	figures(y, p.d.True)
	glow(y+1, p.d.True)
	y += 1 + thick
	y = p.befell(g, y, column, tight)
	caption(y, words.LaneBelieved, words.LaneReckoned)
	figures(y, p.d.Believed)
	glow(y+1, p.d.Believed)
	y += 1 + thick
	y = p.warned(g, y, column, tight)
	caption(y, words.LaneDid, words.LaneCharges)
	p.did(g, y, column, left, h)
	p.hours(g, h-1, column, left+span)
}

func unknown(th theme.Theme) rune {
	if th.ASCII {
		return '/'
	}
	return '╱'
}

// labels writes words at places of a lane, each where there is room for it: in the first of so many rows that is free.
type labels struct {
	g    cell.Grid
	y    int
	free []int
}

func lane(g cell.Grid, y, rows int) *labels { return &labels{g, y, make([]int, rows)} }

func (l *labels) put(x int, text string, s cell.Style) {
	w, _ := l.g.Size()
	width := l.g.Width(text)
	x = max(min(x, w-width-1), 0)
	for i := range l.free {
		if x >= l.free[i] {
			l.g.Text(x, l.y+i, text, s)
			l.free[i] = x + width + 1
			return
		}
	}
}

// befell is each mishap with its name, and a stroke as long as it went on; harm is marked on it.
func (p painter) befell(g cell.Grid, y int, column func(time.Duration) int, tight bool) int {
	if len(p.d.Befell) == 0 {
		g.Text(column(p.d.MainBurn), y, words.NothingBefell, p.style(theme.Quiet))
		return y + 1
	}
	if tight {
		names := lane(g, y, 1)
		for _, b := range p.d.Befell {
			names.put(column(b.At), words.BefellAt(b, p.d.Lit), p.style(theme.Strong))
		}
		return y + 1
	}
	for _, b := range p.d.Befell[:min(3, len(p.d.Befell))] {
		x, to := column(b.At), column(min(b.At+b.Lasted, p.d.Over))
		name := words.BefellAt(b, p.d.Lit)
		w, _ := g.Size()
		for at := x; at <= to; at++ {
			g.Set(at, y, p.stroke(), p.style(theme.Strong))
		}
		if b.Harms {
			g.Text(column(b.HarmAt), y, p.sh.Theme.Marks().Act, p.style(theme.Strong))
		}
		g.Text(min(x, w-g.Width(name)-1), y+1, name, p.style(theme.Strong))
		y += 2
	}
	return y
}

func (p painter) stroke() rune {
	if p.sh.Theme.ASCII {
		return '='
	}
	return '━'
}

// warned is each warning where it came, and nothing where none came of a mishap.
func (p painter) warned(g cell.Grid, y int, column func(time.Duration) int, tight bool) int {
	tags := lane(g, y, 1)
	rows := 2
	if tight {
		rows = 1
	}
	names := lane(g, y+1, rows)
	if tight {
		names = tags
	}
	of := map[rule.ID]bool{}
	for _, b := range p.d.Befell {
		if b.IsWarned {
			of[b.Rule] = true
		}
	}
	for _, first := range []bool{true, false} { // those of a mishap have the room
		for _, w := range p.d.Warnings {
			if of[w.Rule] != first {
				continue
			}
			title, _, _ := p.sh.Units.Warning(w)
			role := theme.Look
			if w.Grade == rule.Act {
				role = theme.Act
			}
			if !tight {
				tags.put(column(w.Onset), " "+words.GradeTag(w.Grade)+" ", p.style(role))
			}
			names.put(column(w.Onset), title, p.style(theme.Text))
		}
	}
	for _, b := range p.d.Befell {
		if !b.IsWarned {
			names.put(column(b.At), words.NothingToldOf(b.Name), p.style(theme.Quiet))
		}
	}
	return y + rows + map[bool]int{true: 0, false: 1}[tight]
}

// did is every charge as a block, and acts in words under them.
func (p painter) did(g cell.Grid, y int, column func(time.Duration) int, left, h int) {
	block := '■'
	if p.sh.Theme.ASCII {
		block = 'o'
	}
	for _, c := range p.d.Charges {
		role := theme.Bar
		if c.Ore {
			role = theme.OreBar
		}
		if x := column(c.At); x >= left {
			g.Set(x, y, block, p.style(role))
		}
	}
	acts := lane(g, y+1, max(1, min(3, h-y-2)))
	for _, a := range p.d.Acts {
		if column(a.At) < left {
			continue
		}
		acts.put(column(a.At), words.ActAt(modelwords.Units{}.Event(a.Event), a), p.style(theme.Now))
	}
}

// hours are those of the rehearsal's own clock.
func (p painter) hours(g cell.Grid, y int, column func(time.Duration) int, right int) {
	first := p.d.Lit.Add(p.d.MainBurn).Truncate(time.Hour).Add(time.Hour)
	for at := first; at.Before(p.d.Lit.Add(p.d.Over)); at = at.Add(time.Hour) {
		if x := column(at.Sub(p.d.Lit)); x+5 < right {
			g.Text(x, y, at.Format(modelwords.Clock), p.style(theme.Quiet))
		}
	}
}
