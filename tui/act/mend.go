package act

import (
	"time"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/model/session"
	modelwords "chargehand/model/words"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// CrossOutLast crosses out the last act in force; pressed again, the one
// before.
func CrossOutLast(sh *screen.Shared) screen.Effect {
	l, ok := sh.Smelt.LastAct()
	if !ok {
		return screen.Refuse(words.NothingToCross)
	}
	run := runOf(sh.Smelt, l)
	if len(run) < 2 {
		return CrossOut(sh, l)
	}
	strikes := make(screen.Keep, len(run))
	for i, one := range run {
		strikes[i] = screen.Act{Event: entry.Strike{Target: sh.Smelt.Ref(one.Seq())}, Group: l.Entry.Group}
	}
	return screen.Each{strikes, screen.Said(words.CrossedOutRun(Describe(sh.Units, sh.Smelt, l), len(run)))}
}

// runOf is an act and those keyed before it in one run of a key that came
// quickly, the last first: a glove that leaned on it made them all.
func runOf(s session.Session, last fold.Line) []fold.Line {
	name := last.Entry.Group
	if name == "" {
		return []fold.Line{last}
	}
	var run []fold.Line
	for l := range s.Backward() {
		if l.Struck() || !entry.IsAct(l.Event) {
			continue
		}
		if l.Entry.Group != name && l.Entry.Local != name {
			break
		}
		run = append(run, l)
	}
	return run
}

// CrossOut crosses out a line.
func CrossOut(sh *screen.Shared, l fold.Line) screen.Effect {
	switch {
	case l.Struck():
		return screen.Refuse(words.CrossedAlready)
	case l.Entry.Kind() == entry.KindLight:
		return screen.Refuse(words.NotTheLight)
	}
	said := words.CrossedOut(Describe(sh.Units, sh.Smelt, l))
	return screen.Did(entry.Strike{Target: sh.Smelt.Ref(l.Seq())}, func(*screen.Shared) string { return said })
}

// BringBack undoes the last crossing-out, and that of all the run with it.
func BringBack(sh *screen.Shared) screen.Effect {
	var back screen.Keep
	run := ""
	for l := range sh.Smelt.Backward() {
		s, ok := l.Event.(entry.Strike)
		if !ok || l.Struck() {
			continue
		}
		target, ok := sh.Smelt.Line(s.Target.Seq)
		if !ok || target.Entry.Kind() == entry.KindStrike {
			continue
		}
		if len(back) == 0 && l.Entry.Group == "" {
			return Undo(sh, target)
		}
		if len(back) > 0 && l.Entry.Group != run {
			break
		}
		run = l.Entry.Group
		back = append(back, screen.Act{Event: entry.Strike{Target: sh.Smelt.Ref(l.Seq())}})
	}
	if len(back) == 0 {
		return screen.Refuse(words.NothingCrossed)
	}
	return screen.Each{back, screen.Said(words.BroughtBackRun(len(back)))}
}

// Undo takes back what was done to a line: its crossing-out, else its last
// change.
func Undo(sh *screen.Shared, l fold.Line) screen.Effect {
	by := l.StruckBy
	if by == 0 {
		by = l.AmendedBy
	}
	if by == 0 {
		return screen.Refuse(words.NothingToUndo)
	}
	return screen.Did(entry.Strike{Target: sh.Smelt.Ref(by)}, func(after *screen.Shared) string {
		back, _ := after.Smelt.Line(l.Seq())
		return words.BroughtBack(Describe(after.Units, after.Smelt, back))
	})
}

// MinutesEarlier moves the last act back so many minutes, not before the light.
func MinutesEarlier(sh *screen.Shared, n int) screen.Effect {
	l, ok := sh.Smelt.LastAct()
	if !ok {
		return screen.Refuse(words.NothingToMove)
	}
	if l.At < time.Minute {
		return screen.Refuse(words.NotBeforeLight)
	}
	by := min(time.Duration(n)*time.Minute, l.At.Truncate(time.Minute))
	return Amend(sh, l, nil, happenedWall(sh, l).Add(-by), l.Uncertain)
}

// Amend changes a line's event, its time, or both. Since the last amendment of
// several holds for both, it carries along what an earlier one changed.
func Amend(sh *screen.Shared, l fold.Line, ev entry.Event, at time.Time, uncertain time.Duration) screen.Effect {
	a := entry.Amend{Target: sh.Smelt.Ref(l.Seq()), Event: ev, Happened: at, Uncertain: uncertain}
	if l.AmendedBy != 0 && ev == nil {
		a.Event = l.Event
	}
	if l.AmendedBy != 0 && at.IsZero() {
		a.Happened, a.Uncertain = happenedWall(sh, l), l.Uncertain
	}
	return screen.Did(a, func(after *screen.Shared) string {
		now, _ := after.Smelt.Line(l.Seq())
		return words.Changed(after.Smelt.Wall(now).Format(modelwords.Clock), Describe(after.Units, after.Smelt, now))
	})
}

// happenedWall is when a line happened by the wall clock as it goes now, which
// is how an entry made now says when something happened: in a log, by its own days.
func happenedWall(sh *screen.Shared, l fold.Line) time.Time {
	if sh.Smelt.Light().Imported {
		return entry.Wall(sh.Smelt.Wall(l))
	}
	return entry.Wall(sh.Now.Wall.Add(l.At - sh.Smelt.Clock(sh.Now)))
}
