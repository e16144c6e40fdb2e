package house

import (
	"time"

	"chargehand/model/entry"
)

// Drafted is something half typed, and when it was left so.
type Drafted struct {
	entry.Draft
	At time.Time
}

// Drafts are those that stand by the entries of the house, by the place in which they
// were typed: of one place the last holds, and nothing typed ends it.
func Drafts(entries []entry.Entry) map[string]Drafted {
	ds := map[string]Drafted{}
	for _, e := range entries {
		if d, ok := e.Event.(entry.Draft); ok {
			drafted(ds, Drafted{d, e.Happened})
		}
	}
	return ds
}

// drafted takes one more in.
func drafted(ds map[string]Drafted, d Drafted) {
	if len(d.Typed) == 0 {
		delete(ds, d.Place())
		return
	}
	ds[d.Place()] = d
}
