package draw

import (
	"math"
	"strings"
	"time"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/plan"
	modelwords "chargehand/model/words"
	"chargehand/physics"
	"chargehand/tui/words"
)

// figureLine is one figure: its name and value, what is said of it, and a bar where
// there is a good band to mark.
type figureLine struct {
	name, value string
	of          figure.Figure // whose value it is, for one with ends
	beside      forms         // what else it is
	remark      forms         // how good that is, or what it rests on
	more        string        // said after either where there is room
	base        forms         // what it is of, where a bar leaves its place free
	bar         *bar
	known       bool
	off         bool  // it is not what it should be
	anyway      forms // what stands beside it also where its ends tell nothing
}

// figureLines are the figures in the order in which they always stand.
func (p Pen) figureLines(r *figure.Reading) []figureLine {
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
			ls[i] = figureLine{name: l.name, value: modelwords.NotKnownOnly, beside: l.anyway, remark: forms{modelwords.TooLittleSeen}}
		}
	}
	return ls
}

// unknown is a figure without a value, and what would give it one, the fullest form first.
func unknown(name string, needs ...string) figureLine {
	return figureLine{name: name, value: modelwords.NotKnown, remark: say(needs...)}
}

// unsolved is why there is nothing of what the solver says.
func unsolved(r *figure.Reading) forms {
	return append(say(firstOf(modelwords.SolverStatus(r.Status), modelwords.BeingWorkedOut)), modelwords.SolverStatusBrief(r.Status)...)
}

// remarkOn is what a figure rests on, when that is less than measured.
func remarkOn(f figure.Figure) string {
	if f.Basis == figure.Measured {
		return ""
	}
	return modelwords.Basis(f.Basis)
}

// toWeigh says which measure of a material has no weight yet, or none.
func toWeigh(r *figure.Reading, what entry.What) string {
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

func ratioLine(r *figure.Reading) figureLine {
	f := r.Figure(figure.RatioFive)
	if !f.Known() {
		return unknown(modelwords.LineRatio, firstOf(toWeigh(r, entry.Charcoal), toWeigh(r, entry.Ore), modelwords.NeedsCharge))
	}
	if f.P50 == 0 {
		return figureLine{name: modelwords.LineRatio, value: modelwords.NoOreYet, beside: say(modelwords.LastFive), known: true}
	}
	l := figureLine{name: modelwords.LineRatio, of: f, value: modelwords.Ratio(f.P50), beside: say(modelwords.LastFive), remark: say(remarkOn(f)), known: true}
	next := r.NextRatio
	if over, _ := NoMore(r); over || OreNote(r) != "" || !next.Known() || next.P50 == 0 {
		return l // there is no charge with ore to come that it could be held against
	}
	l.bar = &bar{to: 1.5 * math.Max(next.P90, 0.8*f.P50), good: true, from: next.P10, until: next.P90, at: f.P50}
	switch {
	case f.P10 > next.P90:
		l.remark = say(words.RatioOver, words.RatioOverBrief)
	case f.P90 < next.P10:
		l.remark = say(words.RatioUnder, words.RatioUnderBrief)
	default:
		l.remark = say(words.RatioAsNext)
	}
	return l
}

func soFarLine(r *figure.Reading) figureLine {
	f := r.Figure(figure.RatioSmelt)
	if !f.Known() {
		return unknown(modelwords.LineSoFar, firstOf(toWeigh(r, entry.Charcoal), toWeigh(r, entry.Ore), modelwords.NeedsOre))
	}
	l := figureLine{name: modelwords.LineSoFar, of: f, value: modelwords.Ratio(f.P50), beside: say(modelwords.SinceFirstOre), known: true}
	if next := r.NextRatio; next.Known() && next.P50 > 0 {
		l.bar = &bar{to: 1.5 * math.Max(next.P90, 0.8*f.P50), at: f.P50}
	}
	return l
}

func (p Pen) burnLine(r *figure.Reading) figureLine {
	f := r.Figure(figure.BurnRate)
	var each forms
	if m := r.Figure(figure.MinutesPerMeasure); m.Known() {
		each = say(modelwords.AMeasure(m.P50, charcoalMeasure(r)))
	}
	if !f.Known() {
		l := unknown(modelwords.LineBurn, firstOf(toWeigh(r, entry.Charcoal), modelwords.NeedsCharges))
		l.beside = each
		return l
	}
	l := figureLine{name: modelwords.LineBurn, of: f, value: p.InUnit(f, 1, figure.BurnRate), beside: each, anyway: each, known: true}
	least, most := r.Figure(figure.BurnLeast), r.Figure(figure.BurnMost)
	if !least.Known() || !most.Known() {
		l.remark = say(modelwords.BlastUnread)
		return l
	}
	if r.BlastOff { // nothing blows that it could fit
		l.remark = say(words.WhileItBlew)
		return l
	}
	l.bar = &bar{to: 1.5 * math.Max(most.P50, 0.8*f.P50), good: true, from: least.P50, until: most.P50, at: f.P50}
	switch r.BurnAgainst() {
	case figure.OverBlast: // said at every size, whatever else has no room
		l.beside, l.remark = nil, say(modelwords.MoreThanBlast, words.OverTheBlast)
	case figure.UnderBlast:
		l.remark = say(modelwords.LessThanBlast)
	default:
		l.remark = say(modelwords.AsTheBlast)
	}
	return l
}

// charcoalMeasure is the name of what charcoal is measured in.
func charcoalMeasure(r *figure.Reading) string {
	for _, m := range r.Measures {
		if m.What == entry.Charcoal {
			return m.Name
		}
	}
	return modelwords.AnyMeasure
}

func (p Pen) stackLine(r *figure.Reading) figureLine {
	f := r.Figure(figure.StackHeight)
	furnace := r.Light.Furnace
	if r.Phase.Over() {
		return figureLine{name: modelwords.LineStack, value: modelwords.NoneLeft, remark: say(modelwords.BloomIsOut)}
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
	l := figureLine{name: modelwords.LineStack, of: f, value: p.InUnit(f, 0, figure.StackHeight), remark: say(modelwords.Basis(f.Basis)), known: true}
	if f.Basis == figure.Measured && r.Dipped.Known {
		l.remark = say(modelwords.DippedAt(r.Wall(time.Duration(r.Dipped.Value * float64(time.Second))))) // and followed since
	}
	if r.Astray {
		l.remark = say(modelwords.DoesNotFollow, words.NotAsModelled)
	}
	if furnace.Stack.Positive() {
		mark := float64(furnace.Stack.Value)
		l.beside = say(p.Units.UnderMark(mark - f.P50))
		l.bar = &bar{to: mark, at: f.P50}
	}
	return l
}

func (p Pen) blastLine(r *figure.Reading) figureLine {
	f, b := r.Figure(figure.Air), r.Blast
	if b == (entry.Blast{}) {
		if r.Phase.Over() {
			return unknown(modelwords.LineBlast, modelwords.NeverKeyed)
		}
		return unknown(modelwords.LineBlast, modelwords.NeedsBlast)
	}
	if r.BlastOff {
		return figureLine{name: modelwords.LineBlast, value: modelwords.BlastIsOff, beside: say(modelwords.OffSince(r.Wall(r.BlastAt))), known: true}
	}
	l := figureLine{name: modelwords.LineBlast, of: f, remark: say(modelwords.MeasuredAt(r.Wall(r.BlastAt))), known: true}
	if !f.Known() {
		l.value, l.beside = modelwords.Setting(b), say(modelwords.NeedsMeter, modelwords.NeedsMeterBrief)
		return l
	}
	l.value = p.Units.Value(f.P50, figure.Table[figure.Air].Unit, 0)
	if f.Basis != figure.Measured {
		l.beside, l.remark = say(modelwords.Setting(b)), say(modelwords.SetAt(r.Wall(r.BlastAt)))
		return l
	}
	if a := r.Figure(figure.AirPerArea); a.Known() && a.P50 > 0 {
		l.beside = say(p.Units.PerArea(a.P50), p.Units.PerAreaBrief(a.P50))
		per := p.Units.Shown(f.P50, figure.Table[figure.Air].Unit) / a.P50 // the end in the person's unit for 1 l/min a cm2
		l.bar = &bar{to: math.Max(3.2*per, f.P50), good: true, from: plan.UsedBlast.P10 * per, until: plan.UsedBlast.P90 * per, at: p.Units.Shown(f.P50, figure.Table[figure.Air].Unit)}
	}
	return l
}

// pressureLine is what the blast meets, beside what it should.
func (p Pen) pressureLine(r *figure.Reading) figureLine {
	of := func(n figure.Name) string { return p.Units.Value(r.Figure(n).P50, figure.Table[n].Unit, 0) }
	l := figureLine{name: modelwords.LinePressure, of: r.Figure(figure.BackPressure), value: of(figure.BackPressure), remark: say(modelwords.MeasuredAt(r.Wall(r.PressedAt))), known: true}
	if usual := r.Figure(figure.BackPressureUsual); usual.Known() {
		l.beside = say(modelwords.AboutUsual(p.Units.Value(modelwords.Rough(usual.P50), figure.Table[figure.BackPressureUsual].Unit, 0)))
	}
	return l
}

// totalLine is how much of a material went in.
func (p Pen) totalLine(r *figure.Reading, name string, n figure.Name, what entry.What) figureLine {
	f := r.Figure(n)
	l := figureLine{name: name, of: f, known: true}
	if what == entry.Charcoal {
		l.beside = say(modelwords.FillIncluded)
	} else {
		l.beside = say(OreNote(r))
	}
	switch {
	case f.Known():
		l.value, l.remark = p.Units.Kg(entry.Kilogram(f.P50)), say(remarkOn(f))
	case f.AtLeast.Known && f.AtLeast.Value > 0:
		l.value = modelwords.AtLeastWord + " " + p.Units.Kg(entry.Kilogram(f.AtLeast.Value))
		l.beside, l.remark = nil, say(firstOf(toWeigh(r, what), modelwords.SomeUnweighed))
	default:
		l = unknown(name, firstOf(toWeigh(r, what), modelwords.SomeUnweighed))
	}
	return l
}

func (p Pen) bloomLine(r *figure.Reading) figureLine {
	end := r.Figure(figure.BloomEnd)
	switch {
	case r.Bloom.Known:
	case r.BloomNever:
		return unknown(modelwords.LineBloom, modelwords.NeverWeighed)
	case end.Known() && !r.Phase.Over(): // afterwards the result says what was foretold
		none := r.Figure(figure.NoBloom)
		return figureLine{name: modelwords.LineBloom, of: end, value: p.Units.Range(end.P10, end.P90, "kg", small(end)),
			beside: say(modelwords.OrNone(none), modelwords.OrNoneBrief(none)), remark: say(modelwords.OreOf(r)), more: modelwords.PerTenOwn(r),
			base: say(modelwords.OreOf(r), modelwords.OreOfShort(r)), known: true}
	default:
		return unknown(modelwords.LineBloom, modelwords.NeedsWeighing)
	}
	return figureLine{name: modelwords.LineBloom, value: p.Units.Kg(entry.Kilogram(r.Bloom.Value)), remark: say(modelwords.Basis(figure.Measured)), known: true}
}

// InUnit is a figure with its spread in the unit of the table.
func (p Pen) InUnit(f figure.Figure, decimals int, n figure.Name) string {
	return p.Units.Spread(f.P10, f.P50, f.P90, figure.Table[n].Unit, decimals)
}

// rangeLines are the figures in the order in which they always stand: ten where
// there is room, else eight.
func (p Pen) rangeLines(r *figure.Reading, long bool, left []Left) []figureLine {
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

func (p Pen) hearthLine(r *figure.Reading) figureLine {
	f := r.Figure(figure.HearthTemperature)
	if !f.Known() {
		return unknown(words.LineHearth, unsolved(r)...)
	}
	l := figureLine{name: words.LineHearth, of: f, value: p.Units.Roughly(f.P10, f.P50, f.P90), known: true, remark: say(modelwords.Basis(f.Basis))}
	l.bar = &bar{low: 1000, to: 1500, good: true, from: hearthLow, until: hearthHigh, at: f.P50}
	switch {
	case r.Solver == figure.Resolving:
		l.remark = say(modelwords.BeingWorkedOut)
	case f.P90 < hearthLow:
		l.remark, l.off = say(words.HearthLow, words.HearthLowTerse), r.Figure(figure.OreCharged).P50 > 0 // before there is ore it is only warming up
	case f.P50 >= hearthLow:
		l.remark = say(words.HearthGood)
	}
	return l
}

// leastSlag is the least of it, kg, that is told as a number.
const leastSlag = 0.05

// slagLine is how much slag there is; how high it stands only where slag was
// weighed once.
func (p Pen) slagLine(r *figure.Reading) figureLine {
	f := r.Figure(figure.SlagMass)
	l := figureLine{name: words.LineSlag, of: f, value: p.Units.Range(f.P10, f.P90, "kg", small(f)), known: true}
	switch {
	case f.Known() && f.P90 < leastSlag && !r.SlagWeighed.Known:
		l.value = words.SlagNone
		return l
	case r.SlagWeighed.Known: // what the model makes of it gives way to what the scales say
		l.of, l.value = figure.Figure{}, words.OnScales(p.Units.Kg(entry.Kilogram(r.SlagWeighed.Value)))
	case !f.Known():
		return unknown(words.LineSlag, unsolved(r)...)
	}
	runs := ""
	if r.Running != (physics.Running{}) {
		runs = ", " + modelwords.RunsSo(r.Running)
	}
	if r.Phase.Over() { // it stands nowhere any more
		l.remark = say(modelwords.Basis(f.Basis))
		return l
	}
	below := r.Figure(figure.SlagBelowTuyere)
	if !below.Known() {
		l.remark = say(words.LevelUnknown+runs, words.LevelUnknown)
		if needs := modelwords.LevelNeeds(r.SlagLevelMissing()); len(needs) > 0 {
			l.remark = append(say(words.LevelUnknown+": "+strings.Join(needs, ", ")+runs), l.remark...)
		}
		return l
	}
	under, brief := words.UnderTuyere, words.ToTuyere
	if math.Round(below.P50) < 0 { // it has reached it
		under, brief = words.OverTuyere, words.OverTuyere
	}
	far := p.Units.Value(math.Abs(math.Round(below.P50)), "cm", 0) + " "
	l.remark = say(far+under+runs, far+under, far+brief)
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
