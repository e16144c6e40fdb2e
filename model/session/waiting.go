package session

import (
	"chargehand/model/entry"
	"chargehand/model/fold"
)

// Add adds an entry that was handed to the book and is not kept yet. It gets the
// number that it is going to have, and is found by its local id until it is kept.
func (s Session) Add(e entry.Entry) (Session, entry.Entry) {
	e.Seq = s.nextSeq()
	s.journal = s.grown(s.journal.With(e))
	return s.anew(), e
}

// Keep puts a kept entry in the place of the one that waited for it. One that is
// among the kept ones already, as after the smelt was read anew while the
// acknowledgement was on its way, changes nothing.
func (s Session) Keep(e entry.Entry) Session {
	if e.Seq < s.nextKept() {
		return s.Drop(e.Local)
	}
	return s.rest(func(w entry.Entry) bool { return w.Local != e.Local }, e)
}

// Drop takes out an entry that waited and was refused.
func (s Session) Drop(local string) Session {
	for i := s.kept; i < s.Len(); i++ {
		if s.journal.Entry(i).Local == local {
			return s.rest(func(w entry.Entry) bool { return w.Local != local })
		}
	}
	return s
}

// rest is the smelt with further entries kept, and of those that wait only some. They
// get the numbers that they are going to have, and what speaks of one of them points
// at its number.
func (s Session) rest(waits func(entry.Entry) bool, more ...entry.Entry) Session {
	was := s.journal
	waiting := make([]entry.Entry, 0, was.Len()-s.kept)
	for i := s.kept; i < was.Len(); i++ {
		if e := was.Entry(i); waits(e) {
			waiting = append(waiting, e)
		}
	}
	s.journal = was.Cut(s.kept)
	for _, e := range more {
		s.journal = s.journal.Again(e, was)
	}
	s.kept += len(more)
	for _, e := range waiting {
		e.Seq = s.nextSeq()
		s.journal = s.journal.Again(e.Aim(s.seqOf), was)
	}
	s.journal = s.grown(s.journal)
	return s.anew()
}

// grown is a journal with its entries placed by all that is known of the clocks.
func (s Session) grown(j fold.Journal) fold.Journal { return j.AsKnown(fold.All).Journal() }

// seqOf is the number of an entry by its local id.
func (s Session) seqOf(local string) (uint64, bool) {
	for i := s.Len() - 1; i >= 0; i-- {
		if e := s.journal.Entry(i); e.Local == local {
			return e.Seq, true
		}
	}
	return 0, false
}

func (s Session) nextSeq() uint64 { return s.seqAfter(s.Len()) }

func (s Session) nextKept() uint64 { return s.seqAfter(s.kept) }

func (s Session) seqAfter(n int) uint64 {
	if n == 0 {
		return 1
	}
	return s.journal.Entry(n-1).Seq + 1
}

// Waits tells whether an entry is not kept yet.
func (s Session) Waits(seq uint64) bool { return seq >= s.nextKept() }

// Ref names an entry of this smelt, by its local id too until it is kept.
func (s Session) Ref(seq uint64) entry.Ref {
	for i := s.kept; i < s.Len(); i++ {
		if e := s.journal.Entry(i); e.Seq == seq {
			return entry.Ref{Seq: seq, Local: e.Local}
		}
	}
	return entry.Ref{Seq: seq}
}
