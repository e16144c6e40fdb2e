package session

import (
	"slices"
	"time"

	"chargehand/model/entry"
	"chargehand/model/fold"
)

// Overview is the whole way of a smelt, as it is known now: what a time line shows,
// and the moments that one can step to.
type Overview struct {
	Span    time.Duration // from light to its end, or to now
	Only    bool          // when things were known is not recorded
	Charges []time.Duration
	Taps    []time.Duration
	Turns   []fold.Turn     // of the phase
	Acts    []time.Duration // when what a person did happened, in order
	Taken   []time.Duration // when it was taken down, in order
	// Whole is the smelt at the end of its span: its warnings are all there are,
	// once it is solved those of the solver too.
	Whole Session
}

// Overview gives the way of a smelt.
func (s Session) Overview() Overview {
	c := Overview{Span: s.End()}
	if s.Running() {
		c.Span = s.At()
	}
	c.Only = s.KnownAt(c.Span) == fold.All
	c.Whole = s.AsOf(fold.All, c.Span)
	for _, ch := range c.Whole.Reading().Charges {
		c.Charges = append(c.Charges, ch.At)
	}
	state := c.Whole.view().moment.timeline.State
	c.Turns = state.Turns
	for l := range state.Lines.All() {
		if l.Event.Kind() == entry.KindTap {
			c.Taps = append(c.Taps, l.At)
		}
	}
	for l := range s.Lines() {
		if k := kindOf(l.Event); entry.IsAct(l.Event) || k == entry.KindLight || k == entry.KindStrike || k == entry.KindAmend {
			c.Taken = append(c.Taken, l.Accepted)
			c.Acts = append(c.Acts, l.At)
		}
	}
	slices.Sort(c.Acts)
	slices.Sort(c.Taken)
	return c
}

func kindOf(ev entry.Event) entry.Kind {
	if ev == nil {
		return ""
	}
	return ev.Kind()
}
