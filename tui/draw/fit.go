package draw

import (
	"slices"
	"strings"

	"chargehand/tui/cell"
)

// fitting is the longest of some texts that fits, else the last.
func fitting(g cell.Grid, columns int, long string, shorter ...string) string {
	for _, s := range shorter {
		if g.Width(long) <= columns {
			break
		}
		long = s
	}
	return long
}

// forms are ways to say one thing, the fullest first; none for nothing.
type forms []string

// say are the forms that say anything.
func say(all ...string) forms {
	return slices.DeleteFunc(all, func(s string) bool { return s == "" })
}

// full is the fullest, "" for nothing.
func (f forms) full() string { return firstOf(f...) }

// in is the fullest that fits, else the last.
func (f forms) in(g cell.Grid, columns int) string {
	if len(f) == 0 {
		return ""
	}
	return fitting(g, columns, f[0], f[1:]...)
}

// InParts is as much of a text as fits into so many rows, rather fewer of its parts than
// one that is cut: half a number is read as a whole one. What has no parts stays.
func InParts(g cell.Grid, text string, columns, rows int) string {
	for g.Rows(text, columns) > rows {
		end := max(strings.LastIndex(text, ", "), strings.LastIndex(text, "; "), strings.LastIndex(text, ": "))
		if end <= 0 {
			break
		}
		text = text[:end]
	}
	return text
}
