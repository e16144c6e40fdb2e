//go:build clockkeys

package main

import (
	"sync/atomic"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/entry"
	"chargehand/tui"
)

// clockSteps are the keys that move the clock on, so that a day at the furnace
// can be keyed by hand in minutes. They exist only in a build for trying the
// program out, and are neither shown nor journaled.
var clockSteps = map[string]time.Duration{
	"f5": 10 * time.Second,
	"f6": time.Minute,
	"f7": 10 * time.Minute,
	"f8": time.Hour,
}

// wallStep is the key that sets the wall clock on, as a machine does whose clock stood
// wrong, while the boot clock runs on.
const (
	wallKey  = "f9"
	wallStep = 23 * time.Minute
)

// clockAndKeys gives a clock that goes on from the true one by what was keyed,
// wall and boot clock alike, as if that time had passed, and the filter that
// takes those keys. The screen follows with its next look at the clock.
func clockAndKeys(clock func() entry.Stamp) (func() entry.Stamp, func(tea.Model, tea.Msg) tea.Msg) {
	var ahead, set atomic.Int64
	moved := func() entry.Stamp {
		by := time.Duration(ahead.Load())
		at := clock()
		at.Wall, at.Mono = at.Wall.Add(by+time.Duration(set.Load())), at.Mono+by
		return at
	}
	stamp := tui.Filter(moved)
	return moved, func(m tea.Model, msg tea.Msg) tea.Msg {
		if k, ok := msg.(tea.KeyMsg); ok {
			if step, ok := clockSteps[k.String()]; ok {
				ahead.Add(int64(step))
				return nil
			}
			if k.String() == wallKey {
				set.Add(int64(wallStep))
				return nil
			}
		}
		return stamp(m, msg)
	}
}
