package tui

import (
	"chargehand/model/entry"
	"chargehand/model/session"
)

// rights is what may be keyed into a smelt.
type rights int

const (
	lookOnly rights = iota // the demo
	mendable               // imported, or closed: weigh, note, cross out, change
	own                    // everything
)

// rightsIn are those of the person at the keys.
func rightsIn(s session.Session) rights {
	switch {
	case !s.Is() || s.ToLook() || s.Light().Invented:
		return lookOnly
	case !s.Own():
		return mendable
	}
	return own
}

// opened makes a smelt of entries as they stand in the book.
func opened(id string, kept []entry.Entry, demo bool, now entry.Stamp) session.Session {
	if demo {
		return session.Open(id, kept, session.ToLookAt)
	}
	return session.Open(id, kept).Tick(now)
}
