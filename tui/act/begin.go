package act

import (
	"time"

	"chargehand/model/entry"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// Kindle begins a new smelt, lit by a person of these initials at a time (zero for now)
// that is known so well, and says which.
func Kindle(l entry.Light, by string, lit time.Time, uncertain time.Duration) screen.Effect {
	return screen.Each{screen.Kindle{Light: l, By: by, Lit: lit, Uncertain: uncertain}, screen.Say(func(sh *screen.Shared) string { return words.Lit(sh.Smelt.ID()) })}
}

// LeavingRunning asks before another smelt takes the place of the one at work.
func LeavingRunning(sh *screen.Shared, then func(*screen.Shared) screen.Effect) screen.Effect {
	if !sh.Running.Is() {
		return then(sh)
	}
	return screen.Question(words.LeaveFor(sh.Running.ID()), then)
}

// Alongside goes on to another smelt, which burns beside the one at work. It asks where
// that has to give way: two burn already, or it is a practice.
func Alongside(sh *screen.Shared, then func(*screen.Shared) screen.Effect) screen.Effect {
	if l := sh.Running.Light(); sh.Running.Is() && !sh.Other.Is() && !l.Practice && !l.Rehearsal {
		return then(sh)
	}
	return LeavingRunning(sh, then)
}

// Leave leaves the program. A running smelt asks first; it is held, and goes on
// at the next start.
func Leave(sh *screen.Shared) screen.Effect {
	if screen.RightsIn(sh.Running) == screen.Own {
		return screen.Question(words.LeaveRunning(sh.Running.ID()), func(*screen.Shared) screen.Effect { return screen.Quit{} })
	}
	return screen.Quit{}
}
