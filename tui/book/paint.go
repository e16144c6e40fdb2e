package book

import (
	"slices"
	"strings"

	"chargehand/model/entry"
	"chargehand/model/fold"
	modelwords "chargehand/model/words"
	"chargehand/tui/act"
	"chargehand/tui/cell"
	"chargehand/tui/draw"
	"chargehand/tui/screen"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// detailRows is what the Book keeps free below the table for the whole of the
// entry under the cursor: a line, and three rows.
const detailRows = 4

// tableRows is how many entries the Book shows in a window of this height.
func tableRows(h int) int {
	return max(1, h-draw.TopRows-draw.FootRows-detailRows)
}

// Paint shows the entries as a table, and below it the whole of the one under the
// cursor.
func (j Screen) Paint(g cell.Grid, sh *screen.Shared) {
	if j.reads(sh) {
		j.paintMessages(g, sh)
		return
	}
	th, s := sh.Theme, sh.Smelt
	title := words.DoBook
	if s.Is() {
		title = s.ID()
	}
	v := screen.TopOf(sh, title, words.BookShows(filters[j.filter].word))
	v.Tag = modelwords.Mark(s.Light())
	v.NoBook, v.Lost = s.ToLook(), words.EntriesLost(s.Lost())
	rows, _ := g.Bounds().CutTop(draw.TopRows)
	sh.Pen().Top(g.Sub(rows), v)
	body := screen.Body(g)
	if !s.Is() {
		g.Text(2, body.Y+1, words.NoSmelt, th.Style(theme.Text))
		return
	}
	lines := j.Lines(sh)
	at := j.index(lines)
	detail, list := body.CutBottom(detailRows)
	if at < 0 {
		g.Text(2, list.Y+1, words.NoEntryHere, th.Style(theme.Text))
		return
	}
	table := withGaps(lines, s.Lost())
	cursor := slices.IndexFunc(table, func(r rowOf) bool { return r.gap == nil && r.line.Seq() == lines[at].Seq() })
	first := screen.FirstShown(cursor, len(table), list.H)
	shown := table[first:min(first+list.H, len(table))]
	tableOf(sh, columnsFor(sh, lines, list.W), shown, cursor-first).Paint(g.Sub(list), th)
	paintDetail(g.Sub(detail), sh, lines[at])
}

// Widths from which the table says who keyed an entry, and what was done to it
// later.
const (
	tellsBy   = 60
	tellsMore = 100
)

// rowOf is a row of the table: an entry, or a place where some are lost.
type rowOf struct {
	line fold.Line
	gap  *entry.Gap
}

// withGaps are entries with the places between them where some are lost.
func withGaps(lines []fold.Line, lost []entry.Gap) []rowOf {
	var rows []rowOf
	for _, l := range lines {
		for len(lost) > 0 && l.Seq() >= lost[0].Before {
			rows = append(rows, rowOf{gap: &lost[0]})
			lost = lost[1:]
		}
		rows = append(rows, rowOf{line: l})
	}
	for i := range lost {
		rows = append(rows, rowOf{gap: &lost[i]})
	}
	return rows
}

// column is one of the table, and what it says of an entry.
type column struct {
	screen.Column
	says func(fold.Line) string
}

// columnsFor are when, what became of an entry, who keyed it, and what it says, where the
// window has room for them; those that say something of any of the entries.
func columnsFor(sh *screen.Shared, of []fold.Line, w int) []column {
	all := []column{
		{screen.Column{Width: 5, Role: theme.Quiet}, func(l fold.Line) string { return sh.Smelt.Wall(l).Format(modelwords.Clock) }},
		{screen.Column{Width: 8}, func(l fold.Line) string { return became(sh, l) }},
	}
	if w >= tellsBy {
		all = append(all, column{screen.Column{Width: 4, Role: theme.Quiet}, func(l fold.Line) string { return l.Entry.By }})
	}
	all = slices.DeleteFunc(all, func(c column) bool {
		return !slices.ContainsFunc(of, func(l fold.Line) bool { return c.says(l) != "" })
	})
	return append(all, column{screen.Column{}, func(l fold.Line) string {
		says := act.Describe(sh.Units, sh.Smelt, l)
		if more := mended(sh, l); more != "" && w >= tellsMore {
			says += "  (" + more + ")"
		}
		return says
	}})
}

// tableOf are entries as a table.
func tableOf(sh *screen.Shared, columns []column, rows []rowOf, picked int) screen.Table {
	t := screen.Table{Picked: picked}
	for _, c := range columns {
		t.Columns = append(t.Columns, c.Column)
	}
	for _, r := range rows {
		row := screen.Row{Cells: make([]string, len(columns))}
		if r.gap != nil {
			row.Role = theme.Look
			row.Cells[len(columns)-1] = sh.Theme.Marks().Look + " " + modelwords.GapSaid(*r.gap)
			t.Rows = append(t.Rows, row)
			continue
		}
		for i, c := range columns {
			row.Cells[i] = c.says(r.line)
		}
		if r.line.Struck() {
			row.Role = theme.Struck
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

// became is what became of an entry, in a word.
func became(sh *screen.Shared, l fold.Line) string {
	m := sh.Theme.Marks()
	switch {
	case sh.Smelt.Waits(l.Seq()):
		return waiting(sh)
	case l.Struck():
		return m.Struck
	case l.AmendedBy != 0:
		return words.ShortChanged
	case l.Late():
		return m.Late
	}
	return ""
}

// waiting says of an entry that it is not yet kept, or that it is not.
func waiting(sh *screen.Shared) string {
	if sh.Tally.NotKept > 0 {
		return modelwords.NotKept
	}
	return modelwords.Keeping
}

// mended says what was done to an entry, by whom and when.
func mended(sh *screen.Shared, l fold.Line) string {
	by := l.StruckBy
	if by == 0 {
		by = l.AmendedBy
	}
	act, ok := sh.Smelt.Line(by)
	if !ok {
		return ""
	}
	at := sh.Smelt.Wall(act).Format(modelwords.Clock)
	if s, is := act.Event.(entry.Strike); is && s.Moved != "" && l.Struck() {
		return words.MovedWhen(s.Moved, at, act.Entry.By)
	}
	if l.Struck() {
		return words.StruckWhen(at, act.Entry.By)
	}
	var was []string
	if before := l.Entry.Happened.Format(modelwords.Clock); before != sh.Smelt.Wall(l).Format(modelwords.Clock) {
		was = append(was, words.WasAt(before))
	}
	if before := sh.Units.Event(l.Entry.Event); before != sh.Units.Event(l.Event) {
		was = append(was, before)
	}
	return words.ChangedWhen(strings.Join(was, ", "), at, act.Entry.By)
}

// joined is two remarks, either of which may be none.
func joined(a, b string) string {
	if a == "" || b == "" {
		return a + b
	}
	return a + "; " + b
}

// paintDetail is the whole of one entry.
func paintDetail(g cell.Grid, sh *screen.Shared, l fold.Line) {
	th := sh.Theme
	w, h := g.Size()
	g.Fill(cell.Rect{W: w, H: 1}, th.Marks().HLine, th.Style(theme.Frame))
	rows := cell.Rect{X: 2, Y: 1, W: w - 3, H: h - 1}
	n := g.Wrap(rows, act.Describe(sh.Units, sh.Smelt, l), th.Style(theme.Strong))
	if n >= rows.H {
		return
	}
	_, rows = rows.CutTop(n)
	more := words.EntryTaken(l.Seq(), sh.Smelt.Wall(l), l.Entry.Kept, l.Entry.By, l.Entry.Screen, l.Entry.Key, l.Uncertain)
	if o := l.Entry.From; o.Stream != "" {
		n = g.Wrap(rows, words.MovedFrom(o.Stream), th.Style(theme.Text))
		if _, rows = rows.CutTop(n); rows.Empty() {
			return
		}
	}
	if m := joined(modelwords.KeptThough(sh.Smelt.Sure(l)), mended(sh, l)); m != "" {
		n = g.Wrap(rows, m, th.Style(theme.Text))
		_, rows = rows.CutTop(n)
	}
	if !rows.Empty() {
		g.Wrap(rows, more, th.Style(theme.Quiet))
	}
}
