package help

import (
	"cmp"
	"strings"

	"chargehand/tui/cell"
	"chargehand/tui/screen"
	"chargehand/tui/theme"
)

// Columns of text that are easy to read, and of names and numbers beside it.
const (
	readable = 56
	names    = 20
	numbers  = 3
)

// text is the help in rows of a width, for a viewport that shows so many rows: as
// many columns as are easy to read, the text going on from the foot of one to the
// head of the next on each page.
func text(sh *screen.Shared, room cell.Rect) []string {
	columns := max(1, (room.W+3)/readable)
	each := room.W/columns - 2
	rows := wrap(sh, each)
	page := columns * room.H
	var all []string
	for ; len(rows) > 0; rows = rows[min(page, len(rows)):] {
		deep := min(room.H, len(rows))
		for i := range deep {
			var b strings.Builder
			for n := i; n < min(page, len(rows)); n += room.H {
				b.WriteString(rows[n].text)
				b.WriteString(strings.Repeat(" ", max(each+2-rows[n].width, 0)))
			}
			all = append(all, strings.TrimRight(b.String(), " "))
		}
	}
	return all
}

// row is one row of a column, with its look, and how wide it is without that.
type row struct {
	text  string
	width int
}

func wrap(sh *screen.Shared, width int) []row {
	th := sh.Theme
	var rows []row
	put := func(name, text string, column int, r theme.Role) {
		name, text = sh.Spelled(name), sh.Spelled(text)
		w, drawn := cell.Width(text), th.Component(r).Render(text)
		if name != "" {
			if cell.Width(name) > column-1 {
				name = strings.TrimRight(cell.Grid{}.Cut(name, column-1), " ")
			}
			drawn = th.Component(theme.Now).Render(name) + strings.Repeat(" ", column-cell.Width(name)) + drawn
			w += column
		}
		rows = append(rows, row{drawn, w})
	}
	for _, l := range lines(sh) {
		if l.heading != "" {
			if len(rows) > 0 {
				rows = append(rows, row{})
			}
			for _, part := range wrapped(sh, l.heading, max(width, 10)) {
				put("", part, 0, theme.Strong)
			}
			continue
		}
		column := cmp.Or(l.column, names)
		room := width
		if l.name != "" {
			room -= column
		}
		name, indent := l.name, ""
		for _, part := range wrapped(sh, l.text, max(room, 10)) {
			if name == "" && l.name != "" {
				indent = strings.Repeat(" ", column)
			}
			put(name, indent+part, column, theme.Text)
			name = ""
		}
	}
	return rows
}

// wrapped breaks a text into lines of at most so many cells, between words.
func wrapped(sh *screen.Shared, text string, width int) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(text) {
		switch {
		case line == "":
			line = word
		case sh.Width(line)+1+sh.Width(word) <= width:
			line += " " + word
		default:
			lines, line = append(lines, line), word
		}
	}
	return append(lines, line)
}
