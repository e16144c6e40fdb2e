package session

import (
	"slices"
	"sync"
	"time"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/fold"
	"chargehand/model/rule"
	"chargehand/physics"
)

// seen is what follows from a Session, each part worked out when it is first
// asked for. Sessions of the same entries at the same moment share it.
type seen struct {
	once     sync.Once
	known    fold.Known
	irons    uint64          // a hash of what was assayed since
	latest   time.Duration   // the last moment that anything speaks of, of a smelt whose clock stands
	moment   moment          // that the reading is of
	now      *figure.Reading // of the moment asked for
	read     *figure.Reading // the same, or of the end where the clock stands; without the solver
	solved   sync.Once
	reading  *figure.Reading
	warned   sync.Once
	warnings []rule.Warning
}

// ofNone is what follows from no smelt. Nothing is ever filled in.
var ofNone = seen{now: new(figure.Reading), read: new(figure.Reading), reading: new(figure.Reading)}

func (s Session) view() *seen {
	v := s.seen
	if v == nil || !s.Is() {
		return &ofNone
	}
	v.once.Do(func() {
		v.known = s.journal.AsKnown(s.known)
		v.moment = s.to(v.known, s.at)
		v.now = s.reads(v.moment)
		v.read = v.now
		v.irons = s.keyOf(s.ironsIn(v))
		l := v.now.Light
		if runs := !s.demo && !l.Invented && !l.Imported && !v.now.Phase.Over(); !s.past && !runs {
			s.end(v)
		}
	})
	return v
}

// reads is the reading of a moment, without the solver.
func (s Session) reads(m moment) *figure.Reading {
	r := figure.WithLessons(figure.From(m.timeline.State), s.lessons(m))
	if s.Len() > 0 {
		r.Smelt = s.journal.Entry(0).Stream
	}
	return r
}

// end makes the reading that of a smelt whose clock stands: of its end, with what was
// weighed and said of it afterwards; of the one to look at, of its main burn.
func (s Session) end(v *seen) {
	v.latest = v.known.Latest()
	v.moment = s.to(v.known, v.known.End())
	r, after := s.reads(v.moment), s.reads(s.to(v.known, v.latest))
	r.Bloom, r.BloomNever, r.SlagWeighed = after.Bloom, after.BloomNever, after.SlagWeighed
	if !r.Phase.Over() { // closed without a word about the bloom
		r.Phase, r.Since = after.Phase, after.Since
	}
	if s.demo {
		v.moment = s.to(v.known, mostToSee(r))
		r = s.reads(v.moment)
	}
	v.read = r
}

// MostToSee is the moment of the smelt at which there is most to see.
func (s Session) MostToSee() time.Duration { return mostToSee(s.AsOf(fold.All, s.End()).view().now) }

// mostToSee is, of a smelt read at its end, when the last charge but one that
// held ore had burned for a while: the furnace is as full and as hot as it gets,
// and the next charge is near. Without ore it is that of the last charge but one,
// without charges the end.
func mostToSee(r *figure.Reading) time.Duration {
	at := r.At
	held, seen := 0, 0
	for i := len(r.Charges) - 1; i >= 0; i-- {
		c := r.Charges[i]
		ore := c.Ore.Known() && c.Ore.P50 > 0
		if ore {
			held++
		}
		if i+1 < len(r.Charges) && (ore && held == 2 || seen == 0) {
			at, seen = c.At+(r.Charges[i+1].At-c.At)*6/10, 1
		}
		if held == 2 {
			break
		}
	}
	return at
}

// HearthAt is how hot the hearth was at a moment, in Celsius, as the solver has it.
type HearthAt struct {
	At      time.Duration
	Celsius float64
}

// Hearths are those up to the moment that was solved, a minute apart; none before
// the solver has spoken, and none of the minutes that it could not work out.
func (s Session) Hearths() []HearthAt {
	var hs []HearthAt
	for _, g := range s.solver.history.seen {
		hs = append(hs, HearthAt{g.At, physics.ToCelsius(g.Hearth.P50)})
	}
	return hs
}

// Reading is everything that is known of the moment, the solver's figures among
// it. Until the solver has heard of the entries as they are, its figures are those
// of before and marked so.
func (s Session) Reading() *figure.Reading {
	v := s.view()
	if v == &ofNone {
		return v.reading
	}
	v.solved.Do(func() {
		v.reading = v.read
		defer func() {
			if s.ore.P50 > 0 {
				v.reading = figure.WithOre(v.reading, s.ore)
			}
		}()
		if !s.solver.told {
			return
		}
		solution := s.solver.solution
		solution.Known = v.read.Known
		if s.solver.of != s.version() {
			solution.Known = 0
		}
		v.reading = figure.WithSolution(v.read, solution)
	})
	return v.reading
}

// Lots are the lots that the smelt keeps copies of, in the order in which it was told of
// them: those it was lit with first.
func (s Session) Lots() []entry.Lot {
	all := slices.Clone(s.Light().Lots)
	for l := range s.Of(entry.KindLot) {
		all = append(all, l.Event.(entry.LotStored).Lot)
	}
	return all
}

// Warnings are all warnings up to the moment, in the order of their onset.
func (s Session) Warnings() []rule.Warning {
	v := s.view()
	v.warned.Do(func() {
		if m := v.moment; m.checkpoint != nil && m.timeline.Phase != "" {
			v.warnings = m.checkpoint.walker.Warnings(v.read.At, m.since)
		}
	})
	return v.warnings
}

// Standing are the warnings that stand, gravest first.
func (s Session) Standing() []rule.Warning { return rule.Active(s.Warnings()) }

// Stands tells whether a warning of one of these rules stands.
func (s Session) Stands(ids ...rule.ID) bool {
	for _, w := range s.Warnings() {
		for _, id := range ids {
			if w.Raised() && w.Rule == id {
				return true
			}
		}
	}
	return false
}

// Cautions are those that the person in charge has still to be shown, the most
// pressing first.
func (s Session) Cautions() []rule.Caution {
	v := s.view()
	if v.moment.timeline.Phase == "" {
		return nil
	}
	return v.moment.care.Due(v.read.By)
}

// Caution is the one to show the person in charge now, and whether there is one.
func (s Session) Caution() (rule.Caution, bool) {
	v := s.view()
	if v.moment.timeline.Phase == "" {
		return rule.Caution{}, false
	}
	return v.moment.care.Next(v.read.By, s.At())
}

// Light is the smelt's first event.
func (s Session) Light() entry.Light { return s.view().now.Light }

// Phase is the phase by all that is known at the moment asked for, and Since when
// it began. Of a smelt whose clock stands, Reading has that of its end.
func (s Session) Phase() entry.Phase { return s.view().now.Phase }

// Since is when the Phase began.
func (s Session) Since() time.Duration { return s.view().now.Since }

// Charges are all that are known, also those after the moment of the Reading
// where the smelt's clock stands.
func (s Session) Charges() []figure.Charge { return s.view().now.Charges }
