//go:build !clockkeys

package main

import (
	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/entry"
	"chargehand/tui"
)

// clockAndKeys gives the clock that the screen goes by and the filter that stamps
// its keys. Built with the tag clockkeys, some keys move that clock on.
func clockAndKeys(clock func() entry.Stamp) (func() entry.Stamp, func(tea.Model, tea.Msg) tea.Msg) {
	return clock, tui.Filter(clock)
}
