package tui

import (
	"strings"

	"chargehand/model/fold"
	"chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/paint"
	"chargehand/tui/theme"
)

// detailRows is what the Book keeps free below the table for the whole of the
// entry under the cursor: a line, and three rows.
const detailRows = 4

// tableRows is how many entries the Book shows in a window of this height.
func tableRows(h int) int {
	return max(1, h-paint.TopRows-paint.FootRows-detailRows)
}

func (j journal) paint(g cell.Grid, sh shared) {
	th, s := sh.theme, sh.smelt
	title := words.DoBook
	if s.Is() {
		title = s.ID()
	}
	v := topOf(sh, title, words.BookShows(filters[j.filter].word))
	v.NoBook = s.ToLook()
	rows, _ := g.Bounds().CutTop(paint.TopRows)
	paint.TopLine(g.Sub(rows), th, v)
	body := bodyOf(g)
	if !s.Is() {
		g.Text(2, body.Y+1, words.NoSmelt, th.Style(theme.Text))
		return
	}
	lines := j.lines(sh)
	at := j.index(lines)
	detail, table := body.CutBottom(detailRows)
	if at < 0 {
		g.Text(2, table.Y+1, words.NoEntryHere, th.Style(theme.Text))
		return
	}
	first := firstShown(at, len(lines), table.H)
	for y := 0; y < table.H && first+y < len(lines); y++ {
		row := g.Sub(cell.Rect{X: 0, Y: table.Y + y, W: table.W, H: 1})
		bookRow(row, sh, lines[first+y], first+y == at)
	}
	bookDetail(g.Sub(detail), sh, lines[at])
}

// firstShown is the first of n lines to show in so many rows, so that the one
// at the cursor is among them, near the lower end.
func firstShown(at, n, rows int) int {
	return max(0, min(at-rows*2/3, n-rows))
}

// bookRow is one entry: when, what became of it, what it says, and who.
func bookRow(g cell.Grid, sh shared, l fold.Line, picked bool) {
	th, s := sh.theme, sh.smelt
	m := th.Marks()
	w, _ := g.Size()
	text, quiet := th.Style(theme.Text), th.Style(theme.Quiet)
	if l.Struck() {
		text = th.Style(theme.Struck)
	}
	if picked {
		g.Fill(g.Bounds(), ' ', th.Style(theme.Picked))
		text, quiet = th.Style(theme.Picked), th.Style(theme.Picked)
		g.Text(0, 0, m.Picked, text)
	}
	g.Text(2, 0, s.Wall(l).Format(words.Clock), quiet)
	end := w - 1
	if by := l.Entry.By; by != "" && w >= 60 {
		end -= g.TextRight(end, 0, by, quiet) + 1
	}
	if s.Waits(l.Seq()) {
		end -= g.TextRight(end, 0, waiting(sh), text) + 1
	}
	became := ""
	switch {
	case l.Struck():
		became = m.Struck
	case l.AmendedBy != 0:
		became = words.ShortChanged
	case l.Late():
		became = m.Late
	}
	g.Text(8, 0, became, text)
	said := describe(th.Units, s, l)
	if more := mended(sh, l); more != "" && w >= 100 {
		said += "  (" + more + ")"
	}
	g.TextIn(cell.Rect{X: 16, W: max(end-16, 8), H: 1}, said, text)
}

// waiting says of an entry that it is not yet kept, or that it is not.
func waiting(sh shared) string {
	if sh.tally.notKept > 0 {
		return words.NotKept
	}
	return words.Keeping
}

// mended says what was done to an entry, by whom and when.
func mended(sh shared, l fold.Line) string {
	by := l.StruckBy
	if by == 0 {
		by = l.AmendedBy
	}
	act, ok := sh.smelt.Line(by)
	if !ok {
		return ""
	}
	at := sh.smelt.Wall(act).Format(words.Clock)
	if l.Struck() {
		return words.StruckWhen(at, act.Entry.By)
	}
	var was []string
	if before := l.Entry.Happened.Format(words.Clock); before != sh.smelt.Wall(l).Format(words.Clock) {
		was = append(was, words.WasAt(before))
	}
	if before := sh.theme.Units.Event(l.Entry.Event); before != sh.theme.Units.Event(l.Event) {
		was = append(was, before)
	}
	return words.ChangedWhen(strings.Join(was, ", "), at, act.Entry.By)
}

// bookDetail is the whole of one entry.
func bookDetail(g cell.Grid, sh shared, l fold.Line) {
	th := sh.theme
	w, h := g.Size()
	g.Fill(cell.Rect{W: w, H: 1}, th.Marks().HLine, th.Style(theme.Frame))
	rows := cell.Rect{X: 2, Y: 1, W: w - 3, H: h - 1}
	n := g.Wrap(rows, describe(th.Units, sh.smelt, l), th.Style(theme.Strong))
	if n >= rows.H {
		return
	}
	_, rows = rows.CutTop(n)
	more := words.EntryTaken(l.Seq(), sh.smelt.Wall(l), l.Entry.Kept, l.Entry.By, l.Entry.Screen, l.Entry.Key, l.Uncertain)
	if m := mended(sh, l); m != "" {
		n = g.Wrap(rows, m, th.Style(theme.Text))
		_, rows = rows.CutTop(n)
	}
	if !rows.Empty() {
		g.Wrap(rows, more, th.Style(theme.Quiet))
	}
}
