package main

import (
	"fmt"
	"os"
	"time"

	"chargehand/model/entry"
)

// processClock serves where there is no boot clock to read: it counts from the
// start of this process, so that each run of the program is a start of its own,
// joined to the one before by wall time.
func processClock() func() entry.Stamp {
	start := time.Now()
	boot := fmt.Sprintf("run-%d-%d", start.UnixNano(), os.Getpid())
	return func() entry.Stamp {
		now := time.Now()
		return entry.Stamp{Wall: entry.Wall(now), Boot: boot, Mono: now.Sub(start).Truncate(time.Millisecond)}
	}
}
