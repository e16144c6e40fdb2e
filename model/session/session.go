// Package session is one smelt as it is worked on: its entries and everything
// that follows from them, as one pure value. A screen, Replay, the command line
// and whatever looks ahead use it alike; only the clock and the source of the
// entries differ.
//
// Open takes the entries that are kept. Add, Keep and Drop change them, Tick and
// MoveTo the moment, AsOf what is known of it; each gives a new Session and
// leaves the old one as it was. Reading, Warnings, Cautions and Line tell of a
// Session; they depend on the entries, on what is known of them, on the moment
// and on what the shaft solver has said, and on nothing else.
//
// The shaft solver is slower than a key. Job says what there is to solve,
// Job.Run solves it wherever the caller likes, and Solved takes the Result in.
// Until then the figures of the solver are marked as being worked out.
package session

import (
	"time"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/fold"
	"chargehand/model/learn"
	"chargehand/model/ore"
	"chargehand/model/solve"
)

// Session is one smelt at a moment. The zero Session is no smelt.
type Session struct {
	id          string
	journal     fold.Journal // the kept entries first, then those that wait
	kept        int          // how many are kept
	checkpoints *checkpoints // where the rules and the state once stood, for all Sessions that came of one Open
	demo        bool
	watched     bool
	past        bool          // another moment than now, as known by one entry
	known       uint64        // by which, when it is past
	at          time.Duration // the moment asked for
	ore         figure.Figure // kg dry, of the whole smelt, where that is known; see Knowing
	taught      learn.History // what the house's smelts teach; see Taught
	assayed     []ore.Assayed // what the house's assays say; see Assayed
	solver      solver
	lost        []entry.Gap
	seen        *seen // what follows from the entries and the moment, once asked for
}

// solver is what the shaft solver has said.
type solver struct {
	solution solve.Solution
	of       uint64  // a hash of what it is of; see Session.version
	told     bool    // it has said anything at all
	failed   uint64  // a hash of that at which it broke down
	err      error   // and how
	history  history // what it saw on the way
}

// Option is a way to open a smelt.
type Option func(*Session)

// ToLookAt opens a smelt that nothing is keyed into: its clock stands in its main
// burn, where there is most to see.
func ToLookAt(s *Session) { s.demo = true }

// Watched opens a smelt that another program keeps: it goes on, and nothing is keyed
// into it here.
func Watched(s *Session) { s.watched = true }

// Lacking opens a smelt of which entries are lost.
func Lacking(lost ...entry.Gap) Option { return func(s *Session) { s.lost = lost } }

// Open gives the smelt of a stream from its entries, which are kept ones, in the
// order of their sequence. Its clock stands at the last of them until it is moved;
// that of a smelt which is over or was imported stands at its end for good.
func Open(id string, kept []entry.Entry, opts ...Option) Session {
	s := Session{id: id, journal: fold.JournalOf(kept), kept: len(kept), known: fold.All, checkpoints: newCheckpoints()}
	for _, o := range opts {
		o(&s)
	}
	s.at = s.journal.AsKnown(fold.All).Latest()
	return s.anew()
}

// anew forgets what was seen of the entries before.
func (s Session) anew() Session {
	s.seen = new(seen)
	return s
}

// ID is the name of the smelt's stream; empty for no smelt.
func (s Session) ID() string { return s.id }

// Is tells whether there is a smelt at all.
func (s Session) Is() bool { return s.id != "" }

// ToLook tells whether it was opened ToLookAt.
func (s Session) ToLook() bool { return s.demo }

// Watched tells whether it was opened Watched.
func (s Session) Watched() bool { return s.watched }

// Lost are the places where entries of it are lost, in order: what the Session says
// lacks them.
func (s Session) Lost() []entry.Gap { return s.lost }

// Past tells whether this is another moment of the smelt than its own now.
func (s Session) Past() bool { return s.past }

// Len is how many entries there are, kept or not.
func (s Session) Len() int { return s.journal.Len() }

// Kept is how many of them are kept.
func (s Session) Kept() int { return s.kept }

// LastEntry is the last entry, and whether there is one.
func (s Session) LastEntry() (entry.Entry, bool) {
	n := s.Len()
	if n == 0 {
		return entry.Entry{}, false
	}
	return s.journal.Entry(n - 1), true
}

// Entries are all entries, kept ones first, in order: a list of its own.
func (s Session) Entries() []entry.Entry {
	es := make([]entry.Entry, s.Len())
	for i := range es {
		es[i] = s.journal.Entry(i)
	}
	return es
}
