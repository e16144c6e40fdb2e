package fold

import (
	"reflect"
	"slices"
	"time"

	"chargehand/model/entry"
)

// All as the known entry of a fold stands for every entry there is.
const All = ^uint64(0)

// Line is one entry with what became of it: the event and time in force after
// amendments, and what struck or amended it.
type Line struct {
	Entry     entry.Entry   // as kept
	Event     entry.Event   // in force
	At        time.Duration // when it happened, on the smelt's clock, in force
	Accepted  time.Duration // when it was taken down, on the smelt's clock
	Uncertain time.Duration
	Remark    entry.LevelRemark // of a charge: what was said of the level after it, whenever
	StruckBy  uint64            // the entry that crossed it out, 0 for none
	AmendedBy uint64            // the entry whose amendment holds, 0 for none
}

// Seq is the entry's sequence.
func (l Line) Seq() uint64 { return l.Entry.Seq }

// Struck tells whether the line is crossed out.
func (l Line) Struck() bool { return l.StruckBy != 0 }

// Late tells whether the line was taken down more than a minute after it
// happened.
func (l Line) Late() bool { return l.Entry.Boot != "" && l.Accepted-l.At > time.Minute }

// change is what became of an entry that others speak of. The places are those of
// the entries that did it, -1 for none.
type change struct {
	event                         entry.Event
	uncertain                     time.Duration
	remark                        entry.LevelRemark
	struckBy, amendedBy, remarkBy int
}

// changed is the change of an entry, begun when there is none yet.
func (j Journal) changed(changes map[int]*change, i int) *change {
	c := changes[i]
	if c == nil {
		e := &j.records.At(i).entry
		c = &change{event: e.Event, uncertain: e.Uncertain, struckBy: -1, amendedBy: -1, remarkBy: -1}
		changes[i] = c
	}
	return c
}

func (j Journal) eventOf(i int, changes map[int]*change) entry.Event {
	if c := changes[i]; c != nil {
		return c.event
	}
	return j.records.At(i).entry.Event
}

// resolve works out what strikes and amendments did, among the first n entries.
//
// From the last backwards: an act about an act has a higher sequence than its target,
// so whether it holds is settled before it is applied. Of several about one target
// the last holds.
func (j Journal) resolve(n int, acts []int) map[int]*change {
	changes := map[int]*change{}
	settled := map[int]bool{}
	order := slices.Clone(acts)
	for k := len(order) - 1; k >= 0; k-- {
		by := order[k]
		if c := changes[by]; c != nil && c.struckBy >= 0 {
			continue
		}
		// An entry can only speak of those before it, and be spoken of once.
		aim := func(r entry.Ref) (int, bool) {
			t, ok := j.place(r.Seq)
			if !ok || t >= by || settled[t] {
				return 0, false
			}
			settled[t] = true
			return t, true
		}
		switch ev := j.eventOf(by, changes).(type) {
		case entry.Strike:
			if t, ok := aim(ev.Target); ok {
				j.changed(changes, t).struckBy = by
			}
		case entry.Amend:
			t, ok := aim(ev.Target)
			if !ok {
				continue
			}
			c := j.changed(changes, t)
			c.amendedBy = by
			if !ev.Happened.IsZero() {
				c.uncertain = ev.Uncertain
			}
			if ev.Event == nil {
				continue
			}
			c.event = ev.Event
			if first, lit := j.records.At(t).entry.Event.(entry.Light); lit {
				c.event = lightAmended(first, ev.Event)
			}
			switch c.event.(type) {
			case entry.Strike, entry.Amend: // it has become an act itself
				if at, is := slices.BinarySearch(order[:k], t); !is {
					order = slices.Insert(order, at, t)
					k++
				}
			}
		}
	}
	return changes
}

// happened is when an entry happened, counted from the first acceptance, by the
// amendment of its time that holds.
func (j Journal) happened(i int, c *change, changes map[int]*change) time.Duration {
	if c.amendedBy >= 0 {
		by := j.records.At(c.amendedBy)
		if a, ok := j.eventOf(c.amendedBy, changes).(entry.Amend); ok && !a.Happened.IsZero() {
			if i == 0 && j.ofLog() {
				return j.amendedLight(a.Happened)
			}
			return by.clock.when(by.entry, by.accepted, a.Happened, a.Uncertain > 0) - by.clock.day
		}
	}
	return j.records.At(i).at
}

// remark gives each charge what was said of the level after it. It counts whenever it
// was said, among the first n entries; of several the last one holds.
func (j Journal) remark(n int, levels []int, changes map[int]*change, lit time.Duration) {
	type said struct {
		Line
		by int
	}
	var all []said
	say := func(i int, l Line) {
		if _, ok := l.Event.(entry.Level); ok {
			all = append(all, said{l, i})
		}
	}
	for _, i := range levels {
		if changes[i] == nil {
			say(i, j.records.At(i).base(lit))
		}
	}
	for i, c := range changes {
		if c.struckBy < 0 {
			l := j.records.At(i).base(lit)
			l.Event, l.At = c.event, j.happened(i, c, changes)-lit
			say(i, l)
		}
	}
	slices.SortFunc(all, func(a, b said) int { return earlier(a.Line, b.Line) })
	for _, s := range all {
		ev := s.Event.(entry.Level)
		if t, ok := j.place(ev.Charge.Seq); ok && t < n {
			c := j.changed(changes, t)
			c.remark, c.remarkBy = ev.Remark, s.by
		}
	}
}

// same tells whether two values are alike.
func same(a, b entry.Entry) bool {
	if !a.Happened.Equal(b.Happened) || !a.Kept.Equal(b.Kept) {
		return false
	}
	a.Happened, b.Happened, a.Kept, b.Kept = time.Time{}, time.Time{}, time.Time{}, time.Time{}
	return reflect.DeepEqual(a, b)
}
