package stores

import (
	"math"

	"chargehand/model/entry"
	"chargehand/model/house"
	"chargehand/model/lot"
	"chargehand/tui/cell"
	"chargehand/tui/draw"
	"chargehand/tui/letter"
	"chargehand/tui/scene"
	"chargehand/tui/screen"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// rows of the parts, by size: the answer with its rule, the detail with its rule, the last
// deeds.
type shape struct{ answer, detail, deeds int }

func shapeOf(size scene.Size) shape {
	switch size {
	case scene.Large:
		return shape{8, 18, 3}
	case scene.Middle:
		return shape{8, 13, 3}
	case scene.Small:
		return shape{2, 9, 1}
	}
	return shape{0, 0, 0}
}

// rowsAt is how many lots a window shows.
func rowsAt(sh *screen.Shared) int {
	s := shapeOf(scene.SizeOf(sh.W, sh.H))
	return max(1, sh.H-draw.TopRows-draw.FootRows-s.answer-s.detail-s.deeds-1)
}

// Paint shows what there is against what is needed, the lots, and what is known of the
// picked one.
func (s Screen) Paint(g cell.Grid, sh *screen.Shared) {
	th := sh.Theme
	about := words.StoresNoPlan
	if p, ok := sh.House().Waiting(); ok {
		about = words.ForThePlan(p.Name, p.Day)
	} else if len(sh.House().Plans) > 0 {
		about = words.StoresPlanLit
	}
	screen.TopBeside(g, sh, words.StoresTitle, about)
	body := screen.Body(g)
	ls := lots(sh)
	if len(ls) == 0 {
		g.Wrap(cell.Rect{X: 2, Y: body.Y + 1, W: body.W - 4, H: 4}, words.StoresBare, th.Style(theme.Text))
		return
	}
	w, h := g.Size()
	sp := shapeOf(scene.SizeOf(w, h))
	var top, detail, deeds cell.Rect
	top, body = body.CutTop(sp.answer)
	if sp.deeds > 1 { // what was done before, where the lots leave room
		sp.deeds += max(body.H-sp.deeds-sp.detail-len(ls)-1, 0)
	}
	deeds, body = body.CutBottom(sp.deeds)
	detail, body = body.CutBottom(sp.detail)
	if !top.Empty() {
		answer(g.Sub(top), sh)
	}
	at := s.at(ls)
	table(g.Sub(body), sh, ls, at)
	if !detail.Empty() {
		known(g.Sub(detail), sh, ls[at])
	}
	if !deeds.Empty() {
		last(g.Sub(deeds), sh)
	}
}

// answer says in large letters of what there is too little, and of what enough.
func answer(g cell.Grid, sh *screen.Shared) {
	th := sh.Theme
	w, h := g.Size()
	all := holding(sh)
	if h == 2 {
		x := 2
		for _, one := range all {
			tag, says := told(sh, one)
			if tag {
				x += g.Text(x, 0, " "+words.TooLittleTag+" ", th.Style(theme.Look)) + 1
				says = words.ByDry(sh.Units, -one.spare())
			}
			x += g.Text(x, 0, words.MaterialWord(one.material)+": ", th.Style(theme.Text))
			x += g.Text(x, 0, says, th.Style(theme.Strong)) + 3
		}
	} else {
		for i, one := range all {
			x := 2 + i*w/2
			tag, says := told(sh, one)
			if one.known && one.need == 0 && one.short <= 0.05 { // the large letters say what there is
				says = words.AsItLies(sh.Units, one.lies)
			}
			title := words.Large(words.MaterialWord(one.material))
			switch {
			case tag:
				g.Text(x, 0, " "+words.TooLittleTag+" ", th.Style(theme.Look))
			case one.need > 0:
				g.Text(x, 0, words.EnoughWord, th.Style(theme.Quiet))
			default:
				g.Text(x, 0, words.ThereIs(one.material), th.Style(theme.Quiet))
				if one.known {
					title = words.LargeKg(sh.Units, one.left)
				}
			}
			letter.Small.Text(g, x, 1, title, th.Style(theme.Strong), th.ASCII)
			g.TextIn(cell.Rect{X: x, Y: 6, W: w/2 - 3, H: 1}, says, th.Style(theme.Strong))
		}
	}
	g.Fill(cell.Rect{Y: h - 1, W: w, H: 1}, th.Marks().HLine, th.Style(theme.Frame))
}

// told says how it stands with one material, and whether it is too little.
func told(sh *screen.Shared, one held) (tooLittle bool, says string) {
	switch {
	case !one.known && one.need > 0:
		return false, words.NeededNotWeighed(sh.Units, one.need)
	case !one.known:
		return false, words.NotWeighedYet
	case one.short > 0.05:
		return false, words.ShortBy(sh.Units, one.short)
	case one.need == 0:
		return false, words.LeftDry(sh.Units, one.left)
	case one.spare() < 0:
		return true, words.TooLittleBy(sh.Units, -one.spare())
	}
	return false, words.MoreThanNeeded(sh.Units, one.spare(), one.unready > 0)
}

// table paints the lots, and where there is room a bar of each dry, at one scale.
func table(g cell.Grid, sh *screen.Shared, ls []house.Lot, at int) {
	th := sh.Theme
	w, h := g.Size()
	rows := h - 1
	first := screen.FirstShown(at, len(ls), rows)
	shown := ls[first:min(first+rows, len(ls))]
	cols := []screen.Column{
		{Head: words.HeadMaterial, Width: 9}, {Head: words.HeadLot, Width: 20, Role: theme.Strong},
		{Head: words.HeadLeft, Width: 13, Right: true, Role: theme.Strong}, {Head: words.HeadDry, Width: 9, Right: true}, {Head: words.HeadKnown, Width: 14},
	}
	bars := 0
	switch {
	case w >= 170:
		cols[1].Width, cols[4].Width, bars = 36, 40, 121
	case w >= 110:
		cols[1].Width, cols[4].Width, bars = 22, 27, 94
	case w < 50: // what is left is what one looks for
		cols[0].Width, cols[1].Width, cols[2].Width = 8, 13, 11
	}
	cols = screen.Fit(cols, w+1)
	t := screen.Table{Columns: cols, Heads: true, Picked: at - first}
	for _, l := range shown {
		role := theme.Text
		if spent(l) {
			role = theme.Quiet
		}
		t.Rows = append(t.Rows, screen.Row{Role: role, Cells: []string{material(l.Lot), l.Name, weighs(sh, l), dry(sh, l), brief(sh, l, bars > 0)}})
	}
	if bars == 0 {
		t.Paint(g, th)
		return
	}
	t.Paint(g.Sub(cell.Rect{W: bars, H: h}), th)
	g.Text(bars+1, 0, words.HeadDryAgainst, th.Style(theme.Quiet))
	needs := map[entry.Material]float64{}
	most := 1.0
	for _, one := range holding(sh) {
		needs[one.material] = one.need
		most = math.Max(most, one.need)
	}
	for _, l := range ls {
		most = math.Max(most, l.Left.Kg)
	}
	long := w - bars - 13
	for i, l := range shown { // a column apart, else one begins where the light of the row picked ends
		bar(g, sh, bars+1, i+1, long, most, l, needs[l.Of()])
	}
}

// bar is what there is of a lot dry, and a stroke where the plan's need lies.
func bar(g cell.Grid, sh *screen.Shared, x, y, long int, most float64, l house.Lot, need float64) {
	th := sh.Theme
	role := theme.Bar
	if l.Of() == entry.LotOre {
		role = theme.OreBar
	}
	place := func(kg float64) int { return min(int(math.Round(kg/most*float64(long))), long) }
	block := '▆'
	if th.ASCII {
		block = '='
	}
	if l.Left.Known() {
		g.Fill(cell.Rect{X: x, Y: y, W: place(math.Max(l.Left.Kg, 0)), H: 1}, block, th.Style(role))
	}
	if need > 0 {
		g.Set(x+place(need), y, th.Marks().BarTick, th.Style(theme.Strong))
	}
	if l.Left.Known() && !spent(l) {
		g.Text(x+long+2, y, sh.Units.Kg(entry.Kilogram(round1(l.Left.Kg))), th.Style(theme.Quiet))
	}
}

// weighs is what is left of a lot as it lies, with its spread.
func weighs(sh *screen.Shared, l house.Lot) string {
	switch {
	case !l.Left.Known() && l.Volume > 0:
		return words.StackedIs(l.Volume)
	case spent(l):
		return words.UsedUp
	}
	return words.LeftOf(sh.Units, l.Left, l.Weight(l.Left.Kg), l.Weight(l.Left.SD))
}

// dry is the same without its water.
func dry(sh *screen.Shared, l house.Lot) string {
	switch {
	case !l.Left.Known():
		return words.NotKnown
	case spent(l):
		return ""
	}
	return words.KgRound(sh.Units, l.Left.Kg)
}

// brief is what is known of a lot in a few words.
func brief(sh *screen.Shared, l house.Lot, roomy bool) string {
	if kg, short := l.Short(); short {
		return words.BelowNothing(sh.Units, l.Weight(kg))
	}
	said := ""
	if _, _, cannot := lot.CannotPay(l); cannot {
		return words.CannotPayBrief
	}
	if lot.DampToCharge(l) {
		return words.DampBrief
	}
	if l.Of() == entry.LotOre {
		said = words.IronBrief(lot.IronShare(l))
	}
	if l.Moisture.Known && (roomy || said == "") {
		said = words.Joined(said, words.WaterBrief(lot.OfWeight(l.Moisture.Value)))
	}
	return said
}

// last shows the last deeds, the newest first.
func last(g cell.Grid, sh *screen.Shared) {
	th := sh.Theme
	w, h := g.Size()
	y := 0
	if h > 1 {
		g.Fill(cell.Rect{W: w, H: 1}, th.Marks().HLine, th.Style(theme.Frame))
		y = 1
	}
	lines := sh.Home.Lines()
	names := house.NamesOf(lines)
	for i := len(lines) - 1; i >= 0 && y < h; i-- {
		if _, also := lines[i].Event.(entry.LotStored); !ofStores(lines[i]) || also && lines[i].Entry.Group != "" { // beside its deed
			continue
		}
		style := th.Style(theme.Text)
		x := 2 + g.Text(2, y, lines[i].Happened.Format("2 Jan"), th.Style(theme.Quiet)) + 1
		if lines[i].Struck() {
			style = th.Style(theme.Struck)
			x += g.Text(x, y, th.Marks().Struck+" ", style)
		}
		g.TextIn(cell.Rect{X: max(x, 10), Y: y, W: w - max(x, 10) - 1, H: 1}, sh.Units.Event(names.In(lines[i].Event)), style)
		y++
	}
}
