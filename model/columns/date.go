package columns

import (
	"strconv"
	"strings"
	"time"
)

// dateOf guesses in which order a date is written; one that could be read both ways is
// taken with the day first, and whoever looks sees it.
func dateOf(cells []string) (unit string, ok bool) {
	unit, n := "", 0
	for _, cell := range cells {
		if _, err := time.Parse(time.DateOnly, cell); err == nil || strings.HasPrefix(strings.ToLower(cell), "day ") {
			n++
			continue
		}
		a, b, _, is := dayParts(cell)
		if !is {
			continue
		}
		n++
		switch {
		case b > 12:
			unit = "m/d/y"
		case a > 12 || unit == "":
			unit = "d/m/y"
		}
	}
	return unit, len(cells) == 0 || 5*n > 4*len(cells)
}

// dayParts are the three numbers of a date written with strokes or points.
func dayParts(cell string) (a, b, year int, ok bool) {
	parts := strings.FieldsFunc(cell, func(c rune) bool { return strings.ContainsRune("/.-", c) })
	if len(parts) != 3 {
		return 0, 0, 0, false
	}
	var n [3]int
	for i, p := range parts {
		v, err := strconv.Atoi(strings.TrimSpace(p))
		if err != nil || v < 0 {
			return 0, 0, 0, false
		}
		n[i] = v
	}
	if n[2] < 100 {
		n[2] += 2000
	}
	return n[0], n[1], n[2], n[0] >= 1 && n[1] >= 1 && n[0] <= 31 && n[1] <= 31 && n[2] >= 1900
}

// Day is a date as our table has it, of one written in an order of unit; as it stands where
// it is none.
func Day(cell, unit string) string {
	a, b, year, ok := dayParts(cell)
	if unit == "" || !ok {
		return cell
	}
	if unit == "m/d/y" {
		a, b = b, a
	}
	d := time.Date(year, time.Month(b), a, 0, 0, 0, 0, time.UTC)
	if b > 12 || d.Day() != a {
		return cell
	}
	return d.Format(time.DateOnly)
}
