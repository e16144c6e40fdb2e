package screen

import (
	"github.com/charmbracelet/lipgloss"
	"github.com/charmbracelet/lipgloss/table"

	"chargehand/tui/cell"
	"chargehand/tui/theme"
)

// Column is one column of a table.
type Column struct {
	Head  string
	Width int // cells of text; the last column takes what is left
	Right bool
	Role  theme.Role // how its cells look, where the row has no look of its own
}

// Row is one row: a text for each column.
type Row struct {
	Cells []string
	Role  theme.Role // Text for the columns' own
}

// Table is the rows that a window shows of a list, one of them picked. A long
// list is never laid out as a whole: only what is seen is given.
type Table struct {
	Columns []Column
	Heads   bool
	Rows    []Row
	Picked  int // place among the rows; -1 for none
}

// between is how many blanks part two columns.
const between = 2

// Fit is the columns that fit a width, the first ones first.
func Fit(columns []Column, w int) []Column {
	x := between
	for i, c := range columns {
		if x+c.Width > w-1 {
			return columns[:i]
		}
		x += c.Width + between
	}
	return columns
}

// FirstShown is the first of n lines to show in so many rows, so that the one
// at the cursor is among them, near the lower end.
func FirstShown(at, n, rows int) int {
	return max(0, min(at-rows*2/3, n-rows))
}

// Paint draws the table on all of g. The picked row has a mark before it.
func (t Table) Paint(g cell.Grid, th theme.Theme) {
	w, h := g.Size()
	if w < 4 || h < 1 || len(t.Columns) == 0 {
		return
	}
	widths := []int{between}
	for _, c := range t.Columns {
		widths = append(widths, c.Width+between)
	}
	last := len(widths) - 1
	for _, n := range widths[:last] {
		w -= n
	}
	if widths[last] = w; w < 1 {
		return
	}
	text := func(i int, s string) string {
		room := widths[i+1]
		if i+1 < last || t.Columns[i].Right {
			room -= between
		}
		s = g.Cut(s, room)
		if th.ASCII {
			s = cell.ASCII(s)
		}
		return s
	}
	style := func(row, column int) lipgloss.Style {
		role := theme.Quiet
		if row >= 0 && row < len(t.Rows) {
			role = t.Rows[row].Role
			if role == theme.Text && column > 0 {
				role = t.Columns[column-1].Role
			}
		}
		if row >= 0 && row == t.Picked {
			role = theme.Picked
		}
		s := th.Component(role).Width(widths[column])
		if column > 0 && t.Columns[column-1].Right {
			s = s.Align(lipgloss.Right).PaddingRight(between)
		}
		return s
	}
	drawn := table.New().Border(lipgloss.Border{}).BorderTop(false).BorderBottom(false).BorderLeft(false).BorderRight(false).
		BorderHeader(false).BorderColumn(false).BorderRow(false).Wrap(false).StyleFunc(style)
	total := 0
	for _, n := range widths {
		total += n
	}
	drawn.Width(total)
	if t.Heads {
		heads := []string{""}
		for i, c := range t.Columns {
			heads = append(heads, text(i, c.Head))
		}
		drawn.Headers(heads...)
	}
	for i, r := range t.Rows {
		cells := []string{" "}
		if i == t.Picked {
			cells[0] = th.Marks().Picked
		}
		for j := range t.Columns {
			cells = append(cells, text(j, r.Cells[j]))
		}
		drawn.Row(cells...)
	}
	drawn.Row(make([]string, len(widths))...) // without a border the library counts one row too few and cuts the last
	g.Lay(drawn.String(), th.Style(theme.Text))
}
