package main

import (
	"os"
	"strings"
	"time"

	"golang.org/x/sys/unix"

	"chargehand/model/entry"
)

// systemClock reads the wall clock and the boot clock that runs on through
// sleep. The boot id tells one start of the machine from another.
func systemClock() func() entry.Stamp {
	id, _ := os.ReadFile("/proc/sys/kernel/random/boot_id")
	boot := strings.TrimSpace(string(id))
	if boot == "" {
		return processClock()
	}
	return func() entry.Stamp {
		var ts unix.Timespec
		if err := unix.ClockGettime(unix.CLOCK_BOOTTIME, &ts); err != nil {
			return entry.Stamp{Wall: entry.Wall(time.Now())}
		}
		return entry.Stamp{
			Wall: entry.Wall(time.Now()), Boot: boot,
			Mono: time.Duration(ts.Nano()).Truncate(time.Millisecond),
		}
	}
}
