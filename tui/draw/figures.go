package draw

import (
	"math"
	"time"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/plan"
	modelwords "chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// figureLine is one figure: its name, its value, what stands beside it, a bar
// where there is a good band to mark, and one plain remark.
type figureLine struct {
	name, value, beside, remark string
	of                          figure.Figure // whose value it is, for one with ends
	more                        string        // said after the remark where there is room
	brief                       []string      // the remark where it has no room, the longest first; none for cut
	terse                       string        // likewise what stands beside, where that takes the place of the remark
	asWell                      string        // what stands beside also where the figure is said in words
	base                        []string      // of what it is, in the place that a track leaves free, the longest first
	bar                         *bar
	known                       bool
	off                         bool // it is not what it should be
}

// figureLines are the figures in the order in which they always stand.
func (p Pen) figureLines(r figure.Reading) []figureLine {
	ls := []figureLine{ratioLine(r), soFarLine(r), p.burnLine(r), p.stackLine(r), p.blastLine(r),
		p.totalLine(r, modelwords.LineCharcoal, figure.CharcoalCharged, entry.Charcoal),
		p.totalLine(r, modelwords.LineOre, figure.OreCharged, entry.Ore), p.bloomLine(r)}
	if r.Figure(figure.BackPressure).Known() { // last, so that the others keep their places
		ls = append(ls, p.pressureLine(r))
	}
	return apart(ls)
}

// apart says in words, of every figure whose ends lie so far apart that they tell
// nothing, that it is not known.
func apart(ls []figureLine) []figureLine {
	for i, l := range ls {
		if l.of.Wide() {
			ls[i] = figureLine{name: l.name, value: modelwords.NotKnownOnly, beside: l.asWell, remark: modelwords.TooLittleSeen}
		}
	}
	return ls
}

// unknown is a figure without a value, and what would give it one.
func unknown(name, remark string) figureLine {
	return figureLine{name: name, value: modelwords.NotKnown, remark: remark}
}

// remarkOn is what a figure rests on, when that is less than measured.
func remarkOn(f figure.Figure) string {
	if f.Basis == figure.Measured {
		return ""
	}
	return modelwords.Basis(f.Basis)
}

// toWeigh says which measure of a material has no weight yet, or none.
func toWeigh(r figure.Reading, what entry.What) string {
	for _, m := range r.Measures {
		if m.What == what && !m.Mass.Known {
			return modelwords.WeighA(m.Name)
		}
	}
	return ""
}

// firstOf is the first of the texts that says anything.
func firstOf(texts ...string) string {
	for _, t := range texts {
		if t != "" {
			return t
		}
	}
	return ""
}

func ratioLine(r figure.Reading) figureLine {
	f := r.Figure(figure.RatioFive)
	if !f.Known() {
		return unknown(modelwords.LineRatio, firstOf(toWeigh(r, entry.Charcoal), toWeigh(r, entry.Ore), modelwords.NeedsCharge))
	}
	if f.P50 == 0 {
		return figureLine{name: modelwords.LineRatio, value: modelwords.NoOreYet, beside: modelwords.LastFive, known: true}
	}
	l := figureLine{name: modelwords.LineRatio, of: f, value: modelwords.Ratio(f.P50), beside: modelwords.LastFive, remark: remarkOn(f), known: true}
	next := r.NextRatio
	if over, _ := NoMore(r); over || OreNote(r) != "" || !next.Known() || next.P50 == 0 {
		return l // there is no charge with ore to come that it could be held against
	}
	l.bar = &bar{to: 1.5 * math.Max(next.P90, 0.8*f.P50), good: true, from: next.P10, until: next.P90, at: f.P50}
	switch {
	case f.P10 > next.P90:
		l.remark, l.brief = words.RatioOver, []string{words.RatioOverBrief}
	case f.P90 < next.P10:
		l.remark, l.brief = words.RatioUnder, []string{words.RatioUnderBrief}
	default:
		l.remark = words.RatioAsNext
	}
	return l
}

func soFarLine(r figure.Reading) figureLine {
	f := r.Figure(figure.RatioSmelt)
	if !f.Known() {
		return unknown(modelwords.LineSoFar, firstOf(toWeigh(r, entry.Charcoal), toWeigh(r, entry.Ore), modelwords.NeedsOre))
	}
	l := figureLine{name: modelwords.LineSoFar, of: f, value: modelwords.Ratio(f.P50), beside: modelwords.SinceFirstOre, remark: remarkOn(f), known: true}
	if next := r.NextRatio; next.Known() && next.P50 > 0 {
		l.bar = &bar{to: 1.5 * math.Max(next.P90, 0.8*f.P50), at: f.P50}
	}
	return l
}

func (p Pen) burnLine(r figure.Reading) figureLine {
	f := r.Figure(figure.BurnRate)
	each := ""
	if m := r.Figure(figure.MinutesPerMeasure); m.Known() {
		each = modelwords.AMeasure(m.P50, charcoalMeasure(r))
	}
	if !f.Known() {
		l := unknown(modelwords.LineBurn, firstOf(toWeigh(r, entry.Charcoal), modelwords.NeedsCharges))
		l.beside = each
		return l
	}
	l := figureLine{name: modelwords.LineBurn, of: f, value: p.InUnit(f, 1, figure.BurnRate), beside: each, asWell: each, known: true}
	least, most := r.Figure(figure.BurnLeast), r.Figure(figure.BurnMost)
	if !least.Known() || !most.Known() {
		l.remark = modelwords.BlastUnread
		return l
	}
	l.bar = &bar{to: 1.5 * math.Max(most.P50, 0.8*f.P50), good: true, from: least.P50, until: most.P50, at: f.P50}
	switch r.BurnAgainst() {
	case figure.OverBlast: // said at every size, whatever else has no room
		l.beside, l.remark, l.brief = "", modelwords.MoreThanBlast, []string{words.OverTheBlast}
	case figure.UnderBlast:
		l.remark = modelwords.LessThanBlast
	default:
		l.remark = modelwords.AsTheBlast
	}
	return l
}

// charcoalMeasure is the name of what charcoal is measured in.
func charcoalMeasure(r figure.Reading) string {
	for _, m := range r.Measures {
		if m.What == entry.Charcoal {
			return m.Name
		}
	}
	return modelwords.AnyMeasure
}

func (p Pen) stackLine(r figure.Reading) figureLine {
	f := r.Figure(figure.StackHeight)
	furnace := r.Light.Furnace
	if r.Phase.Over() {
		return figureLine{name: modelwords.LineStack, value: modelwords.NoneLeft, remark: modelwords.BloomIsOut}
	}
	if !f.Known() {
		if !furnace.Bore.Positive() || !furnace.Stack.Positive() {
			return unknown(modelwords.LineStack, modelwords.NeedsSizes)
		}
		return unknown(modelwords.LineStack, modelwords.NeedsFill)
	}
	if r.StackLost() {
		return figureLine{name: modelwords.LineStack, value: modelwords.NotKnownDip, known: true}
	}
	l := figureLine{name: modelwords.LineStack, of: f, value: p.InUnit(f, 0, figure.StackHeight), remark: modelwords.Basis(f.Basis), known: true}
	if f.Basis == figure.Measured && r.Dipped.Known {
		l.remark = modelwords.MeasuredAt(r.Wall(time.Duration(r.Dipped.Value * float64(time.Second))))
	}
	if r.Astray {
		l.remark, l.brief = modelwords.DoesNotFollow, []string{words.NotAsModelled}
	}
	if furnace.Stack.Positive() {
		mark := float64(furnace.Stack.Value)
		l.beside = p.Units.UnderMark(mark - f.P50)
		l.bar = &bar{to: mark, at: f.P50}
	}
	return l
}

func (p Pen) blastLine(r figure.Reading) figureLine {
	f, b := r.Figure(figure.Air), r.Blast
	if b == (entry.Blast{}) {
		if r.Phase.Over() {
			return unknown(modelwords.LineBlast, modelwords.NeverKeyed)
		}
		return unknown(modelwords.LineBlast, modelwords.NeedsBlast)
	}
	if r.BlastOff {
		return figureLine{name: modelwords.LineBlast, value: modelwords.BlastIsOff, beside: modelwords.OffSince(r.Wall(r.BlastAt)), known: true}
	}
	l := figureLine{name: modelwords.LineBlast, of: f, remark: modelwords.MeasuredAt(r.Wall(r.BlastAt)), known: true}
	if !f.Known() {
		l.value, l.beside, l.terse = modelwords.Setting(b), modelwords.NeedsMeter, modelwords.NeedsMeterBrief
		return l
	}
	l.value = p.Units.Value(f.P50, figure.Table[figure.Air].Unit, 0)
	if f.Basis != figure.Measured {
		l.beside, l.remark = modelwords.Setting(b), modelwords.SetAt(r.Wall(r.BlastAt))
		return l
	}
	if a := r.Figure(figure.AirPerArea); a.Known() && a.P50 > 0 {
		l.beside, l.terse = p.Units.PerArea(a.P50), p.Units.PerAreaBrief(a.P50)
		per := p.Units.Shown(f.P50, figure.Table[figure.Air].Unit) / a.P50 // the end in the person's unit for 1 l/min a cm2
		l.bar = &bar{to: math.Max(3.2*per, f.P50), good: true, from: plan.UsedBlast.P10 * per, until: plan.UsedBlast.P90 * per, at: p.Units.Shown(f.P50, figure.Table[figure.Air].Unit)}
	}
	return l
}

// pressureLine is what the blast meets, beside what it should.
func (p Pen) pressureLine(r figure.Reading) figureLine {
	of := func(n figure.Name) string { return p.Units.Value(r.Figure(n).P50, figure.Table[n].Unit, 0) }
	l := figureLine{name: modelwords.LinePressure, of: r.Figure(figure.BackPressure), value: of(figure.BackPressure), remark: modelwords.MeasuredAt(r.Wall(r.PressedAt)), known: true}
	if usual := r.Figure(figure.BackPressureUsual); usual.Known() {
		l.beside = modelwords.AboutUsual(p.Units.Value(modelwords.Rough(usual.P50), figure.Table[figure.BackPressureUsual].Unit, 0))
	}
	return l
}

// totalLine is how much of a material went in.
func (p Pen) totalLine(r figure.Reading, name string, n figure.Name, what entry.What) figureLine {
	f := r.Figure(n)
	l := figureLine{name: name, of: f, known: true}
	if what == entry.Charcoal {
		l.beside = modelwords.FillIncluded
	} else {
		l.beside = OreNote(r)
	}
	switch {
	case f.Known():
		l.value, l.remark = p.Units.Kg(entry.Kilogram(f.P50)), remarkOn(f)
	case f.AtLeast.Known && f.AtLeast.Value > 0:
		l.value = modelwords.AtLeastWord + " " + p.Units.Kg(entry.Kilogram(f.AtLeast.Value))
		l.beside, l.remark = "", firstOf(toWeigh(r, what), modelwords.SomeUnweighed)
	default:
		l = unknown(name, firstOf(toWeigh(r, what), modelwords.SomeUnweighed))
	}
	return l
}

func (p Pen) bloomLine(r figure.Reading) figureLine {
	end := r.Figure(figure.BloomEnd)
	switch {
	case r.Bloom.Known:
	case r.BloomNever:
		return unknown(modelwords.LineBloom, modelwords.NeverWeighed)
	case end.Known():
		none := r.Figure(figure.NoBloom)
		return figureLine{name: modelwords.LineBloom, of: end, value: p.Units.Range(end.P10, end.P90, "kg", small(end)), beside: modelwords.OrNone(none), terse: modelwords.OrNoneBrief(none), remark: modelwords.OreOf(r), more: modelwords.PerTenOwn(r), base: []string{modelwords.OreOf(r), modelwords.OreOfShort(r)}, known: true}
	default:
		return unknown(modelwords.LineBloom, modelwords.NeedsWeighing)
	}
	return figureLine{name: modelwords.LineBloom, value: p.Units.Kg(entry.Kilogram(r.Bloom.Value)), remark: modelwords.Basis(figure.Measured), known: true}
}

// InUnit is a figure with its spread in the unit of the table.
func (p Pen) InUnit(f figure.Figure, decimals int, n figure.Name) string {
	return p.Units.Spread(f.P10, f.P50, f.P90, figure.Table[n].Unit, decimals)
}

// Columns of a figure line: where the value starts, what stands beside it, the
// bar, and the remark. A part that has no room is left out.
type figureColumns struct{ value, beside, bar, barWidth, remark int }

func columnsOf(w int) figureColumns {
	switch {
	case w >= 104:
		return figureColumns{value: 12, beside: 32, bar: 53, barWidth: 26, remark: 81}
	case w >= 90:
		return figureColumns{value: 11, beside: 27, bar: 48, barWidth: 15, remark: 65}
	case w >= 66:
		return figureColumns{value: 10, beside: 25, bar: 42, barWidth: 10, remark: 53}
	}
	return figureColumns{value: 10, beside: 25, remark: 25}
}

// Figures paints a line for each figure, as many as fit, with a blank between
// when there is room for that.
func (p Pen) Figures(g cell.Grid, r figure.Reading) {
	w, h := g.Size()
	if h < 1 {
		return
	}
	p.Line(g)
	lines := p.figureLines(r)
	step, y := 1, 1
	switch {
	case h >= 2*len(lines)+1:
		step = 2
	case h >= len(lines)+2:
		y = 1
	}
	for _, l := range lines {
		if y >= h {
			return
		}
		p.figure(g.Sub(cell.Rect{X: 1, Y: y, W: w - 1, H: 1}), l, columnsOf(w-1))
		y += step
	}
}

func (p Pen) figure(g cell.Grid, l figureLine, c figureColumns) {
	w, _ := g.Size()
	g.Text(1, 0, l.name, p.Style(theme.Quiet))
	style := p.Style(theme.Strong)
	if !l.known {
		style = p.Style(theme.Text)
	}
	end := c.value + g.Text(c.value, 0, l.value, style)
	if len(l.brief) > 0 && g.Width(l.remark) > w-max(c.remark, end+1) {
		x := max(c.beside, end+1)
		l.beside, l.remark, l.bar = fitting(g, w-x, l.remark, l.brief...), "", nil
	}
	if c.remark == c.beside { // one of the two, the remark when there is no value to speak for itself
		text := l.beside
		if text == "" || !l.known {
			text = l.remark
		}
		x := max(c.beside, end+1)
		g.TextIn(cell.Rect{X: x, W: w - x, H: 1}, text, p.Style(theme.Text))
		return
	}
	if !l.known && l.beside == "" {
		x := max(c.beside, end+1)
		g.TextIn(cell.Rect{X: x, W: w - x, H: 1}, l.remark, p.Style(theme.Quiet))
		return
	}
	x := max(c.beside, end+1)
	g.TextIn(cell.Rect{X: x, W: c.remark - x - 1, H: 1}, l.beside, p.Style(theme.Text))
	if l.bar != nil && c.bar > 0 && x+g.Width(l.beside) < c.bar {
		p.bar(g, c.bar, c.barWidth, *l.bar)
	}
	remark := l.remark
	if whole := remark + ", " + l.more; l.more != "" && g.Width(whole) <= w-c.remark {
		remark = whole
	}
	g.TextIn(cell.Rect{X: c.remark, W: w - c.remark, H: 1}, remark, p.Style(theme.Quiet))
}
