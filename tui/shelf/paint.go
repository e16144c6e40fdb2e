package shelf

import (
	"math"
	"slices"

	"chargehand/model/entry"
	"chargehand/model/shelf"
	modelwords "chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/chart"
	"chargehand/tui/draw"
	"chargehand/tui/scene"
	"chargehand/tui/screen"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// detailRows is how many rows are kept for the chosen smelt, with the line over
// them.
func detailRows(size scene.Size) int {
	switch size {
	case scene.Small:
		return 3
	case scene.Middle, scene.Large:
		return 6
	}
	return 0
}

// rowsAt is how many smelts a window shows.
func (s Screen) rowsAt(sh *screen.Shared) int {
	size := scene.SizeOf(sh.W, sh.H)
	return max(1, sh.H-draw.TopRows-draw.FootRows-1-recordOf(sh.Shelf.Lines).rows(size)-detailRows(size)-s.findRows())
}

// findRows is how many rows what is looked for takes.
func (s Screen) findRows() int {
	if s.find.asks() {
		return 1
	}
	return 0
}

// Paint shows what the smelts gave, then the smelts as a table, then what is known
// of the chosen one.
func (s Screen) Paint(g cell.Grid, sh *screen.Shared) {
	th := sh.Theme
	ls := s.lines(sh)
	holds := s.holds(ls)
	if o := s.order.said(); o != "" {
		holds += ", " + o
	}
	screen.Top(g, sh, words.DoShelf, holds)
	body := screen.Body(g)
	switch {
	case len(ls) == 0 && sh.Spinner != "":
		g.Sub(cell.Rect{X: 2, Y: body.Y + 1, W: 2, H: 1}).Lay(sh.Spinner, th.Style(theme.Now))
		g.Text(4, body.Y+1, words.ShelfBeingRead, th.Style(theme.Text))
		return
	case len(ls) == 0 && s.find.asks():
		s.paintFind(g.Sub(cell.Rect{Y: body.Y, W: body.W, H: 1}), sh, 0)
		g.Text(2, body.Y+2, words.FoundNone, th.Style(theme.Text))
		return
	case len(ls) == 0:
		g.Wrap(cell.Rect{X: 2, Y: body.Y + 1, W: body.W - 4, H: 2}, words.ShelfBare, th.Style(theme.Text))
		return
	}
	w, h := g.Size()
	size := scene.SizeOf(w, h)
	at := min(s.at, len(ls)-1)
	var top, detail cell.Rect
	r := recordOf(sh.Shelf.Lines)
	top, body = body.CutTop(r.rows(size))
	if !top.Empty() {
		r.answer(g.Sub(top), sh, size)
	}
	if s.find.asks() {
		var line cell.Rect
		line, body = body.CutTop(1)
		s.paintFind(g.Sub(line), sh, count(ls))
	}
	rows, ms := detailRows(size), measuredOf(ls[at], sh.Shelf.Lines)
	if size > scene.Small { // what was measured, where the smelts leave room
		rows += min(measuredRows(ms), max(body.H-rows-len(ls)-1, 0))
	}
	var table cell.Rect
	if room := len(ls) + 2; body.H-rows > room { // few smelts: what is known of the chosen one stands right under them
		table, body = body.CutTop(room)
		detail, _ = body.CutTop(rows)
	} else {
		detail, table = body.CutBottom(rows)
	}
	s.table(g.Sub(table), sh, ls, at)
	if !detail.Empty() {
		s.detail(g.Sub(detail), sh, ls[at], ms)
	}
}

// table paints the smelts. Their days stand at the right, lined up at the first
// ore.
func (s Screen) table(g cell.Grid, sh *screen.Shared, ls []shelf.Summary, at int) {
	w, h := g.Size()
	rows := h - 1
	first := screen.FirstShown(at, len(ls), rows)
	shown := ls[first:min(first+rows, len(ls))]
	cols, day := columns(w)
	narrow := w < narrowFrom
	t := screen.Table{Columns: cols, Heads: true, Picked: at - first}
	for _, l := range shown {
		cells := []string{dayOf(l), s.marks(sh, l) + l.Furnace, triedOf(l), bloomOf(sh, l), yieldOf(l), kgOrNothing(sh.Units, l.OreDry),
			kgOrNothing(sh.Units, l.Charcoal), words.Lasted(l.Lasted)}
		if narrow { // what came of it before what was tried
			cells = slices.Delete(cells, 2, 3)
		}
		if l.ID == "" {
			cells = append([]string{"", s.turns()}, make([]string, len(cells)-2)...)
		}
		t.Rows = append(t.Rows, screen.Row{Cells: cells})
	}
	if day == 0 {
		t.Paint(g, sh.Theme)
		return
	}
	t.Paint(g.Sub(cell.Rect{W: day, H: h}), sh.Theme)
	most, lead := 0.0, 0
	for _, l := range shown {
		for _, d := range l.Day {
			most = math.Max(most, float64(d.Ore))
		}
		lead = max(lead, l.FirstOre())
	}
	lead = min(lead, 4)
	g.TextIn(cell.Rect{X: day, W: w - day, H: 1}, words.ShelfHalves, sh.Theme.Style(theme.Quiet))
	for i, l := range shown {
		chart.Spark(g, sh.Theme, day, i+1, partsOf(l, lead, w-day-1, most))
	}
}

// wideDay is from how many columns on a half hour takes two of them.
const wideDay = 64

// partsOf is a day in half hours, its first ore so many of them from the left.
func partsOf(l shelf.Summary, lead, room int, most float64) []chart.Part {
	if room >= wideDay {
		var wide []chart.Part
		for _, p := range partsOf(l, lead, wideDay/2, most) {
			wide = append(wide, p, p)
		}
		return wide
	}
	from := max(l.FirstOre()-lead, 0)
	parts := make([]chart.Part, 0, room)
	for range max(lead-max(l.FirstOre(), 0), 0) {
		parts = append(parts, chart.Part{None: true})
	}
	for _, d := range l.Day[min(from, len(l.Day)):] {
		if len(parts) == room {
			break
		}
		parts = append(parts, chart.Part{Ore: float64(d.Ore) / math.Max(most, 1e-9), Slow: d.Slow})
	}
	return parts
}

// detail says what is known of the chosen smelt.
func (s Screen) detail(g cell.Grid, sh *screen.Shared, l shelf.Summary, ms []measured) {
	th := sh.Theme
	w, h := g.Size()
	g.Fill(cell.Rect{W: w, H: 1}, th.Marks().HLine, th.Style(theme.Frame))
	if l.ID == "" {
		turns := words.ShelfTurnsAside
		if s.aside {
			turns = words.ShelfTurnsBack
		}
		g.TextIn(cell.Rect{X: 2, Y: 1, W: w - 3, H: 1}, turns, th.Style(theme.Strong))
		g.TextIn(cell.Rect{X: 2, Y: 2, W: w - 3, H: 1}, words.CountsNot, th.Style(theme.Quiet))
		return
	}
	x := 2 + g.Text(2, 1, l.ID, th.Style(theme.Strong))
	says := modelwords.Phase(l.Phase) + ", " + words.Charges(l.Charges)
	if l.Mix != "" {
		says += ", " + l.Mix
	}
	if l.Bloom.Positive() && l.Charcoal.Known {
		says += "; " + words.PerBloom(modelwords.Number(float64(l.Charcoal.Value/l.Bloom.Value), 1))
	}
	if l.Phase.Over() && !l.Bloom.Known && !l.NoBloom && !l.BloomNever {
		says += "; " + words.BloomNotYet
	}
	if w-x < g.Width(says)+3 {
		g.TextIn(cell.Rect{X: 2, Y: 2, W: w - 3, H: 1}, says, th.Style(theme.Text))
	} else {
		g.Text(x+2, 1, says, th.Style(theme.Text))
	}
	if h > 3 {
		y := 2
		if w-x < g.Width(says)+3 {
			y = 3
		}
		for _, line := range s.knownOf(sh, l) {
			if y < h-1 {
				n := g.Text(2, y, line[0]+"  ", th.Style(theme.Quiet))
				g.TextIn(cell.Rect{X: 2 + n, Y: y, W: w - n - 3, H: 1}, line[1], th.Style(theme.Text))
				y++
			}
		}
		if y = max(y, detailRows(scene.SizeOf(sh.W, sh.H))-2); h-1 > y+2 {
			paintMeasured(g.Sub(cell.Rect{Y: y, W: w, H: h - 2 - y}), sh, ms)
		}
		key := words.ShelfKey
		if th.Profile == theme.None || th.ASCII {
			key = words.ShelfKeyBold
		}
		g.TextIn(cell.Rect{X: 2, Y: h - 1, W: w - 3, H: 1}, key, th.Style(theme.Quiet))
		g.TextRight(w-1, h-1, words.CountsNot, th.Style(theme.Quiet))
	}
}

// marks stands before a smelt that is marked to be compared.
func (s Screen) marks(sh *screen.Shared, l shelf.Summary) string {
	if l.ID == "" || !slices.Contains(s.marked, l.ID) {
		return ""
	}
	return sh.Theme.Marks().Ticked + " "
}

// triedOf is what was tried, or what is special about a smelt.
func triedOf(l shelf.Summary) string {
	if mark := markOf(l); mark != "" || l.Tried == "" {
		return mark
	}
	return l.Tried
}

// knownOf is what was tried, promised and learnt of a smelt, so far as it is known.
func (s Screen) knownOf(sh *screen.Shared, l shelf.Summary) (lines [][2]string) {
	if l.Tried != "" {
		lines = append(lines, [2]string{words.ShelfTried, l.Tried})
	}
	if l.Wanted.Known {
		lines = append(lines, [2]string{words.ShelfPromised, words.PromisedCame(sh.Units.Kg(l.Wanted.Value), bloomOf(sh, l))})
	}
	if sh.House != nil && l.UID != "" {
		for _, lesson := range slices.Backward(sh.House().Lessons) {
			if lesson.Smelt == l.UID {
				return append(lines, [2]string{words.ShelfNextTime, lesson.Text})
			}
		}
	}
	return lines
}

// narrowFrom is from how many columns on what was tried stands in the list.
const narrowFrom = 50

// columns are those that fit, the ones that matter most first to stay, and where
// the day stands after them; 0 where it has no room.
func columns(w int) (cs []screen.Column, day int) {
	const between, least = 2, 16
	cs = []screen.Column{
		{Head: words.ShelfDay, Width: 9, Right: true}, {Head: words.ShelfFurnace, Width: 16}, {Head: words.ShelfMarks, Width: 12, Role: theme.Quiet},
		{Head: words.ShelfBloom, Width: 11, Right: true, Role: theme.Strong}, {Head: words.ShelfYield, Width: 15}, {Head: words.ShelfOre, Width: 8, Right: true},
		{Head: words.ShelfCharcoal, Width: 8, Right: true}, {Head: words.ShelfHours, Width: 7, Right: true},
	}
	switch {
	case w >= 170:
		cs[1].Width, cs[2].Width = 30, 14
	case w < narrowFrom:
		cs[1].Width = 12
		cs = slices.Delete(cs, 2, 3)
	}
	cs = screen.Fit(cs, w)
	if len(cs) < 8 {
		return cs, 0
	}
	day = between
	for _, c := range cs {
		day += c.Width + between
	}
	if w-day < least {
		return cs, 0
	}
	return cs, day
}

// dayOf is the day on which a smelt was lit.
func dayOf(l shelf.Summary) string {
	switch {
	case l.Undated:
		return words.DayUnknown
	case l.Lit.IsZero():
		return ""
	}
	return l.Lit.Format("2 Jan 06")
}

// bloomOf is what came of it.
func bloomOf(sh *screen.Shared, l shelf.Summary) string {
	switch {
	case l.Bloom.Known:
		return sh.Units.Kg(l.Bloom.Value)
	case l.NoBloom:
		return words.BloomNone
	case l.ID == sh.Running.ID(), l.ID == sh.Other.ID():
		return words.BloomBurns
	case l.BloomNever:
		return words.BloomNever
	case l.Phase.Over():
		return words.BloomUnweighed
	}
	return ""
}

// yieldOf is its yield with the base that it has.
func yieldOf(l shelf.Summary) string {
	y, dry, ok := l.Yield()
	if !ok {
		return ""
	}
	return words.YieldWords(y, dry)
}

func kgOrNothing(u modelwords.Units, m entry.Maybe[entry.Kilogram]) string {
	if !m.Known {
		return ""
	}
	return u.Kg(m.Value)
}

// markOf says what is special about a smelt.
func markOf(l shelf.Summary) string {
	switch {
	case l.Invented:
		return words.MarkInvented
	case l.Imported:
		return words.MarkImported
	case l.Practice:
		return words.TagPractice
	case l.Unfinished():
		return words.MarkUnfinished
	}
	return ""
}
