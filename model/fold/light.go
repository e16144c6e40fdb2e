package fold

import (
	"time"

	"chargehand/model/entry"
	"chargehand/model/grow"
)

// lightAmended is a light after an amendment: the furnace, measures, lots, recipe and
// the like are put right, what the smelt is stays as it was lit. A light stays a light.
func lightAmended(first entry.Light, to entry.Event) entry.Light {
	l, ok := to.(entry.Light)
	if !ok {
		return first
	}
	l.UID, l.Solver = first.UID, first.Solver
	l.Practice, l.Rehearsal, l.Invented = first.Practice, first.Rehearsal, first.Invented
	l.Imported, l.Source, l.SourceHash = first.Imported, first.Source, first.SourceHash
	return l
}

// ofLog tells whether the first entry is of a log that was taken in: its times are
// those that stand in it, and no clock of a machine tells of them.
func (j Journal) ofLog() bool {
	return j.Len() > 0 && j.records.At(0).unbooted
}

// amendedLight is when a light began, counted from the first acceptance, by an
// amendment of its time. That of a log may be given its day so: then all rows of the
// log come along, and only what the time of the day differs by moves the light among
// them.
func (j Journal) amendedLight(to time.Time) time.Duration {
	first := j.records.At(0)
	return first.at + sameDay(Digits(to).Sub(Digits(first.entry.Happened)))
}

// redated is the records with the last one knowing by how much the days of the log are
// shifted now: what is keyed after it goes by the days as they are shown then.
func (j Journal) redated() grow.Pages[record] {
	n := j.Len()
	last, first, t := *j.records.At(n - 1), j.records.At(0), j.turned(n)
	if last.clock.day = 0; t.about.lit {
		last.clock.day = t.about.Lit.Sub(first.entry.Happened) - (t.lit - first.at)
	}
	records := j.records.Cut(n - 1)
	records.Append(last)
	return records
}

// Digits is a wall time by its digits alone, wherever it was: the times of a log keep
// them when its day becomes known.
func Digits(t time.Time) time.Time {
	_, offset := t.Zone()
	return t.Add(time.Duration(offset) * time.Second).UTC()
}

// sameDay is a span less its whole days, to the nearest.
func sameDay(d time.Duration) time.Duration {
	const day = 24 * time.Hour
	return d - d.Round(day)
}
