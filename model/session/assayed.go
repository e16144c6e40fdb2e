package session

import (
	"hash/maphash"
	"time"

	"chargehand/model/fold"
	"chargehand/model/ore"
	"chargehand/model/solve"
)

// Assayed is the smelt with what the house's assays say of the iron of its ore, in the order in which they were
// written down: the solver takes an assay that came after the smelt was lit too. A moment of the past knows
// those that were known then.
func (s Session) Assayed(all []ore.Assayed) Session {
	s.assayed = all
	return s.anew()
}

// Irons is the iron of ore that was assayed by the moment of the Session.
func (s Session) Irons() solve.Irons { return s.ironsIn(s.view()) }

func (s Session) ironsIn(v *seen) solve.Irons {
	if len(s.assayed) == 0 {
		return nil
	}
	until, bounded := s.untilKnown(v)
	irons := solve.Irons{}
	for _, a := range s.assayed {
		if !bounded || !a.At.After(until) {
			irons[a.Lot] = a.Iron
		}
	}
	return irons
}

// untilKnown is until when things were known at the moment: to the last entry that is, and on to
// the moment itself where no other was written down before it.
func (s Session) untilKnown(v *seen) (until time.Time, bounded bool) {
	n := v.known.Len()
	if s.known == fold.All || n == 0 {
		return time.Time{}, false
	}
	until = s.journal.Entry(n - 1).Kept
	at := v.now.Wall(v.now.At)
	if n < s.Len() && s.journal.Entry(n).Kept.Before(at) {
		at = s.journal.Entry(n).Kept
	}
	if at.After(until) {
		until = at
	}
	return until, true
}

// keyOf is a hash of irons; 0 for none.
func (s Session) keyOf(irons solve.Irons) (key uint64) {
	for lot, iron := range irons { // in no order: their hashes are added up
		key += maphash.Comparable(s.checkpoints.seed, struct {
			lot  string
			iron float64
		}{string(lot), float64(iron)})
	}
	return key
}
