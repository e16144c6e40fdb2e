package main

import (
	"fmt"
	"strings"
	"time"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/model/words"
)

// stillRunning is how long after its last entry a smelt is taken to go on, when
// nobody said that it is over. Longer than any pause in a published log.
const stillRunning = 12 * time.Hour

// momentOf reads a moment on the smelt's clock: +1h20m since light, HH:MM[:SS]
// on the smelt's own day (the first such time after light), or RFC 3339. None
// is now for a smelt that runs, and its end for one that is over.
func momentOf(s string, entries []entry.Entry, now entry.Stamp) (time.Duration, error) {
	if s == "" {
		return defaultMoment(entries, now), nil
	}
	lit := fold.Fold(entries, fold.All, 0).Lit
	if rest, ok := strings.CutPrefix(s, "+"); ok {
		d, err := time.ParseDuration(rest)
		if err != nil || d < 0 {
			return 0, wrongUse{fmt.Errorf("%s", words.BadMoment(s))}
		}
		return d, nil
	}
	if t, err := time.Parse(time.RFC3339, s); err == nil {
		return t.Sub(lit), nil
	}
	for _, form := range []string{"15:04:05", "15:04"} {
		t, err := time.Parse(form, s)
		if err != nil {
			continue
		}
		at := time.Date(lit.Year(), lit.Month(), lit.Day(), t.Hour(), t.Minute(), t.Second(), 0, lit.Location())
		if at.Before(lit) {
			at = at.AddDate(0, 0, 1)
		}
		return at.Sub(lit), nil
	}
	return 0, wrongUse{fmt.Errorf("%s", words.BadMoment(s))}
}

func defaultMoment(entries []entry.Entry, now entry.Stamp) time.Duration {
	end := fold.End(entries)
	s := fold.Fold(entries, fold.All, fold.Latest(entries))
	over := s.Phase == entry.Extracted || s.Phase == entry.Closed
	at := fold.ElapsedAt(entries, now)
	if over || s.Light.Imported || s.Light.Invented || at < end || at-end > stillRunning {
		return end
	}
	return at
}
