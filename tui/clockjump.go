package tui

import (
	"time"

	"chargehand/model/entry"
	"chargehand/model/words"
)

// mayPart is how far the wall clock may part from the boot clock between two
// looks without being taken for stepped. A clock that is slewed to the right
// time moves by half a millisecond a second (ntpd and chrony, common practice).
const mayPart = 2 * time.Second

// clockJump compares the two clocks since the last look. Instants are compared,
// so a change to summer time is no jump.
func clockJump(last, now entry.Stamp) (entry.ClockJump, bool) {
	if last.Boot == "" || last.Boot != now.Boot {
		return entry.ClockJump{}, false
	}
	by := now.Wall.Sub(last.Wall) - (now.Mono - last.Mono)
	if by.Abs() <= mayPart {
		return entry.ClockJump{}, false
	}
	return entry.ClockJump{ByMs: by.Milliseconds()}, true
}

// clockWasWrong moves all that was kept since this start of the machine by as
// much as the clock was set then: a board without a battery clock wakes with a
// wrong time, and is put right later. Before that start, and in the one in which
// the fire was lit, the boot clock tells all by itself.
func clockWasWrong(sh shared) step {
	lit, _ := sh.smelt.First()
	for l := range sh.smelt.Backward() {
		jump, ok := l.Event.(entry.ClockJump)
		if !ok || l.Struck() {
			continue
		}
		if jump.ShiftMs != 0 {
			return refused(words.AlreadyShifted)
		}
		if l.Entry.Boot == lit.Entry.Boot {
			return refused(words.NothingToShift)
		}
		jump.ShiftMs = jump.ByMs
		by := time.Duration(jump.ByMs) * time.Millisecond
		return step{ask: question(words.ShiftAll(by), func(sh shared) step {
			return did(entry.Amend{Target: sh.smelt.Ref(l.Seq()), Event: jump}, func(shared) string { return words.Shifted(by) })
		})}
	}
	return refused(words.NoClockJump)
}
