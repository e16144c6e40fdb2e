package forge

import (
	"math"
	"strings"

	"chargehand/model/entry"
	"chargehand/model/forge"
	modelwords "chargehand/model/words"
	"chargehand/tui/act"
	"chargehand/tui/cell"
	"chargehand/tui/draw"
	"chargehand/tui/letter"
	"chargehand/tui/scene"
	"chargehand/tui/screen"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// shape is how many rows the parts take: the answer, what is known of the picked piece,
// the last that was keyed; and from which column on the way to it stands beside the list,
// 0 where it stands under it.
type shape struct{ answer, detail, deeds, side int }

func shapeOf(size scene.Size) shape {
	switch size {
	case scene.Large:
		return shape{8, 9, 6, 132}
	case scene.Middle:
		return shape{8, 4, 3, 78}
	case scene.Small:
		return shape{2, 9, 1, 0}
	}
	return shape{}
}

// rowsAt is how many pieces a window shows.
func rowsAt(sh *screen.Shared) int {
	s := shapeOf(scene.SizeOf(sh.W, sh.H))
	return max(1, sh.H-draw.TopRows-draw.FootRows-s.answer-s.detail-s.deeds-1)
}

// Paint shows the pieces as indented lines, the way to the picked one, and its tests.
func (s Screen) Paint(g cell.Grid, sh *screen.Shared) {
	th := sh.Theme
	b := bench(sh)
	smelts := map[string]bool{}
	for i := range b.Pieces {
		for _, uid := range b.Smelts(i) {
			smelts[uid] = true
		}
	}
	screen.TopBeside(g, sh, words.ForgeTitle, words.ForgeAbout(len(b.Pieces), len(smelts)))
	body := screen.Body(g)
	i := s.at(b)
	if i < 0 {
		g.Wrap(cell.Rect{X: 2, Y: body.Y + 1, W: body.W - 4, H: 4}, words.ForgeBare, th.Style(theme.Text))
		return
	}
	w, h := g.Size()
	sp := shapeOf(scene.SizeOf(w, h))
	var top, detail, deeds cell.Rect
	top, body = body.CutTop(sp.answer)
	if sp.deeds > 1 { // what was keyed before, where the pieces and the way leave room
		rows := body.H - sp.deeds - sp.detail
		beside := cell.New(w-sp.side-1, max(rows, 0), th.ASCII)
		sp.deeds += max(rows-max(len(b.Rows())+1, way(beside, sh, b, i)+1), 0)
	}
	deeds, body = body.CutBottom(sp.deeds)
	detail, body = body.CutBottom(sp.detail)
	if !top.Empty() {
		answer(g.Sub(top), sh, b, i)
	}
	list := body
	if sp.side > 0 {
		var side cell.Rect
		list, side = body.CutLeft(sp.side - 2)
		g.Fill(cell.Rect{X: list.Right(), Y: body.Y, W: 1, H: body.H}, th.Marks().VLine, th.Style(theme.Frame))
		side.X, side.W = side.X+2, side.W-3
		way(g.Sub(side), sh, b, i)
	}
	pieces(g.Sub(list), sh, b, i)
	if !detail.Empty() {
		g.Fill(cell.Rect{Y: detail.Y, W: w, H: 1}, th.Marks().HLine, th.Style(theme.Frame))
		detail.Y, detail.H = detail.Y+1, detail.H-1
		if sp.side == 0 {
			left := detail
			left.W = w/2 - 1
			right := cell.Rect{X: w / 2, Y: detail.Y, W: w - w/2 - 1, H: detail.H}
			if !s.loud(sh, b, i) {
				narrow(g.Sub(left), sh, b, i)
				tests(g.Sub(right), sh, b, i)
			} else {
				n := s.aloud(g.Sub(detail), sh, b, i)
				left.Y, left.H, right.Y, right.H = left.Y+n, left.H-n, right.Y+n, right.H-n
				narrow(g.Sub(left), sh, b, i)
				tests(g.Sub(right), sh, b, i)
			}
		} else {
			n := s.aloud(g.Sub(detail), sh, b, i)
			tests(g.Sub(cell.Rect{Y: detail.Y + n, W: w, H: detail.H - n}), sh, b, i)
		}
	}
	if !deeds.Empty() {
		last(g.Sub(deeds), sh)
	}
}

// answer says of the picked piece what it weighs and how much of the ore that is.
func answer(g cell.Grid, sh *screen.Shared, b forge.Bench, i int) {
	th := sh.Theme
	w, h := g.Size()
	p := b.Pieces[i]
	head := words.LastWorkedOn(p.Worked, called(b, i), i == b.Last())
	share, alike, known := b.OfOre(i)
	g.Fill(cell.Rect{Y: h - 1, W: w, H: 1}, th.Marks().HLine, th.Style(theme.Frame))
	weighs := words.NotWeighedYet
	if p.Mass.Known {
		weighs = sh.Units.Kg(p.Mass.Value)
	}
	if h == 2 {
		x := 2 + g.Text(2, 0, g.Cut(called(b, i), max(w-40, w/2-12))+" ", th.Style(theme.Text))
		x += g.Text(x, 0, weighs, th.Style(theme.Strong)) + 2
		if known {
			g.TextIn(cell.Rect{X: x, W: w - x - 1, H: 1}, modelwords.OfOre(share, alike), th.Style(theme.Text))
		}
		return
	}
	g.TextIn(cell.Rect{X: 2, W: w/2 - 3, H: 1}, head, th.Style(theme.Quiet))
	if p.Mass.Known {
		letter.Small.Text(g, 2, 1, words.Large(sh.Units.Kg(p.Mass.Value)), th.Style(theme.Strong), th.ASCII)
	}
	came := modelwords.PieceCame(b, i)
	if !p.Mass.Known {
		came = weighs + "; " + came
	}
	if state := modelwords.PieceState(b, i); state != "" {
		came += ", " + state
	}
	g.TextIn(cell.Rect{X: 2, Y: 6, W: w/2 - 3, H: 1}, came, th.Style(theme.Strong))
	x := w / 2
	if !known {
		g.Text(x, 0, words.NoWayKnown, th.Style(theme.Quiet))
		g.TextIn(cell.Rect{X: x, Y: 6, W: w/2 - 3, H: 1}, modelwords.MetalFound(forge.FoundIn(p)), th.Style(theme.Strong))
		return
	}
	g.TextIn(cell.Rect{X: x, W: w/2 - 2, H: 1}, words.ShareCaption(p.Form, alike), th.Style(theme.Quiet))
	letter.Small.Text(g, x, 1, words.ShareOfOre(share), th.Style(theme.Strong), th.ASCII)
	g.TextIn(cell.Rect{X: x, Y: 6, W: w/2 - 2, H: 1}, modelwords.ChainOfOre(b, b.Chain(i)), th.Style(theme.Strong))
}

// indent is how many columns a generation stands to the right.
const indent = 2

// columns say where the parts of a piece stand in its row: its name, a bar, the end of its
// mass, and how it came. A part that has no room has no columns.
type columns struct{ name, bar, kg, came int }

func columnsOf(w int) (c columns) {
	switch {
	case w >= 120:
		c = columns{name: 44, bar: 29}
	case w >= 74:
		c = columns{name: 27, bar: 7}
	case w >= 70:
		c = columns{name: 32}
	default:
		c = columns{name: max(w-14, 10)}
	}
	c.kg = c.name + c.bar + 6
	if c.bar > 0 {
		c.kg++ // a bar as long as can be does not run into it
	}
	if c.came = c.kg + 2; w < 70 {
		c.came = w
	}
	return c
}

// rowOf is what the list says of a piece, or of its compacting.
type rowOf struct {
	title, how, stands string
	mass               float64
	known              bool // the mass
}

func rowAt(b forge.Bench, r forge.Row) rowOf {
	p := b.Pieces[r.At]
	if r.Compacted != nil {
		return rowOf{words.CompactedRow, modelwords.PieceWorked(b, r.At), modelwords.PieceState(b, r.At), r.Compacted.Mass, true}
	}
	row := rowOf{modelwords.PieceListed(b, r.At), modelwords.PieceCame(b, r.At), modelwords.PieceState(b, r.At), float64(p.Mass.Value), p.Mass.Known}
	if _, worked := b.Compacted(r.At); worked { // how it stands now is said in the row of that
		row.mass, row.known = p.First()
		row.stands = ""
	}
	return row
}

// pieces paints the list: a bar and a mass for each piece, how it came and how it stands.
func pieces(g cell.Grid, sh *screen.Shared, b forge.Bench, picked int) {
	th := sh.Theme
	w, h := g.Size()
	rows := b.Rows()
	at, most := 0, 0.0
	for n, r := range rows {
		if r.At == picked && r.Compacted == nil {
			at = n
		}
		if kg, known := b.Pieces[r.At].First(); known {
			most = max(most, kg)
		}
	}
	c := columnsOf(w)
	g.Text(2, 0, words.HeadPieces, th.Style(theme.Quiet))
	g.TextRight(c.kg, 0, sh.Units.Name("kg"), th.Style(theme.Quiet))
	if c.came < w {
		g.Text(c.came, 0, words.HeadHowItCame, th.Style(theme.Quiet))
	}
	first := screen.FirstShown(at, len(rows), h-1)
	for n, r := range rows[first:min(first+h-1, len(rows))] {
		piece(g.Sub(cell.Rect{Y: n + 1, W: w, H: 1}), sh, b, r, c, most, first+n == at)
	}
}

// piece paints a row of it. most is the mass of the longest bar, kg.
func piece(g cell.Grid, sh *screen.Shared, b forge.Bench, r forge.Row, c columns, most float64, picked bool) {
	th := sh.Theme
	w, _ := g.Size()
	row, p := rowAt(b, r), b.Pieces[r.At]
	name, plain, ink := theme.Text, theme.Text, theme.Bar
	if r.Depth == 0 || picked {
		name = theme.Strong
	}
	if picked {
		ink = theme.Now
		g.Text(0, 0, th.Marks().Picked, th.Style(theme.Now))
	}
	if p.EndsAs != "" || p.Form == entry.CropEnd { // there is no more of it to be worked
		name, plain, ink = theme.Quiet, theme.Quiet, theme.Frame
	}
	x := 2 + indent*r.Depth
	g.TextIn(cell.Rect{X: x, W: max(c.name-x+1, 4), H: 1}, row.title, th.Style(name))
	if row.known {
		g.TextRight(c.kg, 0, modelwords.Number(sh.Units.Shown(row.mass, "kg"), 2), th.Style(name))
	}
	if c.bar > 0 && row.known && most > 0 {
		block := '▆'
		if th.ASCII {
			block = '='
		}
		g.Fill(cell.Rect{X: c.name + 2, W: max(int(math.Round(row.mass/most*float64(c.bar))), 1), H: 1}, block, th.Style(ink))
	}
	if c.came < w {
		stands := g.Cut(row.stands, (w-c.came)/2)
		g.TextIn(cell.Rect{X: c.came, W: w - c.came - g.Width(stands) - 2, H: 1}, row.how, th.Style(plain))
		g.TextRight(w-1, 0, stands, th.Style(theme.Quiet))
	}
}

// last shows the last that was keyed here, the newest first.
func last(g cell.Grid, sh *screen.Shared) {
	th := sh.Theme
	w, h := g.Size()
	y := 0
	if h > 1 {
		g.Fill(cell.Rect{W: w, H: 1}, th.Marks().HLine, th.Style(theme.Frame))
		y = 1
	}
	lines := sh.Home.Lines()
	for i := len(lines) - 1; i >= 0 && y < h; i-- {
		if !act.KeyedAt(lines[i], entry.OnForge) {
			continue
		}
		style := th.Style(theme.Text)
		x := 2 + g.Text(2, y, lines[i].Happened.Format("2 Jan"), th.Style(theme.Quiet)) + 1
		if lines[i].Struck() {
			style = th.Style(theme.Struck)
			x += g.Text(x, y, th.Marks().Struck+" ", style)
		}
		g.TextIn(cell.Rect{X: max(x, 10), Y: y, W: w - max(x, 10) - 1, H: 1}, says(sh, lines[i].Event), style)
		y++
	}
	if y == 0 || h > 1 && y == 1 {
		g.Text(2, y, words.SessionsNone, th.Style(theme.Quiet))
	}
}

// loud tells whether there is something to be read first.
func (s Screen) loud(_ *screen.Shared, b forge.Bench, i int) bool {
	return s.careful != "" || len(b.Remarks(i)) > 0 || len(forge.FoundIn(b.Pieces[i]).Signs) > 0
}

// aloud says what is to be read first: a caution, what is odd, what a sign likely means.
// It gives how many rows it took.
func (s Screen) aloud(g cell.Grid, sh *screen.Shared, b forge.Bench, i int) (y int) {
	th := sh.Theme
	w, h := g.Size()
	say := func(tag, text string) {
		if y >= h {
			return
		}
		x := 2 + g.Text(2, y, tag, th.Style(theme.Look)) + 1
		y += g.Wrap(cell.Rect{X: x, Y: y, W: w - x - 1, H: min(2, h-y)}, text, th.Style(theme.Strong))
	}
	if s.careful != "" {
		say(" "+words.CautionTag+" ", modelwords.ForgeCaution(s.careful))
	}
	for _, r := range b.Remarks(i) {
		if y >= h {
			return y
		}
		g.Text(2, y, th.Marks().Off, th.Style(theme.Warn))
		y += g.Wrap(cell.Rect{X: 4, Y: y, W: w - 5, H: min(2, h-y)}, sh.Units.Remark(r), th.Style(theme.Strong))
	}
	for _, sign := range forge.FoundIn(b.Pieces[i]).Signs {
		if y >= h {
			return y
		}
		n := g.Text(2, y, strings.Split(modelwords.SignCause(sign), ":")[0]+": ", th.Style(theme.Warn))
		y += g.Wrap(cell.Rect{X: 2 + n, Y: y, W: w - n - 3, H: min(2, h-y)}, strings.TrimPrefix(modelwords.SignCause(sign), sign+": "), th.Style(theme.Text))
	}
	return y
}
