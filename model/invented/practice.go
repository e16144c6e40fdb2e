package invented

import (
	"time"

	"chargehand/model/entry"
)

// practiceEnds is where practice takes over from the invented smelt, on its own
// clock of the day: an hour into the main burn, with the next charge nearly due.
const practiceEnds = "2026-05-09T11:38:30+02:00"

// Act is one event of a practice smelt, and when it happened.
type Act struct {
	Event    entry.Event
	Happened time.Time
}

// Practice gives the beginning of a practice smelt: the invented one until an
// hour into its main burn, shifted so that it stands there now. The light, which
// is marked practice, and when it was lit come first, then what has been done
// since.
func Practice(now time.Time) (light entry.Light, lit time.Time, acts []Act, err error) {
	entries, err := Smelt()
	if err != nil {
		return light, lit, nil, err
	}
	ends, err := time.Parse(time.RFC3339, practiceEnds)
	if err != nil {
		return light, lit, nil, err
	}
	shift := now.Sub(ends)
	for _, e := range entries {
		if e.Kept.After(ends) {
			break
		}
		at := e.Happened.Add(shift).In(now.Location()).Truncate(time.Millisecond)
		if l, ok := e.Event.(entry.Light); ok {
			l.UID, l.Invented, l.Practice = "", false, true
			light, lit = l, at
			continue
		}
		acts = append(acts, Act{e.Event, at})
	}
	return light, lit, acts, nil
}
