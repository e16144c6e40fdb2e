package plan

import (
	"math"
	"slices"

	"chargehand/model/entry"
	"chargehand/model/plan"
	"chargehand/tui/cell"
	"chargehand/tui/draw"
	"chargehand/tui/letter"
	"chargehand/tui/scene"
	"chargehand/tui/screen"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// Paint shows the answer, what it takes beside what there is, the ways to charge, and the
// day.
func (s Screen) Paint(g cell.Grid, sh *screen.Shared) {
	th := sh.Theme
	about := words.UsualFurnace
	if f, ok := s.built(sh.House()); ok {
		if about = f.Last().Furnace.Name; len(sh.House().Furnaces) == 0 {
			about = words.FurnaceAsIn(about, s.smelt)
		}
	}
	screen.TopBeside(g, sh, words.PlanTitle, words.AboutPlan(about, s.when.day))
	body := screen.Body(g)
	if !s.made {
		g.Text(2, body.Y+1, words.BeingReckoned, th.Style(theme.Text))
		return
	}
	w, h := g.Size()
	size := scene.SizeOf(w, h)
	top := 3
	if size >= scene.Middle {
		top = 8
	}
	answer, body := body.CutTop(top)
	s.answer(g.Sub(answer), sh)
	if len(s.plan.Ways) == 0 {
		g.Wrap(cell.Rect{X: 2, Y: body.Y, W: body.W - 4, H: body.H}, words.NoOreGivesIt, th.Style(theme.Text))
		return
	}
	tables, rest := body.CutTop(min(10, body.H))
	left := w * 48 / 100
	if size == scene.Small {
		left = 41
	}
	needs, ways := tables.CutLeft(left)
	s.needs(g.Sub(needs), sh)
	g.Fill(cell.Rect{X: left, Y: tables.Y, W: 1, H: tables.H - 1}, th.Marks().VLine, th.Style(theme.Frame))
	_, ways = ways.CutLeft(2)
	s.ways(g.Sub(ways), sh)
	g.Fill(cell.Rect{Y: tables.Bottom() - 1, W: w, H: 1}, th.Marks().HLine, th.Style(theme.Frame))
	s.day(g.Sub(rest), sh)
}

// leastWanted is from how many columns on what is wanted stands before what it takes.
const leastWanted = 60

// answer says what is wanted, what it takes and how sure it is.
func (s Screen) answer(g cell.Grid, sh *screen.Shared) {
	th, u := sh.Theme, sh.Units
	w, h := g.Size()
	o, ok := s.plan.Offer()
	if !ok {
		o = s.plan.Offers[len(s.plan.Offers)-1]
	}
	wanted := words.Wanting(u, s.want.What, s.want.Kg)
	ore, chance := words.OreLetters(u, o.Smelts, o.Ore), words.ChanceLetters(o.Chance)
	none := words.NoneOf(s.plan.None.P50, s.plan.Smelts)
	others := words.OtherOffers(u, s.plan.Offers, s.plan.Taken)
	if h < 8 {
		x := 2
		if w >= leastWanted {
			x += g.Text(2, 0, wanted+": ", th.Style(theme.Quiet))
		}
		if ok {
			x += g.Text(x, 0, words.OreLine(u, o.Smelts, o.Ore)+", ", th.Style(theme.Strong))
		}
		g.TextIn(cell.Rect{X: x, W: w - x - 1, H: 1}, words.ChanceLine(o.Chance), th.Style(theme.Now))
		g.TextIn(cell.Rect{X: 2, Y: 1, W: w - 3, H: 1}, draw.InParts(g, words.WithOffers(none, others, w-3), w-3, 1), th.Style(theme.Text))
		g.Fill(cell.Rect{Y: 2, W: w, H: 1}, th.Marks().HLine, th.Style(theme.Frame))
		return
	}
	half := w / 2
	g.Text(2, 0, wanted, th.Style(theme.Quiet))
	g.Text(half, 0, words.ChanceOfIt, th.Style(theme.Quiet))
	if ok {
		if wide, _ := letter.Small.Size(ore); wide > half-4 {
			ore = words.OreLettersShort(u, o.Smelts, o.Ore)
		}
		letter.Small.Text(g, 2, 1, ore, th.Style(theme.Strong), th.ASCII)
		if way := s.plan.Ways[min(s.way, len(s.plan.Ways)-1)]; true {
			g.TextIn(cell.Rect{X: 2, Y: 6, W: half - 3, H: 1}, words.TakesLine(u, o.Smelts, way.Charcoal, s.plan.Hours(way).P50), th.Style(theme.Strong))
		}
	} else {
		g.Text(2, 2, words.NoAmount, th.Style(theme.Strong))
	}
	letter.Small.Text(g, half, 1, chance, th.Style(theme.Now), th.ASCII)
	g.TextIn(cell.Rect{X: half, Y: 6, W: w - half - 1, H: 1}, none, th.Style(theme.Strong))
	if wide, _ := letter.Small.Size(chance); half+wide+24 < w {
		for i, o := range others {
			g.TextIn(cell.Rect{X: half + wide + 3, Y: 2 + i, W: w - half - wide - 4, H: 1}, o, th.Style(theme.Text))
		}
	}
	g.Fill(cell.Rect{Y: 7, W: w, H: 1}, th.Marks().HLine, th.Style(theme.Frame))
}

// madeOf is what is made of a need where there is too little of it.
var madeOf = map[plan.Need]plan.Need{plan.NeedWood: plan.NeedCharcoal, plan.NeedOreRaw: plan.NeedOreRoasted}

// needs is what it takes, beside what there is of it.
func (s Screen) needs(g cell.Grid, sh *screen.Shared) {
	th, u := sh.Theme, sh.Units
	w, h := g.Size()
	o, _ := s.plan.Offer()
	dry, beside := 28, 30
	if w < 50 {
		dry, beside = 27, 28
	}
	narrow := w < dry+1 // what there is has no room, and how much of it is needed comes before the words
	at := 2
	if narrow {
		dry, beside = w-1, w
		if w < 22 {
			dry, at = w, 1
		}
	}
	head, needs := words.HeadDry, words.NeedsHead(o.Smelts)
	if narrow {
		needs = words.NeedsHead(1)
		head = words.HeadDryIn(u)
	}
	g.Text(at, 0, needs, th.Style(theme.Quiet))
	g.TextRight(dry, 0, head, th.Style(theme.Quiet))
	g.Text(beside, 0, words.ThereIsHead, th.Style(theme.Quiet))
	y := 1
	short := map[plan.Need]float64{}
	for _, t := range s.plan.TooShort {
		short[t.Need] = t.Take - t.Left
	}
	for _, n := range s.plan.Needs {
		if n.Need == plan.NeedCharcoalForge && s.plan.Forges() && n.Band.P50 == 0 && y < h-1 { // over another fuel
			g.TextIn(cell.Rect{X: 2, Y: y, W: 14, H: 1}, words.NeedWord(n.Need), th.Style(theme.Text))
			g.TextRight(dry, y, words.ForgeBurns(s.plan.Forge), th.Style(theme.Strong))
			g.TextIn(cell.Rect{X: beside, Y: y, W: w - beside, H: 1}, words.ForgeOther, th.Style(theme.Quiet))
			y++
		}
		if y >= h-1 || n.Need == plan.NeedCharcoalForge && n.Band.P50 == 0 || n.Need == plan.NeedClay && s.plan.Built {
			continue
		}
		if n.Need == plan.NeedOreRoasted && o.Smelts > 1 && n.Point { // so many times what one is said to take
			all := float64(o.Smelts) * math.Round(o.Ore)
			if by, is := short[n.Need]; is {
				short[n.Need] = by + all - n.Band.P50
			}
			n.Band.P50 = all
		}
		if narrow {
			is := g.Cut(words.NeedIsBrief(u, n), dry-at)
			g.TextRight(dry, y, is, th.Style(theme.Strong))
			g.TextIn(cell.Rect{X: at, Y: y, W: dry - at - 1 - g.Width(is), H: 1}, words.NeedWordBrief(n.Need), th.Style(theme.Text))
			if _, is := short[n.Need]; is {
				g.Text(0, y, words.TooLittleMark, th.Style(theme.Strong))
			}
			y++
			continue
		}
		g.TextIn(cell.Rect{X: 2, Y: y, W: 14, H: 1}, words.NeedWord(n.Need), th.Style(theme.Text))
		g.TextRight(dry, y, words.NeedIs(u, n), th.Style(theme.Strong))
		left, weighed := s.plan.Left[n.Need]
		remark, role := words.NeedRemark(n), theme.Quiet
		x := beside
		if weighed {
			x += g.Text(x, y, words.KgRound(u, left), th.Style(theme.Text)) + beside - dry
			remark = words.EnoughWord
			if made, is := madeOf[n.Need]; is {
				if _, lacks := short[made]; !lacks {
					if remark = words.NotNeeded; g.Width(remark) > w-x {
						remark = words.NotNeededBrief
					}
				}
			}
			if by, is := short[n.Need]; is {
				remark, role = words.TooLittleShort(u, by), theme.Strong
				if w < 50 {
					if remark = words.LessShort(u, by); g.Width(remark) > w-x {
						remark = words.LessTerse(u, by)
					}
				}
			} else if n.Basis == entry.BasisGuessed {
				remark = ""
			}
		}
		g.TextIn(cell.Rect{X: x, Y: y, W: w - x, H: 1}, remark, th.Style(role))
		y++
	}
}

// leastWay is how many columns a way to charge takes at least.
const leastWay = 8

// ways are the three ways to charge, the one shown marked; in a small window it alone.
func (s Screen) ways(g cell.Grid, sh *screen.Shared) {
	th, u := sh.Theme, sh.Units
	w, h := g.Size()
	label := 10
	each := (w - label) / max(len(s.plan.Ways), 1)
	alone := each < leastWay // there is room for the one shown only
	if alone {
		each = w - label
	}
	o, _ := s.plan.Offer()
	roomy := each > 14
	for y, head := range []string{"", words.NeedWord(plan.NeedOreRoasted), words.NeedWord(plan.NeedCharcoal), words.NeedWord(plan.NeedHours), words.ChanceWord, words.HearthWord, words.HearthBandWord(s.asked8(), s.solving()), words.FearsWord} {
		g.TextIn(cell.Rect{Y: y, W: label, H: 1}, head, th.Style(theme.Text))
	}
	for i, way := range s.plan.Ways {
		x := label + i*each
		if alone {
			if x = label; i != s.way {
				continue
			}
		}
		style := th.Style(theme.Text)
		head := th.Style(theme.Quiet)
		if i == s.way {
			style, head = th.Style(theme.Strong), th.Style(theme.Picked)
		}
		g.Text(x, 0, " "+way.Name+" ", head)
		put := func(y int, text string) {
			g.TextIn(cell.Rect{X: x + 1, Y: y, W: each - 1, H: 1}, text, style)
		}
		hours := s.plan.Hours(way)
		put(1, words.KgRound(u, way.Ore))
		put(2, words.KgRound(u, way.Charcoal))
		put(3, words.HoursIs(hours.P10, hours.P90))
		put(4, words.ChanceBrief(o.Chance))
		fears := way.Fears
		var f plan.Foreseen
		switch {
		case s.foresee == nil:
			put(5, words.BeingReckoned)
		case s.foresee[i].Known:
			f = s.foresee[i]
			put(5, words.HearthAbout(u, f.Hearth.P50-273.15, each > 12))
			if b := f.Band(); f.Over.Whole() {
				put(6, words.HearthBand(u, b.P10-273.15, f.Hearth.P50-273.15, b.P90-273.15, roomy))
			}
			fears = append(fears[:len(fears):len(fears)], f.Fears...)
			for _, afraid := range []plan.Fear{plan.FearHearth, plan.FearStiff, plan.FearCast} {
				if n := f.Over.Afraid[afraid]; n > 1 && !slices.Contains(f.Fears, afraid) {
					fears = append(fears, afraid)
				}
			}
		default:
			put(5, words.NotKnown)
		}
		if len(fears) == 0 {
			put(7, words.NothingToFear(roomy))
		}
		y := 7
		for _, fear := range fears {
			if y < h-1 {
				put(y, words.FearIn(fear, f.Over.Afraid[fear], len(f.Over.Hearths), each))
				y++
			}
		}
	}
}

// solving tells whether the model is still at it, or has nothing to say of these ways.
func (s Screen) solving() bool {
	return s.foresee == nil || s.asked8() < plan.BandFurnaces && slices.ContainsFunc(s.foresee, func(f plan.Foreseen) bool { return f.Known })
}

// asked8 is in how many plausible furnaces the ways were solved so far.
func (s Screen) asked8() int {
	n := 0
	for _, f := range s.foresee {
		n = max(n, len(f.Over.Hearths))
	}
	return n
}

// day is the order of the day by the way shown, a line each or, where there is room, with
// a strip of its charges over it.
func (s Screen) day(g cell.Grid, sh *screen.Shared) {
	th := sh.Theme
	w, h := g.Size()
	way := s.plan.Ways[min(s.way, len(s.plan.Ways)-1)]
	y := 0
	if h >= 12 {
		y = s.strip(g, sh, way)
	}
	foot := g.Rows(words.JudgeYourself, w-3)
	last := s.last(g, sh, h-foot, h-y)
	room := max(h-y-foot-last, 1)
	rows := s.clock(g.Sub(cell.Rect{Y: y, W: w, H: room}), sh)
	if y+rows+last+foot <= h {
		g.Wrap(cell.Rect{X: 2, Y: h - foot, W: w - 3, H: foot}, words.JudgeYourself, th.Style(theme.Quiet))
	}
}
