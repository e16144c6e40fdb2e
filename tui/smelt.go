package tui

import (
	"slices"
	"time"

	"chargehand/model"
	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/fold"
	"chargehand/model/solve"
)

// rights is what may be keyed into a smelt.
type rights int

const (
	lookOnly rights = iota // the demo
	mendable               // imported, or closed: weigh, note, cross out, change
	own                    // everything
)

// smelt is one opened smelt: its entries, kept ones first and then those handed
// over and not yet acknowledged, and what is read from them.
type smelt struct {
	id      string
	demo    bool
	entries []entry.Entry
	kept    int // how many of the entries are kept
	lines   []fold.Line
	phase   entry.Phase     // by all that is known
	turned  time.Duration   // when it began
	read    figure.Reading  // of this moment, or of the end of a smelt that is over
	reading figure.Reading  // the same with the solver's figures, once it has any
	turn    uint64          // how often the entries were read anew
	charges []figure.Charge // every one that is known, also after the moment shown
	watch   watch
	// What the solver made of the entries, as they were read at some turn; 0 for
	// none yet.
	solution   solve.Solution
	solvedTurn uint64
	past       bool   // one of its moments shown again, as known by one entry
	known      uint64 // by which, when it is past
}

// opened makes a smelt of entries as they stand in the book.
func opened(id string, kept []entry.Entry, demo bool, now entry.Stamp) smelt {
	s := smelt{id: id, demo: demo, entries: kept, kept: len(kept)}
	return s.refold(now).watched()
}

// is tells whether there is a smelt at all.
func (s smelt) is() bool { return s.id != "" }

// light is the smelt's first event.
func (s smelt) light() entry.Light { return s.reading.Light }

// rights of the person at the keys.
func (s smelt) rights() rights {
	switch l := s.light(); {
	case !s.is() || s.demo || l.Invented:
		return lookOnly
	case l.Imported || s.phase == entry.Closed:
		return mendable
	}
	return own
}

// running tells whether the smelt's clock still runs.
func (s smelt) running() bool { return !s.past && s.rights() == own && !s.phase.Over() }

// refold reads the entries anew.
func (s smelt) refold(now entry.Stamp) smelt {
	s.lines = fold.Lines(s.entries, fold.All)
	s.turn++
	return s.readAt(s.clock(now))
}

// at reads the same entries at another moment. Only a running smelt changes
// with time; the others stand at their end.
func (s smelt) at(now entry.Stamp) smelt {
	if !s.running() {
		return s
	}
	if s = s.readAt(s.clock(now)); s.stale() {
		s = s.watched()
	}
	return s
}

func (s smelt) readAt(at time.Duration) smelt {
	s.read = model.Read(s.entries, fold.All, at)
	s.reading = s.read // for the rights
	s.phase, s.turned, s.charges = s.read.Phase, s.read.Since, s.read.Charges
	if !s.running() {
		s.read = s.ended()
	}
	s.reading = s.filled()
	return s
}

// ended is the reading of a smelt whose clock stands: at its end, with what was
// weighed afterwards; of the one to look at, in its main burn, where there is
// most to see.
func (s smelt) ended() figure.Reading {
	r := model.AtEnd(s.entries)
	if n := len(r.Charges); s.demo && n > 2 {
		seen := r.Charges[n*2/3]
		return model.Read(s.entries, fold.All, seen.At+r.Usual/2)
	}
	return r
}

// breath is how far an entry's own time may lie past the reading of the clocks
// that came with its key: both are cut to milliseconds, one by the writer.
const breath = 10 * time.Millisecond

// clock is the smelt's clock at a reading of the clocks, and not before an act
// keyed at that very moment.
func (s smelt) clock(now entry.Stamp) time.Duration {
	at := fold.ElapsedAt(s.entries, now)
	for _, l := range s.lines {
		if l.At > at && l.At <= at+breath {
			at = l.At
		}
	}
	return at
}

// with adds an entry that was just handed over, under the next number.
func (s smelt) with(e entry.Entry) smelt {
	e.Seq = s.nextSeq()
	s.entries = append(slices.Clone(s.entries), e)
	return s
}

func (s smelt) nextSeq() uint64 {
	if len(s.entries) == 0 {
		return 1
	}
	return s.entries[len(s.entries)-1].Seq + 1
}

// acknowledged puts a kept entry in the place of the one handed over. What is
// still waiting is numbered on from the last kept one.
func (s smelt) acknowledged(e entry.Entry) smelt {
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

// without drops an entry that was refused.
func (s smelt) without(local string) smelt {
	s.entries = slices.DeleteFunc(slices.Clone(s.entries), func(e entry.Entry) bool {
		return e.Seq >= s.nextKept() && e.Local == local
	})
	return s.renumbered()
}

func (s smelt) nextKept() uint64 {
	if s.kept == 0 {
		return 1
	}
	return s.entries[s.kept-1].Seq + 1
}

// renumbered gives the waiting entries the numbers they will have, and points
// what speaks of one of them at its number.
func (s smelt) renumbered() smelt {
	next := s.nextKept()
	for i := s.kept; i < len(s.entries); i++ {
		s.entries[i].Seq = next
		next++
	}
	seqOf := func(local string) (uint64, bool) {
		for i := len(s.entries) - 1; i >= 0; i-- {
			if s.entries[i].Local == local {
				return s.entries[i].Seq, true
			}
		}
		return 0, false
	}
	for i := s.kept; i < len(s.entries); i++ {
		s.entries[i] = aimed(s.entries[i], seqOf)
	}
	return s
}

// ref names an entry of this smelt, by its own name too until it is kept.
func (s smelt) ref(seq uint64) entry.Ref {
	for i := s.kept; i < len(s.entries); i++ {
		if s.entries[i].Seq == seq {
			return entry.Ref{Seq: seq, Local: s.entries[i].Local}
		}
	}
	return entry.Ref{Seq: seq}
}

// waits tells whether an entry is not yet kept.
func (s smelt) waits(seq uint64) bool { return seq >= s.nextKept() }

// line is the line of an entry.
func (s smelt) line(seq uint64) (fold.Line, bool) {
	i, ok := slices.BinarySearchFunc(s.lines, seq, func(l fold.Line, q uint64) int {
		switch {
		case l.Seq() < q:
			return -1
		case l.Seq() > q:
			return 1
		}
		return 0
	})
	if !ok {
		return fold.Line{}, false
	}
	return s.lines[i], true
}

// wallOf is the wall time of a line, in the smelt's own offset.
func (s smelt) wallOf(l fold.Line) time.Time { return s.reading.Wall(l.At) }

// lastAct is the last act in force: what the keys about the last act speak of. A
// recipe is none: the arrows that changed it change it back, and they are often
// pressed just after a charge.
func (s smelt) lastAct() (fold.Line, bool) {
	for i := len(s.lines) - 1; i >= 0; i-- {
		if l := s.lines[i]; !l.Struck() && entry.IsAct(l.Event) && l.Event.Kind() != entry.KindRecipe {
			return l, true
		}
	}
	return fold.Line{}, false
}

// recipe is the recipe in force with its ore, also while ore is held back.
func (s smelt) recipe() entry.Parts {
	if !s.reading.OreHeld && !s.reading.LastOre {
		ps := make(entry.Parts, len(s.reading.Next))
		for i, p := range s.reading.Next {
			ps[i] = p.Part
		}
		return ps
	}
	parts, last := s.light().Recipe, time.Duration(-1)
	for _, l := range s.lines {
		if r, ok := l.Event.(entry.Recipe); ok && !l.Struck() && l.At >= last && len(r.Ramp) == 0 {
			parts, last = r.Next, l.At
		}
	}
	return slices.Clone(parts)
}

// measure is the measure in which a material goes in: that of the recipe, else
// the first one named for it.
func (s smelt) measure(w entry.What) (entry.Measure, bool) {
	name := ""
	for _, p := range s.recipe() {
		if p.What == w && p.Measure != "" {
			name = p.Measure
			break
		}
	}
	for _, m := range s.reading.Measures {
		if m.What == w && (name == "" || m.Name == name) {
			return m, true
		}
	}
	return entry.Measure{}, false
}
