package tui

import (
	"time"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/model/words"
)

// crossOutLast crosses out the last act in force; pressed again, the one
// before.
func crossOutLast(sh shared) step {
	l, ok := sh.smelt.LastAct()
	if !ok {
		return refused(words.NothingToCross)
	}
	return crossOut(sh, l)
}

func crossOut(sh shared, l fold.Line) step {
	switch {
	case l.Struck():
		return refused(words.CrossedAlready)
	case l.Entry.Kind() == entry.KindLight:
		return refused(words.NotTheLight)
	}
	said := words.CrossedOut(describe(sh.theme.Units, sh.smelt, l))
	return did(entry.Strike{Target: sh.smelt.Ref(l.Seq())}, func(shared) string { return said })
}

// bringBack undoes the last crossing-out.
func bringBack(sh shared) step {
	for l := range sh.smelt.Backward() {
		s, ok := l.Event.(entry.Strike)
		if !ok || l.Struck() {
			continue
		}
		target, ok := sh.smelt.Line(s.Target.Seq)
		if !ok || target.Entry.Kind() == entry.KindStrike {
			continue
		}
		return undo(sh, target)
	}
	return refused(words.NothingCrossed)
}

// undo takes back what was done to a line: its crossing-out, else its last
// change.
func undo(sh shared, l fold.Line) step {
	by := l.StruckBy
	if by == 0 {
		by = l.AmendedBy
	}
	if by == 0 {
		return refused(words.NothingToUndo)
	}
	return did(entry.Strike{Target: sh.smelt.Ref(by)}, func(after shared) string {
		back, _ := after.smelt.Line(l.Seq())
		return words.BroughtBack(describe(after.theme.Units, after.smelt, back))
	})
}

// minuteEarlier moves the last act back a minute.
func minuteEarlier(sh shared) step {
	l, ok := sh.smelt.LastAct()
	if !ok {
		return refused(words.NothingToMove)
	}
	if l.At < time.Minute {
		return refused(words.NotBeforeLight)
	}
	return amend(sh, l, nil, happenedWall(sh, l).Add(-time.Minute), l.Uncertain)
}

// amend changes a line's event, its time, or both. Since the last amendment of
// several holds for both, it carries along what an earlier one changed.
func amend(sh shared, l fold.Line, ev entry.Event, at time.Time, uncertain time.Duration) step {
	a := entry.Amend{Target: sh.smelt.Ref(l.Seq()), Event: ev, Happened: at, Uncertain: uncertain}
	if l.AmendedBy != 0 && ev == nil {
		a.Event = l.Event
	}
	if l.AmendedBy != 0 && at.IsZero() {
		a.Happened, a.Uncertain = happenedWall(sh, l), l.Uncertain
	}
	return did(a, func(after shared) string {
		now, _ := after.smelt.Line(l.Seq())
		return words.Changed(after.smelt.Wall(now).Format(words.Clock), describe(after.theme.Units, after.smelt, now))
	})
}

// happenedWall is when a line happened by the wall clock as it goes now, which
// is how an entry made now says when something happened.
func happenedWall(sh shared, l fold.Line) time.Time {
	return entry.Wall(sh.now.Wall.Add(l.At - sh.smelt.Clock(sh.now)))
}
