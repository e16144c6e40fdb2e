package act

import (
	"errors"
	"time"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// ClockWasWrong puts right what a wrong clock of the machine made of the times of a
// smelt: a board without a battery clock wakes with a wrong time, and is put right
// later or not at all. Within one start of the machine the boot clock tells what
// lies between any two acts, so only one thing can stand wrong:
//
//   - in the start in which the fire was lit, the wall time of light, and every
//     time of the smelt with it;
//   - in a later one, where that start stands on the smelt's clock, and all that was
//     kept since with it.
//
// A clock that was set tells by how much itself; else it asks for the right time.
// What changes is said before it does, and is one entry.
func ClockWasWrong(sh *screen.Shared) screen.Effect {
	if screen.RightsIn(sh.Smelt) < screen.Mendable {
		return screen.Refuse(WhyNot(sh.Smelt))
	}
	lit, _ := sh.Smelt.First()
	if sh.Smelt.Light().Imported || lit.Entry.Boot == "" {
		return screen.Refuse(words.TimesOfTheLog)
	}
	if sh.Now.Boot != lit.Entry.Boot && !sh.Smelt.Running() {
		return screen.Refuse(words.OverAndRestarted)
	}
	if l, ok := lastSet(sh); ok && l.Entry.Boot == sh.Now.Boot {
		jump := l.Event.(entry.ClockJump)
		switch {
		case l.Entry.Boot == lit.Entry.Boot:
			if sh.Smelt.Stepped(sh.Now).Abs() >= time.Second {
				return rightAll(sh, sh.Now.Wall)
			}
		case jump.ShiftMs == 0:
			return shiftBy(sh, l, jump)
		}
	}
	own := sh.Smelt.Reading().Wall(sh.Smelt.Clock(sh.Now))
	return screen.Ask{Dialog: screen.Field{
		Label: words.RightTime, Unit: words.RightTimeHint(own), Input: screen.NewInput(true),
		Done: func(sh *screen.Shared, in screen.Input) (screen.Effect, error) {
			own := sh.Smelt.Reading().Wall(sh.Smelt.Clock(sh.Now))
			right, err := nearest(in.Trimmed(), own)
			if err != nil {
				return nil, err
			}
			if right.Equal(own) {
				return nil, errors.New(words.ClockRight)
			}
			if sh.Now.Boot == lit.Entry.Boot {
				return rightAll(sh, right), nil
			}
			return shiftTo(sh, right)
		},
	}}
}

// ClockRighted tells whether a line says what the right time was, which a person did:
// it can be crossed out, though no key of the fire takes it for the last act.
func ClockRighted(l fold.Line) bool {
	jump, ok := l.Event.(entry.ClockJump)
	return ok && !jump.Right.IsZero()
}

// lastSet is the last time the clock was set, unless a person said since what is right.
func lastSet(sh *screen.Shared) (fold.Line, bool) {
	for l := range sh.Smelt.Backward() {
		if jump, ok := l.Event.(entry.ClockJump); ok && !l.Struck() {
			return l, jump.Right.IsZero()
		}
	}
	return fold.Line{}, false
}

// nearest is a time of day as typed, on the day that is nearest to the smelt's own
// time, and with its seconds: a time that is typed knows none.
func nearest(text string, own time.Time) (time.Time, error) {
	at, err := screen.ClockTime(text, own)
	if err != nil {
		return time.Time{}, err
	}
	at = at.Add(own.Sub(own.Truncate(time.Minute)))
	for at.Sub(own) < -12*time.Hour {
		at = at.AddDate(0, 0, 1)
	}
	return at, nil
}

// rightAll asks before every time of the smelt moves, so that it is the right time now.
func rightAll(sh *screen.Shared, right time.Time) screen.Effect {
	was := sh.Smelt.Reading().Lit
	is := was.Add(right.Sub(sh.Smelt.Reading().Wall(sh.Smelt.Clock(sh.Now))))
	pressed := sh.Now
	return screen.Question(words.RightAll(was, is), func(sh *screen.Shared) screen.Effect {
		now := right.Add(sh.Smelt.Clock(sh.Now) - sh.Smelt.Clock(pressed))
		return screen.Did(entry.ClockJump{Right: entry.Wall(now)}, func(*screen.Shared) string { return words.Righted(was, is) })
	})
}

// shiftTo asks before all since this start of the machine moves, so that it is the
// right time now.
func shiftTo(sh *screen.Shared, right time.Time) (screen.Effect, error) {
	by, ok := sh.Smelt.ShiftTo(sh.Now, right)
	if !ok {
		return nil, errors.New(words.BeforeLastStart)
	}
	pressed := sh.Now
	moves := right.Sub(sh.Smelt.Reading().Wall(sh.Smelt.Clock(pressed)))
	return screen.Question(words.ShiftAll(moves), func(sh *screen.Shared) screen.Effect {
		now := right.Add(sh.Smelt.Clock(sh.Now) - sh.Smelt.Clock(pressed))
		return screen.Did(entry.ClockJump{ShiftMs: by.Milliseconds(), Right: entry.Wall(now)}, func(*screen.Shared) string { return words.Shifted(moves) })
	}), nil
}

// shiftBy asks before all since this start of the machine moves by as much as the
// clock was set then.
func shiftBy(sh *screen.Shared, l fold.Line, jump entry.ClockJump) screen.Effect {
	jump.ShiftMs = jump.ByMs
	by := time.Duration(jump.ByMs) * time.Millisecond
	return screen.Question(words.ShiftAll(by), func(sh *screen.Shared) screen.Effect {
		return screen.Did(entry.Amend{Target: sh.Smelt.Ref(l.Seq()), Event: jump}, func(*screen.Shared) string { return words.Shifted(by) })
	})
}
