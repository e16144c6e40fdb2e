package rehearse

import (
	"slices"
	"time"

	"chargehand/model/rule"
)

// A hang counts once it has lasted long, with ore in the furnace; a warning tells of it that came from a little before it to a
// while after it ended (assumed).
const (
	longHang  = 10 * time.Minute
	toldAfter = 10 * time.Minute
)

// ofHangs are the rules that speak of a burden that does not sink.
var ofHangs = []rule.ID{rule.HangUp, rule.Slip, rule.ChargeOverdue, rule.EntryMissing, rule.BurnSlower, rule.AirShort}

// course is how the day went in truth.
func (d *Day) course() Course {
	trace := d.crew.trace
	end := trace[len(trace)-1]
	c := Course{ColdMin: end.ColdMin, IronKg: end.Bloom}
	for _, h := range d.crew.hangs() {
		c.Hangs++
		if !slices.ContainsFunc(d.Warnings, func(w rule.Warning) bool {
			return w.Grade > rule.Note && slices.Contains(ofHangs, w.Rule) && w.Onset <= h.to+toldAfter && (w.Raised() || w.Cleared >= h.from)
		}) {
			c.Missed++
		}
	}
	c.Cast = slices.ContainsFunc(d.Warnings, func(w rule.Warning) bool {
		return w.Rule == rule.CarbonHigh && (w.Raised() || w.Cleared >= seconds(d.crew.burning))
	})
	return c
}

// span is a time of a day.
type span struct{ from, to time.Duration }

// hangs are the times for which a side of the burden hung for long, from the first ore to the burn-down.
func (c *crew) hangs() (all []span) {
	var on span
	is := false
	for _, t := range c.trace {
		at := seconds(t.seconds)
		counts := t.Hangs && c.firstOre > 0 && t.seconds >= c.firstOre && (c.burning == 0 || t.seconds <= c.burning)
		switch {
		case counts && !is:
			on, is = span{at, at}, true
		case counts:
			on.to = at
		case is:
			is = false
			if on.to-on.from >= longHang {
				all = append(all, on)
			}
		}
	}
	return all
}
