package start

import (
	"cmp"
	"sync"

	"chargehand/model/figure"
	"chargehand/model/fold"
	"chargehand/model/invented"
	"chargehand/model/picture"
	"chargehand/model/session"
	"chargehand/model/shelf"
	"chargehand/tui/cell"
	"chargehand/tui/chart"
	"chargehand/tui/draw"
	"chargehand/tui/letter"
	"chargehand/tui/scene"
	"chargehand/tui/screen"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// Paint shows the furnace of the smelt at work or of the invented one at the left,
// and beside it the lines, one below the other; in a small window the lines alone.
func (s Screen) Paint(g cell.Grid, sh *screen.Shared) {
	screen.Top(g, sh, words.ProgramName, words.ProgramIs)
	body := screen.Body(g)
	ls := s.lines(sh)
	w, h := g.Size()
	size := scene.SizeOf(w, h)
	if size == scene.Cramped {
		s.plain(g, sh, body, ls)
		return
	}
	left := map[scene.Size]int{scene.Small: 26, scene.Middle: 38, scene.Large: 66}[size]
	picture, panel := body.CutLeft(left)
	s.furnace(g.Sub(picture), sh)
	g.Fill(cell.Rect{X: left, Y: body.Y, W: 1, H: body.H}, sh.Theme.Marks().VLine, sh.Theme.Style(theme.Frame))
	_, panel = panel.CutLeft(2)
	s.ways(g.Sub(panel), sh, ls)
}

// furnace paints the shaft, and says whose it is.
func (s Screen) furnace(g cell.Grid, sh *screen.Shared) {
	th := sh.Theme
	w, h := g.Size()
	var pic picture.Picture
	tag, says := "", ""
	switch {
	case sh.Running.Is():
		r := sh.Running.Reading()
		pic, says = picture.From(r), words.StartShaft(screen.NameOf(sh, sh.Running), r.Wall(r.At))
		if r.Light.Practice {
			tag = words.TagPractice
		}
	case sh.Smelt.Is() && !sh.Smelt.ToLook(): // the one last looked at
		r := sh.Smelt.AsOf(fold.All, sh.Smelt.MostToSee()).Reading()
		pic, tag, says = picture.From(r), words.ThePast, words.StartShaft(cmp.Or(r.Light.Furnace.Name, sh.Smelt.ID()), r.Wall(r.At))
	case sh.Shelf.Known: // not before: the first frame waits for nothing
		r := inventedMoment()
		pic, tag, says = picture.From(r), words.TagInvented, words.StartInvented(r.Light.Furnace.Name, r.Wall(r.At))
	default:
		return
	}
	foot := 4
	if h < 24 {
		foot = 3
	}
	sh.Pen().Shaft(g.Sub(cell.Rect{W: w, H: h - foot}), pic, draw.ShaftView{Bare: true, Past: !sh.Running.Is()})
	if w < 30 && tag == words.TagInvented {
		says = words.StartInventedShort(inventedMoment().Light.Furnace.Name)
	}
	x, y := 5, h-foot+1
	if tag != "" {
		x += g.Text(x, y-1, " "+tag+" ", th.Style(theme.Tag)) + 1
	}
	g.Wrap(cell.Rect{X: 5, Y: y, W: w - 6, H: foot - 1}, says, th.Style(theme.Quiet))
}

// inventedMoment is the invented smelt at the moment with most to see, as far as
// that is known without solving it.
var inventedMoment = sync.OnceValue(func() *figure.Reading {
	es, err := invented.Smelt()
	if err != nil {
		return &figure.Reading{}
	}
	return session.Open(invented.ID, es, session.ToLookAt).Reading()
})

// ways paints what can be done, the smelt that was not finished first and largest.
func (s Screen) ways(g cell.Grid, sh *screen.Shared, ls []startLine) {
	th := sh.Theme
	w, h := g.Size()
	title, caption := words.WhatNow, words.NothingBurns
	role, scale := theme.Strong, letter.Small
	if w >= 110 && h >= 46 {
		scale = letter.Middle
	}
	if on := unfinished(sh); on.id != "" {
		title, caption, role = words.GoOnLarge, words.MayBurn, theme.Now
		if on.practice {
			caption = words.PractisesStill
		}
	}
	y := 0
	g.TextIn(cell.Rect{Y: y, W: w, H: 1}, caption, th.Style(theme.Quiet))
	if len(sh.Messages) > 0 && h < 28 { // what was put right takes the place of the large words
		y += s.putRight(g.Sub(cell.Rect{Y: y + 1, W: w, H: 5}), sh) + 1
	} else {
		_, rows := scale.Size(title)
		scale.Text(g, 0, y+1, title, th.Style(role), th.ASCII)
		y += rows + 2
	}
	g.Fill(cell.Rect{X: 0, Y: y, W: w - 1, H: 1}, th.Marks().HLine, th.Style(theme.Frame))
	y += 2
	smelt, over := lastSmelt(sh)
	last := 0 // rows for it
	switch {
	case over && h >= 46:
		last = min(len(ended(sh)), mostEnded) + 3
	case over && h >= 24:
		last = 4
	case over:
		last = 3
	}
	room := h - y - last
	most := 4
	if h >= 46 {
		most = 7
	}
	pitch := min(max(room/max(len(ls), 1), 2), most)
	if pitch == 2 {
		y--
	}
	for i, l := range ls {
		mark := " "
		if i == min(s.at, len(ls)-1) {
			mark = th.Marks().Picked
		}
		g.Text(0, y, mark, th.Style(theme.Now))
		g.Text(2, y, l.key.Help().Key, th.Style(theme.Now))
		g.Text(5, y, l.key.Help().Desc, th.Style(theme.Strong))
		x := 20
		if w < 70 { // what it takes beside its name, what it is below
			g.TextIn(cell.Rect{X: x, Y: y, W: w - x - 1, H: 1}, l.more, th.Style(theme.Quiet))
			g.Wrap(cell.Rect{X: 5, Y: y + 1, W: w - 6, H: pitch - 1}, l.is, th.Style(theme.Text))
		} else {
			g.TextIn(cell.Rect{X: x, Y: y, W: w - x - 1, H: 1}, l.is, th.Style(theme.Text))
			g.TextIn(cell.Rect{X: x, Y: y + 1, W: w - x - 1, H: 1}, l.more, th.Style(theme.Quiet))
		}
		y += pitch
	}
	if len(sh.Messages) > 0 && h >= 28 && y < h-last-1 {
		g.Fill(cell.Rect{Y: y, W: w - 1, H: 1}, th.Marks().HLine, th.Style(theme.Frame))
		s.putRight(g.Sub(cell.Rect{Y: y + 1, W: w, H: h - last - y - 1}), sh)
	}
	switch {
	case last == 0 || y+1 >= h:
	case h >= 46:
		s.ended(g.Sub(cell.Rect{Y: h - last, W: w, H: last}), sh)
	default:
		s.last(g.Sub(cell.Rect{Y: h - last, W: w, H: last}), sh, smelt)
	}
}

// putRight says whole what was put right when the book was opened, the newest first,
// and gives the rows that it took. What has no room is counted.
func (Screen) putRight(g cell.Grid, sh *screen.Shared) int {
	th := sh.Theme
	w, h := g.Size()
	y := g.Wrap(cell.Rect{W: w - 1, H: 1}, words.WasPutRight, th.Style(theme.Warn))
	for i := len(sh.Messages) - 1; i >= 0; i-- {
		need := g.Rows(sh.Messages[i], w-3)
		if room := h - y; need > room || i > 0 && need == room {
			g.TextIn(cell.Rect{X: 2, Y: min(y, h-1), W: w - 3, H: 1}, words.MoreInBook(i+1), th.Style(theme.Quiet))
			return min(y+1, h)
		}
		y += g.Wrap(cell.Rect{X: 2, Y: y, W: w - 3, H: need}, sh.Messages[i], th.Style(theme.Text))
	}
	return y
}

// mostEnded is how many smelts that are over are shown where there is room.
const mostEnded = 12

// ended are the smelts that are over and count, the newest first.
func ended(sh *screen.Shared) (all []shelf.Summary) {
	for _, l := range sh.Shelf.Lines {
		if !l.Practice && !l.Invented && l.Phase.Over() {
			all = append(all, l)
		}
	}
	return all
}

// ended says what came of the last smelts, a line each with its day.
func (Screen) ended(g cell.Grid, sh *screen.Shared) {
	th := sh.Theme
	w, h := g.Size()
	g.Fill(cell.Rect{W: w - 1, H: 1}, th.Marks().HLine, th.Style(theme.Frame))
	g.Text(2, 1, words.LastSmelts, th.Style(theme.Quiet))
	all := ended(sh)
	for i, l := range all[:min(len(all), h-3, mostEnded)] {
		style := th.Style(theme.Text)
		if i == 0 {
			style = th.Style(theme.Strong)
		}
		x := 2 + g.Text(2, 2+i, result(sh, l), style) + 2
		x = max(x, 70)
		if parts := dayOf(l); len(parts) > 0 && x < w-4 {
			chart.Spark(g, th, x, 2+i, parts[:min(len(parts), w-x-1)])
		}
	}
}

// last says what came of a smelt, and where there is room shows its day.
func (Screen) last(g cell.Grid, sh *screen.Shared, l shelf.Summary) {
	th := sh.Theme
	w, h := g.Size()
	g.Fill(cell.Rect{W: w - 1, H: 1}, th.Marks().HLine, th.Style(theme.Frame))
	x := 4 + g.Width(words.LastSmelt)
	if x+g.Width(result(sh, l)) > w-1 {
		g.Wrap(cell.Rect{X: 2, Y: 1, W: w - 3, H: h - 1}, words.LastSmelt+" "+result(sh, l), th.Style(theme.Text))
		return
	}
	g.Text(2, 1, words.LastSmelt, th.Style(theme.Quiet))
	g.Text(x, 1, result(sh, l), th.Style(theme.Text))
	if h < 4 || len(l.Day) == 0 {
		return
	}
	g.Text(2, 2, words.ItsDay, th.Style(theme.Quiet))
	parts := dayOf(l)
	chart.Spark(g, th, x, 2, parts[:min(len(parts), w-x-1)])
}

// dayOf is the day of a smelt, two columns each part.
func dayOf(l shelf.Summary) []chart.Part {
	most := 0.0
	for _, d := range l.Day {
		most = max(most, float64(d.Ore))
	}
	parts := make([]chart.Part, 0, 2*len(l.Day))
	for _, d := range l.Day {
		p := chart.Part{Ore: float64(d.Ore) / max(most, 1e-9), Slow: d.Slow}
		parts = append(parts, p, p)
	}
	return parts
}

// lastSmelt is the newest smelt that is over.
func lastSmelt(sh *screen.Shared) (shelf.Summary, bool) {
	for _, l := range sh.Shelf.Lines {
		if l.Practice || l.Invented || !l.Phase.Over() {
			continue
		}
		return l, true
	}
	return shelf.Summary{}, false
}

// result is what came of a smelt, in one line.
func result(sh *screen.Shared, l shelf.Summary) string {
	said := words.NoBloomWeighed
	if l.Bloom.Known {
		said = words.BloomOf(sh.Units.Kg(l.Bloom.Value))
		if y, dry, ok := l.Yield(); ok {
			said += words.YieldOfOre(y, dry)
		} else if l.Ore.Known {
			said += words.OfOre(sh.Units.Kg(l.Ore.Value))
		}
	}
	switch {
	case l.NoBloom:
		said = words.NoBloomCame
	case !l.Bloom.Known && !l.BloomNever:
		said = words.BloomNotWeighed
	}
	if !l.Slag.Known && !l.SlagNever && !l.Imported {
		said += words.AndSlagNotWeighed
	}
	return words.SmeltOf(l.Furnace, l.ID, l.Lit) + ": " + said
}

// plain is the lines alone.
func (s Screen) plain(g cell.Grid, sh *screen.Shared, body cell.Rect, ls []startLine) {
	th := sh.Theme
	pitch := 3
	if body.H < len(ls)*3 {
		pitch = 2
	}
	y := body.Y + max((body.H-len(ls)*pitch)/3, 0)
	x := max(2, (body.W-60)/2)
	for i, l := range ls {
		style, mark := th.Style(theme.Strong), " "
		if i == min(s.at, len(ls)-1) {
			mark = th.Marks().Picked
		}
		g.Text(x, y, mark, th.Style(theme.Now))
		n := x + 2 + g.Text(x+2, y, l.key.Help().Key, th.Style(theme.Now))
		g.Text(n+2, y, l.key.Help().Desc, style)
		what, room := l.is, body.W-n-3
		switch whole := what + "; " + l.more; {
		case l.more != "" && g.Width(whole) <= room:
			what = whole
		case l.more != "" && g.Width(what) > room: // rather the shorter whole than the longer cut
			what = l.more
		}
		g.TextIn(cell.Rect{X: n + 2, Y: y + 1, W: body.W - n - 3, H: 1}, what, th.Style(theme.Quiet))
		y += pitch
	}
}
