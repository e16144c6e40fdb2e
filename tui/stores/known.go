package stores

import (
	"math"

	"chargehand/model/entry"
	"chargehand/model/house"
	"chargehand/model/lot"
	plans "chargehand/model/plan"
	"chargehand/tui/cell"
	"chargehand/tui/chart"
	"chargehand/tui/screen"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// known paints the picked lot: at the left how it came to be what it is, at the right what
// is known of it.
func known(g cell.Grid, sh *screen.Shared, l house.Lot) {
	th := sh.Theme
	w, h := g.Size()
	g.Fill(cell.Rect{W: w, H: 1}, th.Marks().HLine, th.Style(theme.Frame))
	left := w * 43 / 100
	g.Fill(cell.Rect{X: left, Y: 1, W: 1, H: h - 1}, th.Marks().VLine, th.Style(theme.Frame))
	cameWent(g.Sub(cell.Rect{Y: 1, W: left, H: h - 1}), sh, l)
	ofLot(g.Sub(cell.Rect{X: left + 2, Y: 1, W: w - left - 2, H: h - 1}), sh, l)
}

// cameWent lists what came, went and was counted, the newest kept in sight; with room a bar
// stands beside each of what there was then.
func cameWent(g cell.Grid, sh *screen.Shared, l house.Lot) {
	th := sh.Theme
	w, h := g.Size()
	g.TextIn(cell.Rect{X: 2, W: w - 3, H: 1}, l.Name, th.Style(theme.Strong))
	type line struct {
		c    house.Change
		then float64
	}
	var all []line
	there, most := 0.0, 1.0
	for _, c := range l.Changes {
		switch {
		case c.Count:
			there = c.Dry.Kg
		default:
			there += c.Dry.Kg
		}
		most = math.Max(most, there)
		if n := len(all) - 1; n >= 0 && c.Smelt != "" && c.Smelt == all[n].c.Smelt && !c.Count && !all[n].c.Count { // a day's charges are one thing that was done
			all[n] = line{together(l, all[n].c, c), there}
			continue
		}
		all = append(all, line{c, there})
	}
	bars := 0
	if w >= 52 {
		bars = w - 46
	}
	for y, one := range all[max(len(all)-(h-1), 0):] {
		c := one.c
		g.Text(4, y+1, c.At.Format("2 Jan"), th.Style(theme.Quiet))
		weighed := c.Kg
		if weighed == 0 {
			weighed = l.Weight(math.Abs(c.Dry.Kg))
		}
		c.Smelt = smeltIn(sh, c.Smelt)
		text := words.ChangeOf(sh.Units, c, weighed)
		room := w - 12
		if bars > 4 {
			room = 32
			block := '▆'
			if th.ASCII {
				block = '='
			}
			role := theme.Bar
			if l.Of() == entry.LotOre {
				role = theme.OreBar
			}
			g.Fill(cell.Rect{X: 44, Y: y + 1, W: int(math.Round(math.Max(one.then, 0) / most * float64(bars))), H: 1}, block, th.Style(role))
		}
		g.TextIn(cell.Rect{X: 11, Y: y + 1, W: room, H: 1}, text, th.Style(theme.Text))
	}
}

// together is what a smelt took by two charges as one.
func together(l house.Lot, c, more house.Change) house.Change {
	weighed := func(c house.Change) float64 {
		if c.Kg != 0 {
			return c.Kg
		}
		return l.Weight(math.Abs(c.Dry.Kg))
	}
	c.Kg = weighed(c) + weighed(more)
	c.Dry = c.Dry.Plus(more.Dry)
	return c
}

// smeltIn is a smelt by its furnace, as far as that is known.
func smeltIn(sh *screen.Shared, smelt string) string {
	for _, s := range sh.Shelf.Lines {
		if s.ID == smelt && s.Furnace != "" {
			return s.Furnace
		}
	}
	return smelt
}

// fact is one thing known of a lot, and what it rests on.
type fact struct {
	label, value, remark string
	on                   *chart.Ranged // where it lies between two ends; nil for none
}

// share is a fact that is a share of the lot, shown up to an end.
func share(label string, s lot.Share, to float64, remark string) fact {
	return fact{label, words.ShareBand(s.P10, s.P90), remark,
		&chart.Ranged{To: to, Low: "0", High: words.WholePerCent(to), Good: true, GoodFrom: s.P10, Until: s.P90, At: s.P50}}
}

// troubles are what is wrong with a lot.
func troubles(sh *screen.Shared, l house.Lot) (all []string) {
	if kg, short := l.Short(); short {
		all = append(all, words.ShortBy(sh.Units, l.Weight(kg)))
	}
	if holds, takes, so := lot.CannotPay(l); so {
		all = append(all, words.CannotPay(holds, takes))
	}
	if lot.DampToCharge(l) {
		all = append(all, words.DampToCharge)
	}
	return all
}

// facts are what is known of a lot.
func facts(sh *screen.Shared, l house.Lot) (all []fact) {
	say := func(label, value, remark string) {
		if value != "" {
			all = append(all, fact{label, value, remark, nil})
		}
	}
	what := l.Of()
	switch what {
	case entry.LotOre:
		iron, had, s := lot.IronShare(l), lot.ToBeHad(l), lot.SlagOfBloom
		all = append(all, share(words.IronInIt, iron, 0.75, words.IronRests(iron)), share(words.CanGiveUp, had, 0.75, words.OfWeight+", "+words.BasisIs(had.Basis)),
			fact{words.SlagToExpect, words.KgBetween(s.P10, s.P90), words.KgOfBloom + ", " + words.BasisIs(entry.BasisGuessed),
				&chart.Ranged{To: 10, Low: "0", High: "10", Good: true, GoodFrom: s.P10, Until: s.P90, At: s.P50}})
	case entry.LotWood:
		if wood, ok := lot.DryWood(l); ok {
			gives := wood.Times(plans.CharcoalOfWood)
			say(words.WoodGives, words.KgBetween(gives.P10, gives.P90), words.WoodRests)
		}
	case entry.LotCharcoal:
		for _, one := range holding(sh) {
			if one.material == entry.LotCharcoal && one.known && one.spare() < 0 {
				burn := plans.WoodFor(-one.spare())
				species := woodHere(sh)
				stack := lot.Stacked(burn, species)
				say(words.WoodForRest, words.KgBetween(burn.P10, burn.P90), words.WoodStacked(stack.P10, stack.P90, species))
			}
		}
	}
	switch {
	case l.Moisture.Known:
		say(words.WaterOfIt, words.PerCentShort(lot.OfWeight(l.Moisture.Value)), words.OnDryMass(float64(l.Moisture.Value)))
	case what == entry.LotOre || what == entry.LotCharcoal || what == entry.LotWood:
		say(words.WaterOfIt, words.NotKnown, words.TakenAsUsual)
	}
	if fines := plans.FinesIn(sh.House(), l); fines > 0 {
		say(words.FinesWord, words.PerCentShort(fines), words.FinesInIt)
	}
	if len(l.Sizes) > 1 {
		say(words.SizesWord, words.SizesAre(l.Sizes), "")
	}
	if l.Lump.Known {
		say(words.LumpOf, words.Millimetres(l.Lump), "")
	}
	if len(l.Signs) > 0 {
		say(words.ShowsWord, words.SignsSeen(l.Signs), "")
	}
	say(words.LotOrigin, l.Origin, "")
	say(words.LastToWord, lastsTo(sh, l), words.AtThisBurn)
	return all
}

// ofLot paints what is known of a lot: what is wrong with it, what it is, and what would help.
func ofLot(g cell.Grid, sh *screen.Shared, l house.Lot) {
	th := sh.Theme
	w, h := g.Size()
	g.Text(0, 0, words.KnownOfIt, th.Style(theme.Quiet))
	y := 1
	wrap := func(text string, rows int, role theme.Role) {
		if y < h {
			y += g.Wrap(cell.Rect{Y: y, W: w - 1, H: min(rows, h-y)}, text, th.Style(role))
		}
	}
	for _, text := range troubles(sh, l) {
		wrap(text, 2, theme.Strong)
	}
	for _, f := range facts(sh, l) {
		if y < h {
			f.paint(g.Sub(cell.Rect{Y: y, W: w, H: 1}), th)
			y++
		}
	}
	if h > 13 {
		y++
	}
	if r, ok := lot.RoastOf(sh.House(), sh.Home.Lines(), l.ID); ok {
		wrap(words.RoastThrough, 1, theme.Quiet)
		wrap(words.RoastedThrough(r), 2, theme.Strong)
	}
	if help := lot.Helps(l); help != lot.NoHelp && !spent(l) {
		wrap(words.WouldHelp+": "+words.WhatHelps(help), 3, theme.Text)
	}
}

// paint is a fact in its row: where there is room its place between two ends stands
// between the value and the remark.
func (f fact) paint(g cell.Grid, th theme.Theme) {
	w, _ := g.Size()
	g.Text(0, 0, f.label, th.Style(theme.Text))
	value := g.Cut(f.value, w-13)
	x := 13 + g.Text(12, 0, value, th.Style(theme.Strong))
	switch roomy := w >= 60; {
	case roomy && f.on != nil:
		f.on.Draw(g, th, 29, 0, 10)
		x = 43
	case roomy:
		x = max(x, 26)
	}
	g.TextIn(cell.Rect{X: x, W: w - x - 1, H: 1}, f.remark, th.Style(theme.Quiet))
}

// woodHere is of which species the wood is that lies here, most of it; "" for none said.
func woodHere(sh *screen.Shared) string {
	l, _ := plans.MostOf(sh.House(), entry.LotWood)
	return l.Species
}

// lastsTo is until when a lot lasts at the pace of the smelt at work, which draws on it; ""
// where that is not known.
func lastsTo(sh *screen.Shared, l house.Lot) string {
	s := sh.Running
	if !s.Is() || !l.Left.Known() || l.Left.Kg <= 0 {
		return ""
	}
	r := s.Reading()
	each := 0.0
	for _, p := range r.Next {
		if (p.Lot == string(l.ID) || p.Lot == l.Name) && p.Mass.Known() {
			each += p.Mass.P50
		}
	}
	if each <= 0 || r.Usual <= 0 {
		return ""
	}
	charges := l.Weight(l.Left.Kg) / each
	return words.AtClock(sh.Now.Wall, charges*r.Usual.Minutes())
}
