package tui

import (
	"time"

	"chargehand/model/entry"
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
