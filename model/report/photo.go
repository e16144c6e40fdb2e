package report

import (
	"encoding/base64"
	"time"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/model/session"
	"chargehand/model/words"
)

// Taken is a photo for the page: when it was taken, by the digits of the smelt's wall
// clock, and the picture as JPEG.
type Taken struct {
	At   time.Time
	JPEG []byte
}

// Photo is one in the page.
type Photo struct{ Time, Says, Data string }

// Around is from when to when photos belong to a smelt, by the digits of its wall clock:
// from the evening before it was lit to two days after its end.
func Around(s session.Session) (from, to time.Time) {
	r := s.Overview().Whole.Reading()
	lit := fold.Digits(r.Lit)
	return lit.Add(-12 * time.Hour), lit.Add(r.At + 48*time.Hour)
}

// photos are those of the page, each with what was keyed last before it.
func photos(s session.Session, taken []Taken, o Options) (all []Photo) {
	lit := fold.Digits(s.Reading().Lit)
	lines := inOrder(s)
	for _, t := range taken {
		at := t.At.Sub(lit)
		last := ""
		for _, l := range lines {
			if l.At <= at && at-l.At <= within && !l.Struck() && l.Event != nil && entry.IsAct(l.Event) && !hidden(l.Event, o) {
				last = clock(s, l.At) + " " + words.Units{}.Event(l.Event)
			}
		}
		all = append(all, Photo{Time: clock(s, at), Says: words.PhotoAfter(last), Data: base64.StdEncoding.EncodeToString(t.JPEG)})
	}
	return all
}
