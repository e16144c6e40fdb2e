package fold

import (
	"cmp"
	"fmt"
	"slices"
	"testing"
	"time"

	gocmp "github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"

	"chargehand/model/entry"
)

// plainLines works out from scratch, in the plainest way, what became of every entry
// and where it stands on the clock: what a Journal has to give however it grew.
func plainLines(entries []entry.Entry) []Line {
	lines := make([]Line, len(entries))
	index := map[uint64]int{}
	for i, e := range entries {
		lines[i] = Line{Entry: e, Event: e.Event, Uncertain: e.Uncertain}
		index[e.Seq] = i
	}
	settled := map[uint64]bool{}
	aim := func(r entry.Ref, by uint64) (int, bool) {
		t, ok := index[r.Seq]
		if !ok || r.Seq >= by || settled[r.Seq] {
			return 0, false
		}
		settled[r.Seq] = true
		return t, true
	}
	for i := len(lines) - 1; i >= 0; i-- {
		if lines[i].Struck() {
			continue
		}
		switch ev := lines[i].Event.(type) {
		case entry.Strike:
			if t, ok := aim(ev.Target, lines[i].Seq()); ok {
				lines[t].StruckBy = lines[i].Seq()
			}
		case entry.Amend:
			if t, ok := aim(ev.Target, lines[i].Seq()); ok {
				lines[t].AmendedBy = lines[i].Seq()
				if _, lit := entries[t].Event.(entry.Light); ev.Event != nil && !lit { // a light stays one
					lines[t].Event = ev.Event
				}
				if !ev.Happened.IsZero() {
					lines[t].Uncertain = ev.Uncertain
				}
			}
		}
	}
	plainClock(lines, index)
	held := slices.Clone(lines)
	slices.SortFunc(held, func(a, b Line) int { return cmp.Or(cmp.Compare(a.At, b.At), cmp.Compare(a.Seq(), b.Seq())) })
	for _, l := range held {
		if ev, ok := l.Event.(entry.Level); ok && !l.Struck() {
			if t, ok := index[ev.Charge.Seq]; ok {
				lines[t].Remark = ev.Remark
			}
		}
	}
	return lines
}

// parted is how far the clocks are apart at a time that was typed, unless one was set.
func parted(by, uncertain time.Duration) time.Duration {
	if uncertain > 0 && by.Abs() < time.Second {
		return by
	}
	return 0
}

func plainClock(lines []Line, index map[uint64]int) {
	if len(lines) == 0 {
		return
	}
	shift := map[string]time.Duration{}
	for _, l := range lines {
		if j, ok := l.Event.(entry.ClockJump); ok && !l.Struck() {
			boot := cmp.Or(j.Boot, l.Entry.Boot)
			shift[boot] += time.Duration(j.ShiftMs) * time.Millisecond
		}
	}
	zero := acceptedWall(lines[0].Entry)
	anchors := map[string]time.Duration{}
	var last, stepped time.Duration
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
		lines[i].At = at - acceptedWall(e).Sub(e.Happened) - parted(at-wall, e.Uncertain)
	}
	for i := range lines {
		if by := lines[i].AmendedBy; by != 0 {
			a := lines[index[by]]
			if ev, ok := a.Event.(entry.Amend); ok && !ev.Happened.IsZero() {
				lines[i].At = a.Accepted - acceptedWall(a.Entry).Sub(ev.Happened) - parted(a.Accepted-acceptedWall(a.Entry).Sub(zero), ev.Uncertain)
			}
		}
	}
	lit := lines[0].At
	for i := range lines {
		lines[i].At -= lit
		lines[i].Accepted -= lit
	}
}

// plainLit is the wall time of light: as the last that said the right time in the start
// of the light has it, else as amended, else as kept.
func plainLit(lines []Line) time.Time {
	light := lines[0]
	if _, ok := light.Event.(entry.Light); !ok || light.Struck() {
		return time.Time{}
	}
	for _, l := range slices.Backward(lines) {
		if j, ok := l.Event.(entry.ClockJump); ok && !l.Struck() && !j.Right.IsZero() && l.Entry.Boot == light.Entry.Boot {
			return j.Right.Add(-l.At)
		}
	}
	if light.AmendedBy != 0 {
		if a, ok := lines[light.AmendedBy-1].Event.(entry.Amend); ok && !a.Happened.IsZero() {
			return a.Happened
		}
	}
	return light.Entry.Happened
}

func plainKnownAt(lines []Line, at time.Duration) uint64 {
	var known uint64
	for _, l := range lines {
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

// scribbled is a journal in which anything may speak of anything.
func scribbled(t *rapid.T) []entry.Entry {
	d := lit(entry.Furnace{}, bucket(1.9))
	minute := 0.0
	for range rapid.IntRange(0, 40).Draw(t, "entries") {
		minute += float64(rapid.IntRange(0, 600).Draw(t, "seconds")) / 60
		target := func() entry.Ref { return ref(uint64(rapid.IntRange(1, len(d.entries)).Draw(t, "target"))) }
		var event func(depth int) entry.Event
		event = func(depth int) entry.Event {
			switch rapid.IntRange(0, 9).Draw(t, "event") {
			case 0, 1:
				return entry.Strike{Target: target()}
			case 2, 3:
				a := entry.Amend{Target: target()}
				if depth < 2 && rapid.Bool().Draw(t, "replaced") {
					a.Event = event(depth + 1)
				}
				if rapid.Bool().Draw(t, "timed") {
					a.Happened = noon.Add(minutes(minute) + d.drift - time.Duration(rapid.IntRange(0, 3000).Draw(t, "ago"))*time.Second)
					a.Uncertain = time.Minute
				}
				return a
			case 4:
				return entry.Level{Charge: target(), Remark: rapid.SampledFrom([]entry.LevelRemark{entry.NotToMark, entry.Heaped, entry.ToMark}).Draw(t, "remark")}
			case 5:
				j := entry.ClockJump{ByMs: 1000}
				if rapid.Bool().Draw(t, "shifts") {
					j.ShiftMs = int64(rapid.IntRange(-60, 60).Draw(t, "by")) * 60000
				}
				if rapid.Bool().Draw(t, "said") {
					j.ByMs, j.Right = 0, noon.Add(minutes(minute)+time.Duration(rapid.IntRange(-3600, 3600).Draw(t, "right"))*time.Second)
				}
				return j
			case 6:
				return entry.Keys{}
			}
			return charge(coal(1))
		}
		switch rapid.IntRange(0, 12).Draw(t, "what") {
		case 0:
			d.restart(fmt.Sprint("boot ", len(d.entries)), minute-1, time.Duration(rapid.IntRange(-3600, 3600).Draw(t, "wrong"))*time.Second)
		case 1:
			d.drift += time.Duration(rapid.IntRange(-3600, 3600).Draw(t, "step")) * time.Second
		}
		late := 0.0
		if rapid.IntRange(0, 3).Draw(t, "late") == 0 {
			late = float64(rapid.IntRange(0, 40).Draw(t, "minutes late"))
		}
		d.late(minute, minute-late, event(0))
		if e := &d.entries[len(d.entries)-1]; late > 0 { // typed, and the two clocks read one after the other
			e.Uncertain = 30 * time.Second
			e.Mono += time.Duration(rapid.IntRange(0, 3).Draw(t, "ms apart")) * time.Millisecond
		}
	}
	return d.entries
}

// However a journal grew, was cut and grew again, every entry stands in it as worked
// out from scratch, known by any entry.
func TestAJournalIsWhatItIsFromScratch(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		entries := scribbled(t)
		j := NewJournal()
		for i, e := range entries {
			if was := j; i > 2 && rapid.IntRange(0, 3).Draw(t, "kept anew") == 0 { // the last two are kept, the second one a little later
				j = j.Cut(i-2).Again(entries[i-2], was)
				entries[i-1].Mono += time.Duration(rapid.IntRange(0, 3).Draw(t, "ms")) * time.Millisecond
				j = j.Again(entries[i-1], was)
			}
			j = j.With(e).inForce()
		}
		for _, known := range []uint64{All, uint64(rapid.IntRange(1, len(entries)).Draw(t, "known"))} {
			want := plainLines(entries[:min(known, uint64(len(entries)))])
			k := j.AsKnown(known)
			if lit := plainLit(want); known == All && !k.About().Lit.Equal(lit) {
				t.Fatalf("light stands at %v, from scratch at %v", k.About().Lit, lit)
			}
			if d := gocmp.Diff(want, slices.Collect(k.Lines())); d != "" {
				t.Fatalf("as known by %d: %s", known, d)
			}
			held := slices.DeleteFunc(k.InForce(), func(l Line) bool { return !reads(l.Event) })
			if d := gocmp.Diff(held, slices.Collect(k.Between(never, 1<<60)), cmpopts.EquateEmpty()); d != "" {
				t.Fatalf("in force as known by %d: %s", known, d)
			}
			at := time.Duration(rapid.IntRange(-3600, 20*3600).Draw(t, "at")) * time.Second
			var both []Line
			for l := range k.Between(never, at) {
				both = append(both, l)
			}
			for l := range k.Between(at, 1<<60) {
				both = append(both, l)
			}
			if d := gocmp.Diff(held, both, cmpopts.EquateEmpty()); d != "" {
				t.Fatalf("cut at %v: %s", at, d)
			}
		}
		lines := plainLines(entries)
		for range 5 {
			at := time.Duration(rapid.IntRange(-10, 500).Draw(t, "minute")) * time.Minute
			if got, want := j.KnownAt(at), plainKnownAt(lines, at); got != want {
				t.Fatalf("at %v entry %d was known, from scratch %d", at, got, want)
			}
		}
	})
}
