package act

import (
	"time"

	"chargehand/model/entry"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// ClockWasWrong moves all that was kept since this start of the machine by as
// much as the clock was set then: a board without a battery clock wakes with a
// wrong time, and is put right later. Before that start, and in the one in which
// the fire was lit, the boot clock tells all by itself.
func ClockWasWrong(sh screen.Shared) screen.Effect {
	lit, _ := sh.Smelt.First()
	for l := range sh.Smelt.Backward() {
		jump, ok := l.Event.(entry.ClockJump)
		if !ok || l.Struck() {
			continue
		}
		if jump.ShiftMs != 0 {
			return screen.Refuse(words.AlreadyShifted)
		}
		if l.Entry.Boot == lit.Entry.Boot {
			return screen.Refuse(words.NothingToShift)
		}
		jump.ShiftMs = jump.ByMs
		by := time.Duration(jump.ByMs) * time.Millisecond
		return screen.Question(words.ShiftAll(by), func(sh screen.Shared) screen.Effect {
			return screen.Did(entry.Amend{Target: sh.Smelt.Ref(l.Seq()), Event: jump}, func(screen.Shared) string { return words.Shifted(by) })
		})
	}
	return screen.Refuse(words.NoClockJump)
}
