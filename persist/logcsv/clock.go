package logcsv

import (
	"fmt"
	"strconv"
	"strings"
	"time"
)

// Undated is the first day of a smelt whose day is unknown. It means nothing
// (Light.Undated says so); it is not the year 1, because a zero time is taken
// for "no time" and Go's nanosecond clock does not reach that far.
var Undated = time.Date(1970, 1, 1, 0, 0, 0, 0, time.UTC)

// Bounds of dates: a log is of one smelt, and of one that somebody living
// could have written.
const (
	maxDays   = 3660 // a note on the bar is made years later
	firstYear = 1800
	lastYear  = 2200
)

const (
	dateForm = "2006-01-02"
	dayWord  = "day "
	daySecs  = 24 * 60 * 60
	halfDay  = 12 * 60 * 60
)

// clock is a time of day in seconds since midnight.
type clock int

func parseClock(cell string) (clock, *complaint) {
	if cell == "" {
		return 0, noClock()
	}
	fields := strings.Split(cell, ":")
	if len(fields) != 2 && len(fields) != 3 {
		return 0, badClock(cell)
	}
	var c clock
	for i, most := range []int{23, 59, 59}[:len(fields)] {
		n, err := strconv.ParseUint(fields[i], 10, 8)
		if err != nil || len(fields[i]) > 2 || int(n) > most {
			return 0, badClock(cell)
		}
		c = c*60 + clock(n)
	}
	if len(fields) == 2 {
		c *= 60
	}
	return c, nil
}

func clockOf(t time.Time) clock {
	h, m, s := t.Clock()
	return clock((h*60+m)*60 + s)
}

// String leaves the seconds out where there are none.
func (c clock) String() string {
	if c%60 == 0 {
		return fmt.Sprintf("%02d:%02d", c/3600, c/60%60)
	}
	return fmt.Sprintf("%02d:%02d:%02d", c/3600, c/60%60, c%60)
}

// after applies the rule of the bare clock: back by more than half a day is
// the next day, back by less is told by false.
func (c clock) after(last clock) (days int, ok bool) {
	switch back := last - c; {
	case back <= 0:
		return 0, true
	case back > halfDay:
		return 1, true
	default:
		return 0, false
	}
}

// calendar gives each row its day, counted from 0 at the log's first day.
type calendar struct {
	first   time.Time // the day 0, midnight UTC; zero while it is unknown
	started bool
	day     int
	clock   clock
}

// next gives the day of the next row, from its clock and its date or a blank.
// The column is the one at fault.
func (k *calendar) next(c clock, date string) (int, column, *complaint) {
	day := k.day
	if k.started {
		step, ok := c.after(k.clock)
		if !ok && date == "" {
			return 0, colClock, clockBack(k.clock, c)
		}
		if !ok {
			step = 1
		}
		day += step
	}
	if date != "" {
		var fault *complaint
		if day, fault = k.dayOf(date, day); fault != nil {
			return 0, colDate, fault
		}
		if k.started && (day < k.day || (day == k.day && c < k.clock)) {
			return 0, colDate, dateBack()
		}
	}
	if day > maxDays {
		return 0, colDate, tooManyDays()
	}
	k.started, k.day, k.clock = true, day, c
	return day, none, nil
}

// dayOf reads a date. The first true date of a log also dates the rows before
// it, which the clock has counted up to the day byClock.
func (k *calendar) dayOf(cell string, byClock int) (int, *complaint) {
	if n, isDay := strings.CutPrefix(cell, dayWord); isDay {
		day, err := strconv.Atoi(n)
		if err != nil || day < 1 {
			return 0, badDate(cell)
		}
		return day - 1, nil
	}
	date, err := time.Parse(dateForm, cell)
	if err != nil || date.Year() < firstYear || date.Year() > lastYear {
		return 0, badDate(cell)
	}
	if k.first.IsZero() || !k.started {
		k.first = date.AddDate(0, 0, -byClock)
	}
	return daysBetween(k.first, date), nil
}

// daysBetween counts the days from one midnight UTC to another.
func daysBetween(from, to time.Time) int { return int((to.Unix() - from.Unix()) / daySecs) }

// midnight is the day of a wall time as a midnight UTC.
func midnight(t time.Time) time.Time {
	y, m, d := t.Date()
	return time.Date(y, m, d, 0, 0, 0, 0, time.UTC)
}

// offsetAt gives the offset that a place has at a wall time, as a zone without
// a name and in whole minutes, which is all that a time on the wire can say.
func offsetAt(day time.Time, c clock, place *time.Location) *time.Location {
	y, m, d := day.Date()
	_, secs := time.Date(y, m, d, 0, 0, int(c), 0, place).Zone()
	secs -= secs % 60
	if secs == 0 {
		return time.UTC
	}
	return time.FixedZone("", secs)
}
