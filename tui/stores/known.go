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
func known(g cell.Grid, sh screen.Shared, l house.Lot) {
	th := sh.Theme
	w, h := g.Size()
	g.Fill(cell.Rect{W: w, H: 1}, th.Marks().HLine, th.Style(theme.Frame))
	left := w * 43 / 100
	g.Fill(cell.Rect{X: left, Y: 1, W: 1, H: h - 1}, th.Marks().VLine, th.Style(theme.Frame))
	cameWent(g.Sub(cell.Rect{Y: 1, W: left, H: h - 1}), sh, l)
	facts(g.Sub(cell.Rect{X: left + 2, Y: 1, W: w - left - 2, H: h - 1}), sh, l)
}

// cameWent lists what came, went and was counted, the newest kept in sight; with room a bar
// stands beside each of what there was then.
func cameWent(g cell.Grid, sh screen.Shared, l house.Lot) {
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

// facts are what is known of a lot, each with what it rests on.
func facts(g cell.Grid, sh screen.Shared, l house.Lot) {
	th := sh.Theme
	w, h := g.Size()
	g.Text(0, 0, words.KnownOfIt, th.Style(theme.Quiet))
	y := 1
	bars := w >= 60
	fact := func(label, value string, r *chart.Ranged, remark string) {
		if y >= h {
			return
		}
		g.Text(0, y, label, th.Style(theme.Text))
		value = g.Cut(value, w-13)
		g.Text(12, y, value, th.Style(theme.Strong))
		x := 13 + g.Width(value)
		if bars && r != nil {
			r.Draw(g, th, 29, y, 10)
			x = 43
		} else if bars {
			x = max(x, 26)
		}
		g.TextIn(cell.Rect{X: x, Y: y, W: w - x - 1, H: 1}, remark, th.Style(theme.Quiet))
		y++
	}
	share := func(label string, s lot.Share, to float64, remark string) {
		r := &chart.Ranged{To: to, Low: "0", High: words.WholePerCent(to), Good: true, GoodFrom: s.P10, Until: s.P90, At: s.P50}
		fact(label, words.ShareBand(s.P10, s.P90), r, remark)
	}
	if kg, short := l.Short(); short {
		g.TextIn(cell.Rect{Y: y, W: w - 1, H: 1}, words.ShortBy(sh.Units, l.Weight(kg)), th.Style(theme.Strong))
		y++
	}
	warn := func(text string) {
		if y < h {
			y += g.Wrap(cell.Rect{Y: y, W: w - 1, H: min(2, h-y)}, text, th.Style(theme.Strong))
		}
	}
	if holds, takes, so := lot.CannotPay(l); so {
		warn(words.CannotPay(holds, takes))
	}
	if lot.DampToCharge(l) {
		warn(words.DampToCharge)
	}
	if l.Of() == entry.LotOre {
		iron, had := lot.IronShare(l), lot.ToBeHad(l)
		share(words.IronInIt, iron, 0.75, words.IronRests(iron))
		share(words.CanGiveUp, had, 0.75, words.OfWeight+", "+words.BasisIs(had.Basis))
		s := lot.SlagOfBloom
		fact(words.SlagToExpect, words.KgBetween(s.P10, s.P90), &chart.Ranged{To: 10, Low: "0", High: "10", Good: true, GoodFrom: s.P10, Until: s.P90, At: s.P50}, words.KgOfBloom+", "+words.BasisIs(entry.BasisGuessed))
	}
	if wood, ok := lot.DryWood(l); ok && l.Of() == entry.LotWood {
		gives := wood.Times(plans.CharcoalOfWood)
		fact(words.WoodGives, words.KgBetween(gives.P10, gives.P90), nil, words.WoodRests)
	}
	if l.Of() == entry.LotCharcoal {
		for _, one := range holding(sh) {
			if one.material == entry.LotCharcoal && one.known && one.spare() < 0 {
				burn := plans.WoodFor(-one.spare())
				species := woodHere(sh)
				stack := lot.Stacked(burn, species)
				fact(words.WoodForRest, words.KgBetween(burn.P10, burn.P90), nil, words.WoodStacked(stack.P10, stack.P90, species))
			}
		}
	}
	if l.Moisture.Known {
		fact(words.WaterOfIt, words.PerCentShort(lot.OfWeight(l.Moisture.Value)), nil, words.OnDryMass(float64(l.Moisture.Value)))
	} else if l.Of() == entry.LotOre || l.Of() == entry.LotCharcoal || l.Of() == entry.LotWood {
		fact(words.WaterOfIt, words.NotKnown, nil, words.TakenAsUsual)
	}
	if share := plans.FinesIn(sh.House(), l); share > 0 {
		fact(words.FinesWord, words.PerCentShort(share), nil, words.FinesInIt)
	}
	if len(l.Sizes) > 1 {
		fact(words.SizesWord, words.SizesAre(l.Sizes), nil, "")
	}
	if l.Lump.Known {
		fact(words.LumpOf, words.Millimetres(l.Lump), nil, "")
	}
	if len(l.Signs) > 0 {
		fact(words.ShowsWord, words.SignsSeen(l.Signs), nil, "")
	}
	if l.Origin != "" && y < h {
		fact(words.LotOrigin, l.Origin, nil, "")
	}
	if to, ok := lastsTo(sh, l); ok {
		fact(words.LastToWord, to, nil, words.AtThisBurn)
	}
	if h > 13 {
		y++
	}
	if r, ok := lot.RoastOf(sh.House(), sh.Home.Lines(), l.ID); ok && y < h {
		g.Text(0, y, words.RoastThrough, th.Style(theme.Quiet))
		y++
		y += g.Wrap(cell.Rect{Y: y, W: w - 1, H: min(2, h-y)}, words.RoastedThrough(r), th.Style(theme.Strong))
	}
	if help := lot.Helps(l); help != lot.NoHelp && !spent(l) && y < h {
		g.Wrap(cell.Rect{Y: y, W: w - 1, H: min(3, h-y)}, words.WouldHelp+": "+words.WhatHelps(help), th.Style(theme.Text))
	}
}

// woodHere is of which species the wood is that lies here, most of it; "" for none said.
func woodHere(sh screen.Shared) string {
	l, _ := plans.MostOf(sh.House(), entry.LotWood)
	return l.Species
}

// lastsTo is until when a lot lasts at the pace of the smelt at work, which draws on it.
func lastsTo(sh screen.Shared, l house.Lot) (string, bool) {
	s := sh.Running
	if !s.Is() || !l.Left.Known() || l.Left.Kg <= 0 {
		return "", false
	}
	r := s.Reading()
	if r.Usual <= 0 {
		return "", false
	}
	each := 0.0
	for _, p := range r.Next {
		if (p.Lot == string(l.ID) || p.Lot == l.Name) && p.Mass.Known() {
			each += p.Mass.P50
		}
	}
	if each <= 0 {
		return "", false
	}
	charges := l.Weight(l.Left.Kg) / each
	return words.AtClock(sh.Now.Wall, charges*r.Usual.Minutes()), true
}
