package columns

import (
	"math"
	"strings"
	"time"
)

// longest is how long nothing stands in a log of a day, in minutes (assumed): a time that
// goes back is of a clock of 12 hours when it comes sooner after the one before it, turned on
// by those, and else a slip of the pen.
const longest = 6 * 60

// clockOf guesses how a column of times is kept. Numbers count only under a name that says
// time.
func clockOf(head string, cells []string, decimalComma, named bool) (unit string, ok bool) {
	if len(cells) == 0 {
		return "", named
	}
	last, back, twelve, ofDay := -1, false, true, 0
	for _, cell := range cells {
		at, marked, is := TimeOfDay(cell)
		if !is {
			continue
		}
		ofDay++
		back = back || at < last && last-at < 12*60
		twelve = twelve && !marked && at < 13*60 && (at >= last || at+12*60-last <= longest)
		last = at
	}
	if 5*ofDay > 4*len(cells) {
		if back && twelve {
			return "12h", true
		}
		return "", true
	}
	if !named {
		return "", false
	}
	most, before, numbers, days := 0.0, 0.0, 0, 0
	for _, cell := range cells {
		v, ok := Number(cell, decimalComma)
		if ok && v >= before {
			numbers++
			most, before = max(most, v), v
		}
		if ok && (v >= 0 && v < 1 || Serial(v)) {
			days++
		}
	}
	if 5*numbers <= 4*len(cells) && days < len(cells) {
		return "", false
	}
	for _, w := range tokens(head) {
		if u := unitWords[w]; u == "min" || u == "h" {
			return u, true
		}
	}
	if days == len(cells) && len(cells) > 1 { // no smelt is over within an hour
		return "day", true
	}
	if most > 24 {
		return "min", true
	}
	return "h", true
}

// Serial tells whether a number is a day with its time as spreadsheets count them, from the end
// of 1899: one from 1955 on, which no hour or minute of a log comes near.
func Serial(v float64) bool { return v >= 20000 && v < 120000 }

// firstSerial is the day 0 of that count (common practice).
var firstSerial = time.Date(1899, 12, 30, 0, 0, 0, 0, time.UTC)

// ShareOfDay reads a time as spreadsheets keep it: as a share of the day, with the day before the
// point where the cell holds one; without one the date is blank. Four decimals and fewer do not tell
// seconds, and are taken for the minute.
func ShareOfDay(cell string, decimalComma bool) (seconds int, date string, ok bool) {
	v, ok := Number(cell, decimalComma)
	if !ok || !(v >= 0 && v < 1 || Serial(v)) {
		return 0, "", false
	}
	if day := math.Floor(v); day > 0 {
		date = firstSerial.AddDate(0, 0, int(day)).Format(time.DateOnly)
		v -= day
	}
	if whole := strings.IndexAny(cell, ".,"); len(cell)-whole-1 < 5 {
		return min(int(math.Round(v*1440)), 1439) * 60, date, true
	}
	return min(int(math.Round(v*86400)), 86399), date, true
}

// TimeOfDay reads a time of day in minutes; marked says that it had am or pm behind it.
func TimeOfDay(cell string) (minutes int, marked, ok bool) {
	cell = strings.ToUpper(strings.TrimSpace(cell))
	for i, form := range []string{"3:04 PM", "3:04PM", "3:04:05 PM", "15:04", "15:04:05"} {
		if at, err := time.Parse(form, cell); err == nil {
			return at.Hour()*60 + at.Minute(), i < 3, true
		}
	}
	return 0, false, false
}
