package house

import (
	"slices"
	"strings"
	"time"

	"chargehand/model/entry"
)

// What one asks to be reminded of is no warning: it comes up when it was asked for, with
// a smelt alight or without, stands until it is answered, and is of the house's stream.

// Due is a reminder that has come up.
type Due struct {
	At     time.Time // when it last came up
	Remind entry.Remind
}

// RemindIn asks to be reminded of a word in so many minutes, once or each time that so
// many have gone by.
func RemindIn(now time.Time, minutes entry.Minute, word string, each bool) entry.Remind {
	r := entry.Remind{At: entry.When{Time: now.Add(lasting(minutes))}, Word: word}
	if each {
		r.Every = entry.Some(minutes)
	}
	return r
}

func lasting(m entry.Minute) time.Duration { return time.Duration(float64(m) * float64(time.Minute)) }

// every is how far its times lie apart; 0 for one that comes once.
func every(r entry.Remind) time.Duration {
	if !r.Every.Positive() {
		return 0
	}
	return max(time.Minute, lasting(r.Every.Value))
}

// DueAt are the reminders that have come up by a moment and were not answered, the
// longest standing first.
func DueAt(rs []entry.Remind, now time.Time) []Due {
	var due []Due
	for _, r := range rs {
		if r.Ended || r.At.IsZero() || now.Before(r.At.Time) {
			continue
		}
		d := Due{At: r.At.Time, Remind: r}
		if e := every(r); e > 0 {
			d.At = r.At.Add(now.Sub(r.At.Time) / e * e)
		}
		due = append(due, d)
	}
	slices.SortStableFunc(due, func(a, b Due) int { return a.Remind.At.Compare(b.Remind.At.Time) })
	return due
}

// Answered is what answers a reminder that has come up: one that comes once is ended, one
// that comes each time stands for its next time.
func Answered(r entry.Remind, now time.Time) entry.Remind {
	e := every(r)
	if e == 0 {
		return entry.Remind{Word: r.Word, Ended: true}
	}
	r.At = entry.When{Time: r.At.Add((max(0, now.Sub(r.At.Time))/e + 1) * e)}
	return r
}

// Reminders are those in force by the entries of the house, in order: of one word the
// last one holds.
func Reminders(entries []entry.Entry) []entry.Remind {
	var rs []entry.Remind
	for _, e := range entries {
		if ev, ok := e.Event.(entry.Remind); ok {
			rs = Reminded(rs, ev)
		}
	}
	return rs
}

// Reminded are some reminders with one more, or one less where it is ended.
func Reminded(rs []entry.Remind, ev entry.Remind) []entry.Remind {
	rs = slices.DeleteFunc(slices.Clone(rs), func(o entry.Remind) bool { return strings.EqualFold(o.Word, ev.Word) })
	if ev.Ended {
		return rs
	}
	return append(rs, ev)
}
