package why

import (
	"slices"
	"time"

	"chargehand/model/entry"
	"chargehand/model/session"
)

// Keyed is an entry at its moment, on the smelt's clock.
type Keyed struct {
	At    time.Duration
	Entry entry.Entry // with the event in force
}

// of is what holds of a smelt, in order: nothing crossed out, all as last amended.
func of(s session.Session) (all []Keyed) {
	irons := s.Irons()
	for l := range s.Lines() {
		if k := l.Entry.Kind(); l.Event == nil || l.Struck() || k == entry.KindStrike || k == entry.KindAmend {
			continue
		}
		e := l.Entry
		e.Event = l.Event
		all = append(all, Keyed{l.At, irons.Into(e)})
	}
	slices.SortStableFunc(all, byTime)
	return all
}

func byTime(a, b Keyed) int { return int(a.At - b.At) }

// entries are a smelt of its own made of them: numbered anew, all taken down when it happened.
func entries(all []Keyed) []entry.Entry {
	if len(all) == 0 {
		return nil
	}
	lit := all[0].Entry.Happened
	number := map[uint64]uint64{}
	for i, k := range all {
		number[k.Entry.Seq] = uint64(i + 1)
	}
	es := make([]entry.Entry, 0, len(all))
	for i, k := range all {
		e := k.Entry
		e.Seq, e.Happened, e.Kept, e.Boot, e.Mono = uint64(i+1), lit.Add(k.At-all[0].At), lit.Add(k.At-all[0].At), "why", time.Hour+k.At-all[0].At
		if l, ok := e.Event.(entry.Level); ok {
			l.Charge = entry.Ref{Seq: number[l.Charge.Seq]}
			e.Event = l
		}
		es = append(es, e)
	}
	return es
}
