package fold

import (
	"cmp"
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
	StruckBy  uint64 // the entry that crossed it out, 0 for none
	AmendedBy uint64 // the entry whose amendment holds, 0 for none
}

// Seq is the entry's sequence.
func (l Line) Seq() uint64 { return l.Entry.Seq }

// Struck tells whether the line is crossed out.
func (l Line) Struck() bool { return l.StruckBy != 0 }

// Late tells whether the line was taken down more than a minute after it
// happened.
func (l Line) Late() bool { return l.Entry.Boot != "" && l.Accepted-l.At > time.Minute }

// Lines gives every entry up to known, in the order of their sequence, with
// what became of it. The entries are those of one stream, in order.
func Lines(entries []entry.Entry, known uint64) []Line {
	entries = upTo(entries, known)
	lines := make([]Line, len(entries))
	index := make(map[uint64]int, len(entries))
	for i, e := range entries {
		lines[i] = Line{Entry: e, Event: e.Event, Uncertain: e.Uncertain}
		index[e.Seq] = i
	}
	// From the last backwards: an act about an act has a higher sequence than
	// its target, so whether it holds is settled before it is applied. Of
	// several about one target the last holds.
	settled := make(map[uint64]bool)
	for i := len(lines) - 1; i >= 0; i-- {
		if lines[i].Struck() {
			continue
		}
		switch ev := lines[i].Event.(type) {
		case entry.Strike:
			if t, ok := aim(index, ev.Target, lines[i].Seq(), settled); ok {
				lines[t].StruckBy = lines[i].Seq()
			}
		case entry.Amend:
			if t, ok := aim(index, ev.Target, lines[i].Seq(), settled); ok {
				lines[t].AmendedBy = lines[i].Seq()
				if ev.Event != nil {
					lines[t].Event = ev.Event
				}
				if !ev.Happened.IsZero() {
					lines[t].Uncertain = ev.Uncertain
				}
			}
		}
	}
	placeOnClock(lines, index)
	return lines
}

// aim finds the target of a strike or an amendment, once. An entry can only
// speak of those before it.
func aim(index map[uint64]int, r entry.Ref, by uint64, settled map[uint64]bool) (int, bool) {
	t, ok := index[r.Seq]
	if !ok || r.Seq >= by || settled[r.Seq] {
		return 0, false
	}
	settled[r.Seq] = true
	return t, true
}

// inForce keeps the lines that hold, in the order in which they happened.
func inForce(lines []Line) []Line {
	held := make([]Line, 0, len(lines))
	for _, l := range lines {
		switch l.Event.(type) {
		case nil, entry.Strike, entry.Amend:
			continue
		}
		if !l.Struck() {
			held = append(held, l)
		}
	}
	slices.SortStableFunc(held, func(a, b Line) int {
		return cmp.Or(cmp.Compare(a.At, b.At), cmp.Compare(a.Seq(), b.Seq()))
	})
	return held
}

// InForce gives the lines that hold among the entries up to known, in the
// order in which they happened.
func InForce(entries []entry.Entry, known uint64) []Line {
	return inForce(Lines(entries, known))
}

func upTo(entries []entry.Entry, known uint64) []entry.Entry {
	n, _ := slices.BinarySearchFunc(entries, known, func(e entry.Entry, k uint64) int {
		if e.Seq <= k {
			return -1
		}
		return 1
	})
	return entries[:n]
}
