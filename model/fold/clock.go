package fold

import (
	"time"

	"chargehand/model/entry"
)

// placeOnClock sets when each line was accepted and when it happened on the
// smelt's own clock, which counts from light.
//
// Within one start of the machine the boot clock tells, so a stepped wall clock
// scrambles nothing. A later start is joined on by wall time, less what the
// wall clock had been stepped by; never before what was accepted already. A
// clock jump may shift a whole start (a board that woke with a wrong time).
// Entries without a boot clock (an imported log) go by wall time alone.
func placeOnClock(lines []Line, index map[uint64]int) {
	if len(lines) == 0 {
		return
	}
	shift := bootShifts(lines)
	zero := acceptedWall(lines[0].Entry)
	anchors := map[string]time.Duration{} // smelt clock at the start of each boot
	var last, stepped time.Duration       // last acceptance; how far the wall has been stepped by then
	for i := range lines {
		e := lines[i].Entry
		wall := acceptedWall(e).Sub(zero)
		at := wall
		if e.Boot != "" {
			anchor, seen := anchors[e.Boot]
			if !seen {
				anchor = max(wall-stepped+shift[e.Boot], last) - e.Mono
				anchors[e.Boot] = anchor
			}
			at = anchor + e.Mono
			stepped = wall - at
			last = at
		}
		lines[i].Accepted = at
		lines[i].At = lines[i].Accepted - acceptedWall(e).Sub(e.Happened)
	}
	for i := range lines {
		if by := lines[i].AmendedBy; by != 0 {
			a := lines[index[by]]
			if ev, ok := a.Event.(entry.Amend); ok && !ev.Happened.IsZero() {
				lines[i].At = a.Accepted - acceptedWall(a.Entry).Sub(ev.Happened)
			}
		}
	}
	lit := lines[0].At
	for i := range lines {
		lines[i].At -= lit
		lines[i].Accepted -= lit
	}
}

// acceptedWall is the wall time at which the entry was taken down. An entry of
// an imported log has none of its own; its happening stands for it, so that the
// log's own day is the smelt's day.
func acceptedWall(e entry.Entry) time.Time {
	if e.Boot == "" || e.Kept.IsZero() {
		return e.Happened
	}
	return e.Kept
}

// bootShifts adds up what the clock jumps in force say of each start.
func bootShifts(lines []Line) map[string]time.Duration {
	shift := map[string]time.Duration{}
	for _, l := range lines {
		j, ok := l.Event.(entry.ClockJump)
		if !ok || l.Struck() || j.ShiftMs == 0 {
			continue
		}
		boot := j.Boot
		if boot == "" {
			boot = l.Entry.Boot
		}
		shift[boot] += time.Duration(j.ShiftMs) * time.Millisecond
	}
	return shift
}

// ElapsedAt is the smelt's clock at a reading of the clocks: what a line taken
// down just then would be accepted at.
func ElapsedAt(entries []entry.Entry, now entry.Stamp) time.Duration {
	if len(entries) == 0 {
		return 0
	}
	next := entry.Entry{
		Seq: entries[len(entries)-1].Seq + 1, Happened: now.Wall, Kept: now.Wall,
		Boot: now.Boot, Mono: now.Mono,
	}
	lines := Lines(append(entries[:len(entries):len(entries)], next), All)
	return lines[len(lines)-1].Accepted
}

// KnownAt is the last entry that had been taken down by a moment of the smelt:
// what "as we saw it" knew, and its light at the least, which is taken down a
// breath after it begins. An imported log knows only its whole.
func KnownAt(entries []entry.Entry, at time.Duration) uint64 {
	var known uint64
	for _, l := range Lines(entries, All) {
		if l.Entry.Boot == "" {
			return All
		}
		if l.Accepted > at && known > 0 {
			break
		}
		known = l.Seq()
	}
	return known
}

// End is when the last act of the smelt happened: what is weighed, noted or
// mended afterwards is not of the smelt's own time.
func End(entries []entry.Entry) time.Duration {
	var end time.Duration
	for _, l := range InForce(entries, All) {
		if entry.TraitsOf(l.Event).AfterClose != entry.Yes {
			end = max(end, l.At)
		}
	}
	return end
}

// Latest is the last moment that any entry speaks of: everything has happened
// by then.
func Latest(entries []entry.Entry) time.Duration {
	var latest time.Duration
	for _, l := range Lines(entries, All) {
		latest = max(latest, l.At, l.Accepted)
	}
	return latest
}
