package draw

import (
	"math"
	"strings"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/rule"
	modelwords "chargehand/model/words"
	"chargehand/physics"
	"chargehand/tui/cell"
	"chargehand/tui/chart"
	"chargehand/tui/theme"
	"chargehand/tui/words"
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
func (p Pen) Ranges(g cell.Grid, r figure.Reading, ws []rule.Warning, left []Left) {
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

// rangeLines are the figures in the order in which they always stand: ten where
// there is room, else eight.
func (p Pen) rangeLines(r figure.Reading, long bool, left []Left) []figureLine {
	ls := []figureLine{ratioLine(r), soFarLine(r), p.burnLine(r), p.stackLine(r), p.blastLine(r), p.hearthLine(r), p.slagLine(r),
		p.bloomLine(r), p.totalLine(r, modelwords.LineOre, figure.OreCharged, entry.Ore),
		p.totalLine(r, modelwords.LineCharcoal, figure.CharcoalCharged, entry.Charcoal)}
	if n := len(ls); long {
		ls[n-2], ls[n-1] = p.withLeft(ls[n-2], r, entry.Ore, left), p.withLeft(ls[n-1], r, entry.Charcoal, left)
	} else {
		ls = append(ls[:1], ls[2:]...)
		ls[7] = p.bothTotals(ls[7], ls[8])
		ls = ls[:8]
	}
	if r.Figure(figure.BackPressure).Known() { // in the place of what was put in, which is no help just then
		ls[len(ls)-1] = p.pressureLine(r)
	}
	return apart(ls)
}

// bothTotals is what was put in of both materials in one line.
func (p Pen) bothTotals(ore, charcoal figureLine) figureLine {
	if !ore.known || !charcoal.known {
		if !ore.known {
			return ore
		}
		return charcoal
	}
	return figureLine{name: words.LineIn, value: ore.value + " " + modelwords.LineOre + ", " + charcoal.value + " " + modelwords.LineCharcoal, known: true}
}

// hearthGood is between what the hearth of a bloomery of this kind is hot enough:
// published furnaces lay between 1135 and 1450 °C (30 Oct 2021; Passy-les-Tours
// 2014), and slag near fayalite runs from about 1180.
const hearthLow, hearthHigh = 1150, 1400

func (p Pen) hearthLine(r figure.Reading) figureLine {
	f := r.Figure(figure.HearthTemperature)
	if !f.Known() {
		l := unknown(words.LineHearth, firstOf(modelwords.SolverStatus(r.Status), modelwords.BeingWorkedOut))
		l.brief = modelwords.SolverStatusBrief(r.Status)
		return l
	}
	l := figureLine{name: words.LineHearth, of: f, value: p.Units.Roughly(f.P10, f.P50, f.P90), known: true, remark: modelwords.Basis(f.Basis)}
	l.bar = &bar{low: 1000, to: 1500, good: true, from: hearthLow, until: hearthHigh, at: f.P50}
	switch {
	case r.Solver == figure.Resolving:
		l.remark = modelwords.BeingWorkedOut
	case f.P90 < hearthLow:
		l.remark, l.brief, l.off = words.HearthLow, []string{words.HearthLowTerse}, true
	case f.P50 >= hearthLow:
		l.remark = words.HearthGood
	}
	return l
}

// leastSlag is the least of it, kg, that is told as a number.
const leastSlag = 0.05

// slagLine is how much slag there is; how high it stands only where slag was
// weighed once.
func (p Pen) slagLine(r figure.Reading) figureLine {
	f := r.Figure(figure.SlagMass)
	l := figureLine{name: words.LineSlag, of: f, value: p.Units.Range(f.P10, f.P90, "kg", small(f)), known: true}
	switch {
	case f.Known() && f.P90 < leastSlag && !r.SlagWeighed.Known:
		l.value = words.SlagNone
		return l
	case r.SlagWeighed.Known: // what the model makes of it gives way to what the scales say
		l.of, l.value = figure.Figure{}, words.OnScales(p.Units.Kg(entry.Kilogram(r.SlagWeighed.Value)))
	case !f.Known():
		l := unknown(words.LineSlag, firstOf(modelwords.SolverStatus(r.Status), modelwords.BeingWorkedOut))
		l.brief = modelwords.SolverStatusBrief(r.Status)
		return l
	}
	runs := ""
	if r.Running != (physics.Running{}) {
		runs = ", " + strings.Replace(modelwords.Runs(r.Running), ":", "", 1)
	}
	below := r.Figure(figure.SlagBelowTuyere)
	if !below.Known() {
		l.remark, l.brief = words.LevelUnknown+runs, []string{words.LevelUnknown + runs, words.LevelUnknown}
		if needs := modelwords.LevelNeeds(r.SlagLevelMissing()); len(needs) > 0 {
			l.remark = words.LevelUnknown + ": " + strings.Join(needs, ", ") + runs
		}
		return l
	}
	under, brief := words.UnderTuyere, words.ToTuyere
	if math.Round(below.P50) < 0 { // it has reached it
		under, brief = words.OverTuyere, words.OverTuyere
	}
	far := p.Units.Value(math.Abs(math.Round(below.P50)), "cm", 0) + " "
	l.remark, l.brief = far+under+runs, []string{far + under, far + brief}
	if base := float64(r.Light.Furnace.TuyereBase.Value); base > 0 {
		l.bar = &bar{low: -base, to: 0, at: -below.P50, good: true, from: -below.P90, until: -below.P10}
	}
	return l
}

// A mass with its ends is told to a tenth of a kilogram where it is small, or its low
// end would be told as none: little is not none.
const smallMass, noMass = 2, 0.5

func small(kg figure.Figure) int {
	if kg.P90 < smallMass || kg.P10 < noMass {
		return 1
	}
	return 0
}

func (p Pen) ranged(g cell.Grid, l figureLine, c rangeColumns) {
	w, _ := g.Size()
	g.Text(1, 0, l.name, p.Style(theme.Text))
	style := p.Style(theme.Strong)
	if !l.known {
		style = p.Style(theme.Quiet)
	}
	end := c.value + p.value(g, c.value, l.value, style)
	remark := firstOf(l.remark, l.beside)
	if l.bar == nil {
		remark = firstOf(l.beside, l.remark)
	}
	if whole := remark + ", " + l.more; l.more != "" && c.wide > 9 && g.Width(whole) <= w-c.remark {
		remark = whole
	}
	if c.wide > 0 && l.beside != "" && l.remark != "" && l.known && !l.off {
		if both := l.beside + ", " + l.remark; g.Width(both) <= w-c.remark {
			remark = both
		}
	}
	role := theme.Quiet
	if l.off {
		role = theme.Warn
		remark = firstOf(l.beside, l.remark)
		if both := l.beside + ", " + l.remark; l.beside != "" && l.remark != "" && g.Width(both) <= w-c.remark {
			remark = both
		}
	}
	switch {
	case c.wide > 0 && l.bar != nil && end+6 <= c.track:
		p.track(l).Draw(g, p.Theme, c.track, 0, c.wide)
	case c.wide > 0 && l.bar == nil && remark == l.beside:
		for _, text := range l.base {
			if end+2+g.Width(text) < c.remark {
				g.Text(end+2, 0, text, p.Style(theme.Quiet))
				break
			}
		}
	case c.wide == 0 && l.off && end < c.remark-1:
		g.Text(c.remark-2, 0, p.M.Off, p.Style(theme.Warn))
	}
	x := max(c.remark, end+1)
	switch remark {
	case l.remark:
		remark = fitting(g, w-x, remark, l.brief...)
	case l.beside:
		remark = fitting(g, w-x, remark, firstOf(l.terse, remark))
	}
	if !l.known {
		x = max(min(c.remark, end+2), end+2)
	}
	g.TextIn(cell.Rect{X: x, W: w - x, H: 1}, remark, p.Style(role))
}

// value writes the number of a value bold and its unit plain, and returns how wide
// the two are.
func (p Pen) value(g cell.Grid, x int, value string, style cell.Style) int {
	return g.Text(x, 0, value, style)
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

// speaksOf is the figure that a warning speaks of.
var speaksOf = map[rule.ID]string{
	rule.BurnSlower: modelwords.LineBurn, rule.BurnFaster: modelwords.LineBurn, rule.ChargeOverdue: modelwords.LineBurn, rule.AirShort: modelwords.LineBurn,
	rule.StackLow: modelwords.LineStack, rule.HangUp: modelwords.LineStack, rule.Slip: modelwords.LineStack,
	rule.BlastLost: modelwords.LineBlast, rule.TuyereBlocked: modelwords.LineBlast, rule.TuyereDim: modelwords.LineBlast,
	rule.PressureHigh: modelwords.LinePressure, rule.PressureLow: modelwords.LinePressure, rule.MeterOdd: modelwords.LineBlast,
	rule.RatioOff: modelwords.LineRatio, rule.HearthCold: words.LineHearth, rule.HearthCools: words.LineHearth,
	rule.SlagAt: words.LineSlag, rule.SlagNear: words.LineSlag, rule.SlagThick: words.LineSlag, rule.SlagRises: words.LineSlag,
	rule.SlagStiffens: words.LineSlag, rule.StoresShort: modelwords.LineOre,
	rule.MixRich: modelwords.LineRatio, rule.RatioHigh: modelwords.LineRatio,
	rule.AirWeak: modelwords.LineBlast, rule.AirStrong: modelwords.LineBlast, rule.AirOdd: modelwords.LineBlast,
	rule.OreEarly: words.LineHearth, rule.FireFell: words.LineHearth,
}

func spokenOf(name string, ws []rule.Warning) bool {
	for _, w := range ws {
		if w.Grade > rule.Note && speaksOf[w.Rule] == name {
			return true
		}
	}
	return false
}

// Warned paints the top warning in the rows that are always its own: what is wrong
// and what shows it, then the remedy in full. An act takes them inverse. Where all
// of it does not fit what shows it gives way, and never the remedy.
func (p Pen) Warned(g cell.Grid, r figure.Reading, ws []rule.Warning, lined bool) {
	w, h := g.Size()
	if lined {
		p.Line(g)
		g = g.Sub(cell.Rect{X: 1, Y: 1, W: w - 1, H: h - 1})
		w, h = g.Size()
	}
	if len(ws) == 0 || h < 1 {
		return
	}
	top := ws[0]
	title, evidence, remedy := p.Units.Warning(top)
	tag, mark := p.Badge(top.Grade)
	strong, plain, quiet := p.Style(theme.Strong), p.Style(theme.Text), p.Style(theme.Quiet)
	if top.Grade == rule.Act {
		g.Fill(g.Bounds(), ' ', tag)
		strong, plain, quiet = tag.With(cell.Bold), tag, tag
	}
	x := 1 + g.Text(1, 0, " "+mark+modelwords.Grade(top.Grade)+" ", tag.With(cell.Bold)) + 1
	since := func(more int) string {
		if w < 60 {
			return modelwords.WarningSeen(top.Acknowledged, more)
		}
		return modelwords.WarningSince(r.Wall(top.Onset), top.Acknowledged, more)
	}
	indent := x
	if w < 90 {
		indent = 1
	}
	said := func(since string) (end int) {
		end = w - 1
		if n := g.TextRight(end, 0, since, quiet); n > 0 {
			end -= n + 2
		}
		return end
	}
	if need := g.Rows(remedy, w-1-indent); need < h {
		what, long := modelwords.Warned(title, evidence), w-3-g.Width(since(len(ws)-1))
		rows := min(g.Rows(what, long-x), h-need)
		also := ws[1:min(1+h-need-rows, len(ws))] // in the rows that are left
		end := said(since(len(ws) - 1 - len(also)))
		g.Wrap(cell.Rect{X: x, W: end - x, H: rows}, InParts(g, what, end-x, rows), strong)
		rows += g.Wrap(cell.Rect{X: indent, Y: rows, W: w - 1 - indent, H: h - rows}, remedy, plain)
		for i, also := range also {
			p.warnedToo(g.Sub(cell.Rect{Y: rows + i, W: w, H: 1}), r, also, top.Grade == rule.Act)
		}
		return
	}
	end := said(modelwords.WarningSeen(false, len(ws)-1))
	x += g.Text(x, 0, title, strong) // the evidence gives way
	x += g.Text(x, 0, ": ", strong)
	first, rest := g.Break(remedy, end-x)
	g.TextIn(cell.Rect{X: x, W: end - x, H: 1}, first, plain)
	g.Wrap(cell.Rect{X: 1, Y: 1, W: w - 2, H: h - 1}, rest, plain)
}

// warnedToo is a warning beside the first, in a row.
func (p Pen) warnedToo(g cell.Grid, r figure.Reading, also rule.Warning, act bool) {
	w, _ := g.Size()
	tag, mark := p.Badge(also.Grade)
	strong, quiet := p.Style(theme.Text), p.Style(theme.Quiet)
	if act {
		strong, quiet, tag = p.Style(theme.Act), p.Style(theme.Act), p.Style(theme.Act)
	}
	title, evidence, _ := p.Units.Warning(also)
	x := 1 + g.Text(1, 0, " "+mark+modelwords.Grade(also.Grade)+" ", tag) + 1
	end := w - 1
	if n := g.TextRight(end, 0, modelwords.WarningSince(r.Wall(also.Onset), also.Acknowledged, 0), quiet); n > 0 {
		end -= n + 2
	}
	g.TextIn(cell.Rect{X: x, W: end - x, H: 1}, InParts(g, modelwords.Warned(title, evidence), end-x, 1), strong)
}

// Log paints the last entries, the newest lowest and bold, so that the eye finds
// it where the answer is.
func (p Pen) Log(g cell.Grid, log []LogLine, lined bool) {
	_, h := g.Size()
	y := 0
	if lined && h > 1 {
		p.Line(g)
		y = 1
	}
	n := min(len(log), h-y)
	w, _ := g.Size()
	for i := range max(n, 0) {
		p.logLine(g.Sub(cell.Rect{X: 1, Y: h - 1 - i, W: w - 1, H: 1}), log[i], i == 0)
	}
}
