package session

import (
	"slices"

	"chargehand/model/entry"
)

// Add adds an entry that was handed to the book and is not kept yet. It gets the
// number that it is going to have, and is found by its local id until it is kept.
func (s Session) Add(e entry.Entry) (Session, entry.Entry) {
	e.Seq = s.nextSeq()
	s.entries = append(s.entries[:len(s.entries):len(s.entries)], e)
	return s.anew(), e
}

// Keep puts a kept entry in the place of the one that waited for it. One that is
// among the kept ones already, as after the smelt was read anew while the
// acknowledgement was on its way, changes nothing.
func (s Session) Keep(e entry.Entry) Session {
	if e.Seq < s.nextKept() {
		return s.Drop(e.Local)
	}
	rest := make([]entry.Entry, 0, len(s.entries)+1)
	rest = append(append(rest, s.entries[:s.kept]...), e)
	for _, w := range s.entries[s.kept:] {
		if w.Local != e.Local {
			rest = append(rest, w)
		}
	}
	s.entries, s.kept = rest, s.kept+1
	return s.renumbered()
}

// Drop takes out an entry that waited and was refused.
func (s Session) Drop(local string) Session {
	waits := func(e entry.Entry) bool { return e.Local == local }
	if !slices.ContainsFunc(s.entries[s.kept:], waits) {
		return s
	}
	rest := slices.DeleteFunc(slices.Clone(s.entries[s.kept:]), waits)
	s.entries = append(s.entries[:s.kept:s.kept], rest...)
	return s.renumbered()
}

// renumbered gives the waiting entries the numbers that they are going to have,
// and points what speaks of one of them at its number.
func (s Session) renumbered() Session {
	next := s.nextKept()
	for i := s.kept; i < len(s.entries); i++ {
		s.entries[i].Seq = next
		next++
	}
	for i := s.kept; i < len(s.entries); i++ {
		s.entries[i] = s.entries[i].Aim(s.seqOf)
	}
	return s.anew()
}

// seqOf is the number of an entry by its local id.
func (s Session) seqOf(local string) (uint64, bool) {
	for _, e := range slices.Backward(s.entries) {
		if e.Local == local {
			return e.Seq, true
		}
	}
	return 0, false
}

func (s Session) nextSeq() uint64 {
	if len(s.entries) == 0 {
		return 1
	}
	return s.entries[len(s.entries)-1].Seq + 1
}

func (s Session) nextKept() uint64 {
	if s.kept == 0 {
		return 1
	}
	return s.entries[s.kept-1].Seq + 1
}

// Waits tells whether an entry is not kept yet.
func (s Session) Waits(seq uint64) bool { return seq >= s.nextKept() }

// Ref names an entry of this smelt, by its local id too until it is kept.
func (s Session) Ref(seq uint64) entry.Ref {
	for _, e := range s.entries[s.kept:] {
		if e.Seq == seq {
			return entry.Ref{Seq: seq, Local: e.Local}
		}
	}
	return entry.Ref{Seq: seq}
}
