package logcsv

import "fmt"

// dates gives the cells of the date: the day of every row where the day is
// known, else the count of days where the clock does not tell, or nil where
// it always does.
func (t *table) dates() []string {
	cells := make([]string, len(t.rows))
	if !t.light.Undated {
		for i, l := range t.rows {
			cells[i] = l.at.Format(dateForm)
		}
		return cells
	}
	if len(t.rows) == 0 {
		return nil
	}
	var any bool
	day0 := Undated
	// A rehearsal has a clock of its own, far from where undated logs are counted from.
	if first := midnight(t.rows[0].at); first.Before(day0) || daysBetween(day0, first) > maxDays {
		day0 = first
	}
	var k calendar
	for i, l := range t.rows {
		day := daysBetween(day0, midnight(l.at))
		trial := k
		if told, _, fault := trial.next(clockOf(l.at), ""); fault != nil || told != day {
			cells[i], any = fmt.Sprintf("%s%d", dayWord, day+1), true
		}
		k = calendar{started: true, day: day, clock: clockOf(l.at)}
	}
	if !any {
		return nil
	}
	return cells
}
