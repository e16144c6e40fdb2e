package logs

import (
	"strings"

	"chargehand/model/columns"
	modelwords "chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/draw"
	"chargehand/tui/screen"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// Paint shows the folder, or the file that is open.
func (s Screen) Paint(g cell.Grid, sh *screen.Shared) {
	if s.open != nil {
		s.sheet(g, sh)
		return
	}
	screen.TopBeside(g, sh, words.LogsTitle, s.folder.Path)
	body := screen.Body(g)
	th := sh.Theme
	head, list := body.CutTop(3)
	g.Wrap(cell.Rect{X: 2, Y: head.Y, W: head.W - 4, H: 2}, words.LogsSay, th.Style(theme.Text))
	switch {
	case s.folder.Path == "" || s.reads:
		g.Text(2, list.Y, words.LogBeingRead, th.Style(theme.Quiet))
		return
	case len(s.folder.Files) == 0:
		g.Wrap(cell.Rect{X: 2, Y: list.Y, W: list.W - 4, H: 2}, words.NoLogHere, th.Style(theme.Text))
		return
	}
	rows := fileRows(sh)
	at := min(s.at, len(s.folder.Files)-1)
	first := screen.FirstShown(at, len(s.folder.Files), rows)
	wide := max(20, list.W-40)
	t := screen.Table{Columns: []screen.Column{{Head: words.LogName, Width: wide}, {Head: words.LogSize, Width: 9, Right: true, Role: theme.Quiet}, {Head: words.LogChanged, Width: 16, Role: theme.Quiet}}, Heads: true, Picked: at - first}
	for _, f := range s.folder.Files[first:min(first+rows, len(s.folder.Files))] {
		row := screen.Row{Cells: []string{f.Name, words.Bytes(f.Bytes), f.Changed.Format("2 Jan 2006")}}
		if f.Folder {
			row.Cells = []string{f.Name + "/", words.AFolder, ""}
		}
		t.Rows = append(t.Rows, row)
	}
	t.Paint(g.Sub(list), th)
}

// fileRows is how many files a window shows.
func fileRows(sh *screen.Shared) int { return max(1, sh.H-draw.TopRows-draw.FootRows-4) }

// below is how many rows stand under the table of the columns: a line of the picked one
// and what it makes of the first rows, between two lines; above it two.
func below(sh *screen.Shared) int {
	if sh.H >= 30 {
		return 12
	}
	return 9
}

// columnRows is how many columns a window shows.
func columnRows(sh *screen.Shared) int {
	return max(1, sh.H-draw.TopRows-draw.FootRows-below(sh)-3)
}

// sheet shows what the columns of a file are, what came of them, and the first rows.
func (s Screen) sheet(g cell.Grid, sh *screen.Shared) {
	o, th := s.open, sh.Theme
	screen.TopBeside(g, sh, words.LogsTitle, o.sheet.Name)
	body := screen.Body(g)
	w := body.W
	head, rest := body.CutTop(2)
	text, style := words.LogBeingRead, th.Style(theme.Quiet)
	if o.known {
		if text, style = words.LogHolds(sh.Units, o.read.Table, o.read.Smelt), th.Style(theme.Strong); o.read.Err != nil {
			text, style = lacks(o.read.Err), th.Style(theme.Look)
		}
	}
	lines := g.Rowed(text, w-4)
	for i, line := range lines[:min(2, len(lines))] {
		if i == 1 && len(lines) > 2 {
			line = strings.Join(lines[1:], " ")
		}
		g.TextIn(cell.Rect{X: 2, Y: head.Y + i, W: w - 4, H: 1}, line, style)
	}
	foot, list := rest.CutBottom(below(sh))
	s.columns(g.Sub(list), sh)
	s.detail(g.Sub(foot), sh)
}

// columns is the table of the columns.
func (s Screen) columns(g cell.Grid, sh *screen.Shared) {
	o := s.open
	w, h := g.Size()
	name, is, why := 17, 22, 14
	if w >= 110 {
		name, is, why = 26, 30, 18
	}
	cols := []screen.Column{{Head: words.ColumnHead, Width: name, Role: theme.Strong}, {Head: words.ColumnFirst, Width: max(8, w-name-is-why-10), Role: theme.Quiet},
		{Head: words.ColumnReadAs, Width: is}, {Head: words.ColumnWhy, Width: why, Role: theme.Quiet}}
	n := len(o.sheet.Heads)
	first := screen.FirstShown(o.at, n, h-1)
	t := screen.Table{Columns: cols, Heads: true, Picked: o.at - first}
	for i := first; i < min(first+h-1, n); i++ {
		head := o.sheet.Heads[i]
		to := o.mapping.Columns[head]
		t.Rows = append(t.Rows, screen.Row{Cells: []string{words.HeadOf(head), strings.Join(o.first(i, 6), "  "), words.ColumnSays(columns.Meaning(to.Ours), to.Unit), o.whyOf(i)}})
	}
	t.Paint(g, sh.Theme)
}

// first are what stands first in a column.
func (o *opened) first(i, n int) []string {
	var cells []string
	for _, r := range o.sheet.Rows {
		if i < len(r) && r[i] != "" && len(cells) < n {
			cells = append(cells, r[i])
		}
	}
	return cells
}

func (o *opened) whyOf(i int) string {
	if o.said[i] {
		return words.AsSaid
	}
	return words.WhyOf(o.why[i])
}

// detail says what came of the picked column, how the first rows are read, and what was
// not understood.
func (s Screen) detail(g cell.Grid, sh *screen.Shared) {
	o, th := s.open, sh.Theme
	w, h := g.Size()
	rule := func(y int) { g.Fill(cell.Rect{Y: y, W: w, H: 1}, th.Marks().HLine, th.Style(theme.Frame)) }
	line := func(y int, text string, role theme.Role) {
		g.TextIn(cell.Rect{X: 2, Y: y, W: w - 3, H: 1}, text, th.Style(role))
	}
	rule(0)
	y := 1
	said, doubted := s.picked(sh)
	role := theme.Text
	if doubted {
		role = theme.Warn
	}
	line(y, said, role)
	y++
	rule(y)
	y++
	if !o.known {
		return
	}
	t := o.read.Table
	notes := s.notes(sh)
	for i, r := range t.Shown {
		if y < h && (i < fewest || h-y > len(notes)) {
			line(y, words.LogRow(sh.Units, r), theme.Text)
			y++
		}
	}
	for i, n := range notes {
		if y == h-1 && i < len(notes)-1 {
			n = strings.Join(notes[i:], "; ")
		}
		if y < h {
			line(y, n, theme.Quiet)
			y++
		}
	}
}

// fewest is how many rows are shown at the least.
const fewest = 3

// notes are what is doubted, left open and not understood.
func (s Screen) notes(sh *screen.Shared) (notes []string) {
	t := s.open.read.Table
	for _, c := range t.Totals {
		if c.Beyond {
			notes = append(notes, words.TotalDoubt(sh.Units, c))
		}
	}
	if t.Blanks > 0 {
		notes = append(notes, words.BlanksStand(t.Blanks))
	}
	if len(t.Timeless) > 0 {
		notes = append(notes, modelwords.LinesTimeless(t.Timeless))
	}
	if len(t.Left) > 0 {
		notes = append(notes, words.ColumnsNotRead(t.Left))
	}
	if len(t.Words) > 0 {
		notes = append(notes, words.WordsInNote(t.Words))
	}
	return notes
}

// picked says what came of the column at the keys, and whether that is doubted.
func (s Screen) picked(sh *screen.Shared) (said string, doubted bool) {
	o := s.open
	head := o.sheet.Heads[o.at]
	if o.known {
		for _, c := range o.read.Table.Totals {
			if c.Theirs == head {
				return words.TotalOf(sh.Units, c), c.Beyond
			}
		}
	}
	to, read := o.mapping.Columns[head]
	if !read {
		return words.ColumnLeft(head, o.why[o.at]), false
	}
	return words.HeadOf(head) + ": " + words.ColumnSays(columns.Meaning(to.Ours), to.Unit), false
}
