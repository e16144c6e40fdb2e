package session

import (
	"time"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/fold"
)

// breath is how far an entry's own time may lie past the reading of the clocks
// that came with its key: both are cut to milliseconds, one by the writer.
const breath = 10 * time.Millisecond

// Clock is the smelt's clock at a reading of the clocks.
func (s Session) Clock(now entry.Stamp) time.Duration { return s.journal.Elapsed(now) }

// Off is by how much the smelt's own wall time is ahead of the clock of the machine,
// which a person said stands wrong; zero when nobody did.
func (s Session) Off(now entry.Stamp) time.Duration {
	if !s.journal.AsKnown(fold.All).About().Righted {
		return 0
	}
	return s.Reading().Wall(s.Clock(now)).Sub(now.Wall)
}

// Stepped is how far the wall times of the smelt lie before the clock of the machine,
// which was set since.
func (s Session) Stepped(now entry.Stamp) time.Duration {
	return now.Wall.Sub(s.Reading().Wall(s.Clock(now)))
}

// ShiftTo is by how much all since the machine last started has to move, so that it
// is the right time now; see fold.Journal.
func (s Session) ShiftTo(now entry.Stamp, right time.Time) (time.Duration, bool) {
	return s.journal.ShiftTo(now, right)
}

// Tick moves on to a reading of the clocks, and not to before an act keyed at that
// very moment. The clock of a smelt that does not run moves only to what came in
// since.
func (s Session) Tick(now entry.Stamp) Session {
	if s.past || !s.Running() && s.view().latest <= s.at {
		return s
	}
	at := s.Clock(now)
	for l := range s.view().known.Between(at, at+breath) {
		at = l.At
	}
	return s.MoveTo(at)
}

// MoveTo moves to a moment on the smelt's clock. The Reading of one whose clock
// stands is that of its end all the same.
func (s Session) MoveTo(at time.Duration) Session {
	if at == s.at {
		return s
	}
	s.at = at
	return s.anew()
}

// AsOf gives another moment of the smelt, as known by one entry (fold.All for
// every one). The solver has said nothing of it yet.
func (s Session) AsOf(known uint64, at time.Duration) Session {
	s.past, s.solver = true, solver{}
	s.known, s.at = known, at
	return s.anew()
}

// Knowing is a moment of the past that knows how much ore the whole smelt took, by the
// reading of its end.
func (s Session) Knowing(end *figure.Reading) Session {
	s.ore = end.Figure(figure.OreDry)
	return s.anew()
}

// After takes over what the solver said of an earlier state of the same smelt,
// marked as being worked out where it is not of this one.
func (s Session) After(was Session) Session {
	if was.id != s.id {
		return s
	}
	s.solver = was.solver
	return s.anew()
}

// KnownAt is the last entry that had been taken down by a moment: what the smelt
// knew as it was seen. It is fold.All where that is not recorded.
func (s Session) KnownAt(at time.Duration) uint64 { return s.journal.KnownAt(at) }

// Ahead is a copy that runs ahead: what would be if these entries came, at a
// later moment. Nothing of it is ever kept.
func (s Session) Ahead(by time.Duration, might ...entry.Entry) Session {
	for _, e := range might {
		s, _ = s.Add(e)
	}
	return s.AsOf(fold.All, s.At()+by)
}

// At is the moment on the smelt's clock that the Reading is of.
func (s Session) At() time.Duration { return s.Reading().At }

// End is when the last act of the smelt happened.
func (s Session) End() time.Duration { return s.journal.AsKnown(fold.All).End() }

// Running tells whether the smelt's clock runs: it is at work here, and not over.
func (s Session) Running() bool { return !s.past && s.Own() && !s.Phase().Over() }

// Own tells whether the smelt is one that is or was run with this program: neither
// imported nor invented, and not closed.
func (s Session) Own() bool {
	l := s.Light()
	return s.Is() && !s.demo && !l.Invented && !l.Imported && s.Phase() != entry.Closed
}
